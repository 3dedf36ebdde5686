/** What comes over the wire of a carrier: the name of an operation, its input, and the language of the window. */
import { z } from 'zod';
import { languageSchema } from '../domain/message.ts';
import type { CallResult } from '../station/contract.ts';

export const callRequestSchema = z.object({
  operation: z.string().max(100),
  input: z.unknown(),
  language: languageSchema.default('en'),
});
export type CallRequest = z.output<typeof callRequestSchema>;

/** An answer of the carrier itself, in the shape in which the station answers. */
export const carrierError = (code: string, sentence: string): CallResult => ({
  ok: false,
  error: { code, sentence },
});

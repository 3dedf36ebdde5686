/** A manufacturer's notice about devices of its own: which ones, and what is to be done with them, as the manufacturer says it. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from '../brand.ts';
import { madeRangeSchema } from './match-made.ts';
import { recallMatchSchema } from './recall-match.ts';

const name = z.string().trim().min(1).max(80);

/** All that is said must hold; what is empty or absent does not matter. */
export const affectedSchema = z.object({
  /** As the notice writes them; none where it speaks of every model of the maker. `?` and `*` stand as in a serial number. */
  models: z.array(name).max(100).default([]),
  /** Ranges, single serial numbers and beginnings (`19B*`), as the notice writes them. */
  serials: z.array(z.string().trim().min(1).max(120)).max(500).default([]),
  made: madeRangeSchema.optional(),
});
export type Affected = z.infer<typeof affectedSchema>;

export const instructionSchema = z
  .object({
    en: z.string().trim().min(1).max(2000).optional(),
    es: z.string().trim().min(1).max(2000).optional(),
  })
  .refine(({ en, es }) => en !== undefined || es !== undefined, { error: 'instruction' });

export const noticeTextSchema = z.object({
  manufacturer: name,
  /** What the manufacturer calls the notice. */
  reference: name,
  issuedOn: calendarDateSchema,
  /** What is to be done, in the manufacturer's words, in the languages in which they were given. */
  instruction: instructionSchema,
  /** A device is meant where one of them means it. */
  affected: z.array(affectedSchema).min(1).max(50),
});
export type NoticeText = z.infer<typeof noticeTextSchema>;

export const noticeSchema = noticeTextSchema.extend({
  /** Counts up over the station, from 1. */
  notice: z.int().positive(),
  /** What it meant when it was recorded. */
  matched: z.array(z.object({ benchId: benchIdSchema, match: recallMatchSchema })),
  recordedBy: z.string(),
  recordedOn: calendarDateSchema,
});
export type Notice = z.infer<typeof noticeSchema>;

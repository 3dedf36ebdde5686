/** The options of `npm start`, which has no commands. */
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { languageSchema } from '../domain/message.ts';

const optionsSchema = z.object({
  data: z.string().optional(),
  port: z.coerce.number().int().min(0).max(65_535).optional(),
  language: languageSchema.optional(),
  kiosk: z.boolean().default(false),
  desk: z.boolean().default(false),
  'headless-check': z.boolean().default(false),
  help: z.boolean().default(false),
});
export type LaunchOptions = z.output<typeof optionsSchema>;

/** `undefined` where an option is unknown or has no sensible value. */
export const readLaunchOptions = (args: readonly string[]): LaunchOptions | undefined => {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        data: { type: 'string' },
        port: { type: 'string' },
        language: { type: 'string' },
        kiosk: { type: 'boolean' },
        desk: { type: 'boolean' },
        'headless-check': { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    });
    return optionsSchema.parse(values);
  } catch {
    return undefined;
  }
};

/** `scan.interpret`: what a scanned or typed text means at this station. Nothing is acted on here. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { yearOf } from '../../domain/calendar.ts';
import { commandNames } from '../../domain/command-symbol.ts';
import { tagJudgementSchema } from '../../domain/judge-tag.ts';
import { markingDataSchema } from '../../domain/marking-data.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { readScan } from '../../intake/read-scan.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { meaningOf, meaningOfWornTag } from '../scan-meaning.ts';
import { deviceSummarySchema } from '../views.ts';

const meaning = z.discriminatedUnion('meaning', [
  z.object({ meaning: z.literal('command'), command: z.enum(commandNames) }),
  z.object({ meaning: z.literal('badge'), badge: z.string(), name: z.string() }),
  /** The label of a place where held devices are kept. */
  z.object({ meaning: z.literal('place'), code: z.string() }),
  z.object({
    meaning: z.literal('device'),
    device: deviceSummarySchema,
    /** What of the device was scanned; its serial number only together with the maker's reference of its model. */
    by: z.enum(['bench ID', 'tag', 'other code', 'serial number']),
    /** Where a tag was scanned: whether it is the one that belongs on the device now. */
    tag: tagJudgementSchema.optional(),
  }),
  /** A tag that is worth nothing here: its words were altered, or it is another station's. Nothing is opened by it. */
  z.object({ meaning: z.literal('worthless tag'), state: z.enum(['altered', 'not ours']) }),
  /** An exact bench ID that is in no register: a fresh label, or another station's. */
  z.object({ meaning: z.literal('bench ID not registered'), benchId: benchIdSchema }),
  /** Registered devices that the text may have meant; a person confirms what stands on the device before anything happens. */
  z.object({
    meaning: z.literal('suggestion'),
    text: z.string(),
    devices: z
      .array(
        z.object({
          device: deviceSummarySchema,
          because: z.enum(['repaired bench ID', 'serial number', 'other code', 'worn tag']),
        }),
      )
      .min(1),
    /** What a maker's symbol says of the device that carries it. */
    data: markingDataSchema.optional(),
  }),
  z.object({
    meaning: z.literal('unknown'),
    /** The form in which the code would be bound to a device. */
    text: z.string(),
    data: markingDataSchema.optional(),
  }),
  /** Set out to be a maker's symbol and is damaged, or is nothing that a symbol holds: why, and what to do. */
  z.object({
    meaning: z.literal('malformed'),
    /** With every unseen character as its name. */
    text: z.string(),
    code: z.string(),
    sentence: z.string(),
  }),
]);
export type ScanMeaning = z.infer<typeof meaning>;

export const scanInterpret = defineOperation({
  name: 'scan.interpret',
  summary: 'What a scanned or typed text means at this station.',
  kind: 'query',
  access: 'anyone',
  input: z.object({
    /** A text that no symbol can hold is answered as malformed. */
    text: z.string().max(100_000),
    /** Typed by a person: a bench ID with errors is then repaired to a suggestion. A scan must be exact. */
    typed: z.boolean().default(false),
    /**
     * How the text came; `typed` says the same for the first two. From a worn tag: its characters were weighed and not
     * read, so it opens nothing and is at most a suggestion.
     */
    source: z.enum(['scanned', 'typed', 'worn tag']).optional(),
  }),
  output: meaning,
  run: (context, { text, typed, source = typed ? 'typed' : 'scanned' }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const { dueSoonDays } = programInForce(station, context.rules.shipped).program;
      const register = { reader, station, today, dueSoonDays, language: context.language };
      const scan = readScan(text, yearOf(today));
      const scanned = text.trim();
      return source === 'worn tag'
        ? meaningOfWornTag(register, scan, scanned)
        : meaningOf(register, scan, { scanned, typed: source === 'typed' });
    }),
});

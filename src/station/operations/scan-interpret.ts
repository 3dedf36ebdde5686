/** `scan.interpret`: what a scanned or typed text means at this station. Nothing is acted on here. */
import { z } from 'zod';
import { repairBenchId } from '../../domain/bench-id/bench-id.ts';
import { type BenchId, benchIdSchema } from '../../domain/brand.ts';
import { commandNames } from '../../domain/command-symbol.ts';
import { currentTagSchema, tagStandingOf } from '../../domain/device.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { readScan } from '../../intake/read-scan.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { deviceSummary, deviceSummarySchema } from '../views.ts';

const meaning = z.discriminatedUnion('meaning', [
  z.object({ meaning: z.literal('command'), command: z.enum(commandNames) }),
  z.object({ meaning: z.literal('badge'), badge: z.string(), name: z.string() }),
  z.object({
    meaning: z.literal('device'),
    device: deviceSummarySchema,
    /** What of the device was scanned. */
    by: z.enum(['bench ID', 'tag', 'other code', 'serial number']),
    /** Where a tag was scanned: whether it is the one that belongs on the device now. */
    tag: z
      .object({
        tagNumber: z.number().int(),
        state: z.enum(['current', 'out of date']),
        currentTag: currentTagSchema.optional(),
      })
      .optional(),
  }),
  /** An exact bench ID, or a tag with one, that is in no register: a fresh label, or another station's. */
  z.object({ meaning: z.literal('bench ID not registered'), benchId: benchIdSchema }),
  /** Registered devices that the text may have meant; a person confirms what stands on the device before anything happens. */
  z.object({
    meaning: z.literal('suggestion'),
    text: z.string(),
    devices: z
      .array(
        z.object({ device: deviceSummarySchema, because: z.enum(['repaired bench ID', 'serial number']) }),
      )
      .min(1),
  }),
  z.object({ meaning: z.literal('unknown'), text: z.string() }),
]);
export type ScanMeaning = z.infer<typeof meaning>;

export const scanInterpret = defineOperation({
  name: 'scan.interpret',
  summary: 'What a scanned or typed text means at this station.',
  kind: 'query',
  access: 'anyone',
  input: z.object({
    text: z.string().min(1).max(4000),
    /** Typed by a person: a bench ID with errors is then repaired to a suggestion. A scan must be exact. */
    typed: z.boolean().default(false),
  }),
  output: meaning,
  run: (context, { text, typed }) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const today = context.occasion(station).on;
      const summary = async (benchId: BenchId) => {
        const row = await reader.device(benchId);
        return row && deviceSummary(row, today, context.rules.program.dueSoonDays);
      };
      const scan = readScan(text);
      switch (scan.kind) {
        case 'command':
          return { meaning: 'command' as const, command: scan.command };
        case 'tag':
          return (await ofTag(reader, scan.benchId, scan.tagNumber, summary)) ?? notRegistered(scan.benchId);
        case 'bench ID': {
          const device = await summary(scan.benchId);
          return device
            ? { meaning: 'device' as const, device, by: 'bench ID' as const }
            : notRegistered(scan.benchId);
        }
        case 'other':
          return ofOtherText(reader, scan.text, typed, summary);
      }
    }),
});

type Summary = (benchId: BenchId) => Promise<ReturnType<typeof deviceSummary> | undefined>;

const notRegistered = (benchId: BenchId) => ({ meaning: 'bench ID not registered' as const, benchId });

const ofTag = async (reader: LedgerReader, benchId: BenchId, tagNumber: number, summary: Summary) => {
  const row = await reader.device(benchId);
  const device = await summary(benchId);
  if (row === undefined || device === undefined) return undefined;
  const standing = tagStandingOf(row.device, tagNumber);
  const currentTag = standing.state === 'current' ? undefined : standing.currentTag;
  const tag = { tagNumber, state: standing.state, ...(currentTag === undefined ? {} : { currentTag }) };
  return { meaning: 'device' as const, device, by: 'tag' as const, tag };
};

/** Badge, other code, serial number, and last, for typed text, a bench ID with unreadable or wrong characters. */
const ofOtherText = async (
  reader: LedgerReader,
  text: string,
  typed: boolean,
  summary: Summary,
): Promise<ScanMeaning> => {
  const person = await reader.personByBadge(text);
  if (person !== undefined) return { meaning: 'badge', badge: person.badge, name: person.name };
  const bound = await reader.deviceByCode(text);
  const device = bound && (await summary(bound));
  if (device !== undefined) return { meaning: 'device', device, by: 'other code' };
  const suggestions = [];
  for (const benchId of await reader.devicesBySerial(text)) {
    const found = await summary(benchId);
    if (found !== undefined) suggestions.push({ device: found, because: 'serial number' as const });
  }
  const repaired = typed ? repairBenchId(text) : undefined;
  if (repaired?.kind === 'suggestion') {
    const found = await summary(repaired.id);
    if (found !== undefined) suggestions.push({ device: found, because: 'repaired bench ID' as const });
  }
  return suggestions.length > 0
    ? { meaning: 'suggestion', text, devices: suggestions }
    : { meaning: 'unknown', text };
};

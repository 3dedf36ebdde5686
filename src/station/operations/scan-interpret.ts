/** `scan.interpret`: what a scanned or typed text means at this station. Nothing is acted on here. */
import { z } from 'zod';
import { repairBenchId } from '../../domain/bench-id/bench-id.ts';
import { type BenchId, benchIdSchema } from '../../domain/brand.ts';
import { commandNames } from '../../domain/command-symbol.ts';
import { judgeTag, tagJudgementSchema } from '../../domain/judge-tag.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { TagText } from '../../domain/tag-text.ts';
import { readScan } from '../../intake/read-scan.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { type Sealer, sealerOf } from '../seal.ts';
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
  run: async (context, { text, typed }) => {
    const station = await context.ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const sealer = await sealerOf(context.ledger, station);
    return context.ledger.read(async (reader): Promise<ScanMeaning> => {
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
          return ofTag(reader, scan.tag, sealer, summary);
        case 'altered tag':
          return { meaning: 'worthless tag' as const, state: 'altered' as const };
        case 'bench ID': {
          const device = await summary(scan.benchId);
          return device
            ? { meaning: 'device' as const, device, by: 'bench ID' as const }
            : notRegistered(scan.benchId);
        }
        case 'other':
          return ofOtherText(reader, scan.text, typed, summary);
      }
    });
  },
});

type Summary = (benchId: BenchId) => Promise<ReturnType<typeof deviceSummary> | undefined>;

const notRegistered = (benchId: BenchId) => ({ meaning: 'bench ID not registered' as const, benchId });

const ofTag = async (
  reader: LedgerReader,
  text: TagText,
  sealer: Sealer,
  summary: Summary,
): Promise<ScanMeaning> => {
  const row = await reader.device(text.benchId);
  const tag = judgeTag(text, sealer.mark, sealer.seal(text).code, row?.device);
  const device = await summary(text.benchId);
  return device === undefined || tag.state === 'altered' || tag.state === 'not ours'
    ? { meaning: 'worthless tag', state: tag.state === 'altered' ? 'altered' : 'not ours' }
    : { meaning: 'device', device, by: 'tag', tag };
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

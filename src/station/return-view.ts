/** What the screens are shown of return batches: who is in them, when to ask, and how long each manufacturer takes. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from '../domain/brand.ts';
import { daysBetween } from '../domain/calendar.ts';
import { type ReturnBatch, returnBatchSchema } from '../domain/held/return-batch.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { returnBatchIn } from './case-file-in.ts';
import type { OperationContext } from './operation.ts';
import { deviceSummary, deviceSummarySchema, namesOf } from './views.ts';

export const returnBatchViewSchema = returnBatchSchema.extend({
  inBatch: z.array(deviceSummarySchema),
  /** When the manufacturer is asked next; absent where it is not on its way. */
  askOn: calendarDateSchema.optional(),
});
export type ReturnBatchView = z.infer<typeof returnBatchViewSchema>;

export const returnBatchView = async (
  reader: LedgerReader,
  batch: ReturnBatch,
  today: CalendarDate,
  dueSoonDays: number,
): Promise<ReturnBatchView> => {
  const name = await namesOf(reader);
  const inBatch = [];
  for (const { benchId } of batch.devices) {
    const row = await reader.device(benchId);
    if (row !== undefined) inBatch.push(deviceSummary(row, today, dueSoonDays));
  }
  const askOn =
    batch.phase === 'shipped' ? (batch.followUps.at(-1)?.nextOn ?? batch.shipped?.followUpOn) : undefined;
  return {
    ...batch,
    openedBy: name(batch.openedBy),
    devices: batch.devices.map(({ benchId, back }) => ({
      benchId,
      ...(back === undefined ? {} : { back: { ...back, by: name(back.by) } }),
    })),
    ...(batch.shipped === undefined ? {} : { shipped: { ...batch.shipped, by: name(batch.shipped.by) } }),
    followUps: batch.followUps.map((each) => ({ ...each, by: name(each.by) })),
    inBatch,
    ...(askOn === undefined ? {} : { askOn }),
  };
};

/** What an operation upon a batch answers with: the batch as it is then. */
export const showReturnBatch = (
  context: OperationContext,
  number: number,
): Promise<{ readonly batch: ReturnBatchView } | Refusal> =>
  context.ledger.read(async (reader) => {
    const batch = await returnBatchIn(reader, number);
    if (isRefusal(batch)) return batch;
    const station = await reader.station();
    const today = station === undefined ? batch.openedOn : context.occasion(station).on;
    return { batch: await returnBatchView(reader, batch, today, 30) };
  });

export const turnaroundSchema = z.object({
  manufacturer: z.string(),
  /** Devices that came back. */
  devices: z.int(),
  /** From shipping to coming back: the middle one, and the longest. */
  medianDays: z.number(),
  longestDays: z.int(),
  condemned: z.int(),
});

/** Of every device that came back, by manufacturer in the order of their names. */
export const turnarounds = (batches: readonly ReturnBatch[]): z.infer<typeof turnaroundSchema>[] => {
  const byMaker = new Map<string, { days: number[]; condemned: number }>();
  for (const { manufacturer, shipped, devices } of batches) {
    for (const { back } of devices) {
      if (back === undefined || shipped === undefined) continue;
      const of = byMaker.get(manufacturer) ?? { days: [], condemned: 0 };
      of.days.push(daysBetween(shipped.on, back.on));
      if (back.outcome === 'condemned') of.condemned += 1;
      byMaker.set(manufacturer, of);
    }
  }
  return [...byMaker]
    .toSorted(([one], [other]) => one.localeCompare(other))
    .map(([manufacturer, { days, condemned }]) => ({
      manufacturer,
      devices: days.length,
      medianDays: median(days),
      longestDays: Math.max(...days),
      condemned,
    }));
};

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((one, other) => one - other);
  const [low = 0, high = low] = [(sorted.length - 1) >> 1, sorted.length >> 1].map((at) => sorted[at] ?? 0);
  return (low + high) / 2;
};

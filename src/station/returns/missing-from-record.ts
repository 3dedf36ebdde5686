/** What the record does not say and a plan of returns would need, once for each model, manufacturer and length, with where to enter it. */
import { z } from 'zod';
import { grouped } from '../../domain/grouped.ts';
import type { GatheredReturns, HeldRow } from './gather-returns.ts';
import { turnaroundOf } from './turnaround.ts';

export const missingKinds = [
  'currency',
  'maker',
  'repair terms',
  'repair price',
  'quote ended',
  'turnaround',
  'need',
  'new device',
  'price not fixed',
  'observed turnaround',
  'service life',
  'new life',
] as const;

export const missingFromRecordSchema = z.object({
  /** The last four are no gap: the plan goes by what there is, and says so. */
  kind: z.enum(missingKinds),
  manufacturer: z.string().optional(),
  model: z.object({ modelSheetId: z.string(), name: z.string() }).optional(),
  lengthM: z.number().optional(),
  /** Held devices that it is about. */
  devices: z.int(),
  /** The day on which a quote ended, or the days that a manufacturer took. */
  on: z.string().optional(),
  days: z.int().optional(),
});
export type MissingFromRecord = z.infer<typeof missingFromRecordSchema>;

/** `held`: devices of the plan that can be repaired. The gaps that keep most devices out of the plan come first, then by name. */
export const missingFromRecord = (
  held: readonly HeldRow[],
  lengths: readonly number[],
  gathered: GatheredReturns,
): readonly MissingFromRecord[] => {
  const { basis, terms, today } = gathered;
  const repairable = held.toSorted((one, other) => nameOf(one).localeCompare(nameOf(other)));
  const ofMakers = [...grouped(repairable, ({ modelSheet }) => modelSheet.manufacturer)].flatMap(
    ([manufacturer, rows]): MissingFromRecord[] => {
      const devices = rows.length;
      const seen = rows.map((row) => turnaroundOf(row, gathered)).find((each) => each?.by === 'record');
      return [
        ...(basis.makers.some((each) => each.manufacturer === manufacturer)
          ? []
          : [{ kind: 'maker' as const, manufacturer, devices }]),
        ...(seen === undefined
          ? []
          : [{ kind: 'observed turnaround' as const, manufacturer, devices, days: seen.days }]),
      ];
    },
  );
  const ofModels = [...grouped(repairable, ({ device }) => device.modelSheetId)].flatMap(
    ([modelSheetId, rows]): MissingFromRecord[] => {
      const [row] = rows;
      if (row === undefined) return [];
      const { serviceLife } = row.modelSheet;
      const about = { model: { modelSheetId, name: nameOf(row) }, devices: rows.length };
      const said = terms.get(modelSheetId);
      const unquoted = rows.filter(({ quote }) => quote === undefined).length;
      const priced = { ...about, devices: unquoted };
      const price = ((): MissingFromRecord[] => {
        if (unquoted === 0) return [];
        if (said === undefined) return [{ kind: 'repair terms', ...priced }];
        if (said.price === undefined) return [{ kind: 'repair price', ...priced }];
        if (said.validUntil !== undefined && said.validUntil < today)
          return [{ kind: 'quote ended', ...priced, on: said.validUntil }];
        return said.repairable === 'ask each time' ? [{ kind: 'price not fixed', ...priced }] : [];
      })();
      return [
        ...price,
        ...((said !== undefined || unquoted === 0) &&
        rows.some((each) => turnaroundOf(each, gathered) === undefined)
          ? [{ kind: 'turnaround' as const, ...about }]
          : []),
        ...(serviceLife === undefined ? [{ kind: 'service life' as const, ...about }] : []),
      ];
    },
  );
  const every = [...new Set([...lengths, ...basis.lengths.map(({ lengthM }) => lengthM)])];
  const ofLengths = every
    .toSorted((one, other) => one - other)
    .flatMap((lengthM): MissingFromRecord[] => {
      const plan = basis.lengths.find((each) => each.lengthM === lengthM);
      const devices = repairable.filter(({ modelSheet }) => modelSheet.ratedLengthM === lengthM).length;
      return [
        ...(plan?.needed === undefined ? [{ kind: 'need' as const, lengthM, devices }] : []),
        ...(plan?.newDevice === undefined
          ? [{ kind: 'new device' as const, lengthM, devices }]
          : plan.newDevice.lifeYears === undefined
            ? [{ kind: 'new life' as const, lengthM, devices }]
            : []),
      ];
    });
  const all = [
    ...(basis.currency === undefined ? [{ kind: 'currency' as const, devices: repairable.length }] : []),
    ...ofMakers,
    ...ofModels,
    ...ofLengths,
  ];
  return all.toSorted((one, other) => missingKinds.indexOf(one.kind) - missingKinds.indexOf(other.kind));
};

const nameOf = ({ modelSheet: { manufacturer, model } }: HeldRow): string => `${manufacturer} ${model}`;

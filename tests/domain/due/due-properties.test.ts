import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { Device } from '../../../src/domain/device.ts';
import { dueByEveryRule, dueDatesOf } from '../../../src/domain/due/due-dates.ts';
import { tradeProgram } from '../../../src/domain/due/trade-program.ts';
import { standardIntervals, type TypeOfUse, typesOfUse } from '../../../src/domain/due/type-of-use.ts';
import type { ModelSheet } from '../../../src/domain/model-sheet.ts';
import type { Program } from '../../../src/domain/program.ts';
import { dueDevice, dueProgram, dueSheet, twoAYear, used } from '../../support/due-fixture.ts';

const day = fc
  .integer({ min: 0, max: 365 * 60 })
  .map((days) => calendarDate(Temporal.PlainDate.from('1999-11-30').add({ days }).toString()));
const known = fc.option(
  fc.tuple(day, fc.constantFrom(4, 7, 10)).map(([date, length]) => date.slice(0, length)),
  { nil: undefined },
);
const months = (max: number) => fc.option(fc.integer({ min: 1, max }), { nil: undefined });
const isoMonths = (from: string, count: number): string =>
  Temporal.PlainDate.from(from).add({ months: count }, { overflow: 'constrain' }).toString();

const anyDevice: fc.Arbitrary<Device> = fc
  .record({
    inspected: day,
    made: known,
    bought: known,
    first: known,
    uses: fc.array(fc.tuple(fc.constantFrom(...typesOfUse), day), { maxLength: 3 }),
    tagged: fc.option(day, { nil: undefined }),
  })
  .map(({ inspected, made, bought, first, uses, tagged }) =>
    dueDevice({
      lastInspection: { inspection: 1, on: inspected, verdict: 'pass', by: 'P002' },
      dateOfManufacture: made ?? '',
      ...(bought === undefined ? {} : { purchasedOn: bought }),
      ...(first === undefined ? { firstUsedOn: undefined } : { firstUsedOn: first }),
      uses: uses.map(([use, from]) => used(use, from)),
      ...(tagged === undefined ? {} : { taggedDue: { on: tagged } }),
    }),
  );

const anySheet: fc.Arbitrary<ModelSheet> = fc
  .record({
    inspection: months(60),
    revalidation: months(240),
    life: fc.option(fc.integer({ min: 1, max: 50 }), { nil: undefined }),
    from: fc.constantFrom('manufacture' as const, 'first use' as const),
  })
  .map(({ inspection, revalidation, life, from }) =>
    dueSheet({
      ...(inspection === undefined ? {} : { manufacturerIntervalMonths: inspection }),
      ...(revalidation === undefined ? {} : { manufacturerRevalidationMonths: revalidation }),
      ...(life === undefined ? {} : { serviceLife: { years: life, from } }),
    }),
  );

const choice = (use: TypeOfUse) =>
  fc.record({
    inspectionMonths: fc.integer({ min: 1, max: standardIntervals[use].inspectionMonths.most }),
    revalidationMonths: fc.integer({ min: 1, max: standardIntervals[use].revalidationMonths }),
  });
const anyProgram: fc.Arbitrary<Program> = fc
  .record({
    own: fc.integer({ min: 1, max: 12 }),
    byUse: fc.option(
      fc.record({
        'infrequent to light': choice('infrequent to light'),
        'moderate to heavy': choice('moderate to heavy'),
        'severe to continuous': choice('severe to continuous'),
      }),
      { nil: undefined },
    ),
    isTwoAYear: fc.boolean(),
    monthEnd: fc.boolean(),
  })
  .map(({ own, byUse, isTwoAYear, monthEnd }) =>
    dueProgram({
      inspectionInterval: { months: own, source: { mark: 'employer', citation: 'Ours' } },
      ...(byUse === undefined ? {} : { typesOfUse: byUse }),
      jurisdictions: isTwoAYear ? [twoAYear] : [],
      monthEnd,
    }),
  );

describe('whatever the device, its model sheet and the program', () => {
  test('no date is later than any rule for the same thing, nor than the tag, and the earliest comes first', () => {
    fc.assert(
      fc.property(anyDevice, anySheet, anyProgram, (device, sheet, program) => {
        const dates = dueDatesOf(device, sheet, program);
        const on = new Map(dates.map((due) => [due.what, due.on]));
        for (const rule of dueByEveryRule(device, sheet, program)) {
          expect(on.get(rule.what)! <= rule.on).toBe(true);
          expect(rule.on <= isoMonths(rule.countedFrom!, rule.months!)).toBe(true);
        }
        expect(dates.map((due) => due.on)).toEqual(dates.map((due) => due.on).toSorted());
        if (device.taggedDue !== undefined) expect(dates[0]!.on <= device.taggedDue.on).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  test('a documented inspection is due within 12 months of the last one, and sooner where the standard says so', () => {
    fc.assert(
      fc.property(anyDevice, anySheet, anyProgram, (device, sheet, program) => {
        const inspection = dueDatesOf(device, sheet, program).find(
          ({ what }) => what === 'documented inspection',
        )!;
        const last = device.lastInspection!.on;
        expect(inspection.on <= isoMonths(last, 12)).toBe(true);
        const latest = (device.uses ?? []).toSorted((a, b) => (a.from < b.from ? -1 : 1)).at(-1);
        if (latest === undefined) return;
        const sameDay = device.uses!.filter(({ from }) => from === latest.from).at(-1)!;
        const { most } = standardIntervals[sameDay.typeOfUse].inspectionMonths;
        expect(inspection.on <= isoMonths(last, most)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('a program never gives a later date than the trade alone would with the same choices', () => {
    fc.assert(
      fc.property(anyDevice, anySheet, anyProgram, (device, sheet, program) => {
        const { typesOfUse: byUse } = program;
        const trade = byUse === undefined ? tradeProgram : { ...tradeProgram, typesOfUse: byUse };
        const [first] = dueDatesOf(device, sheet, program);
        expect(first!.on <= dueDatesOf(device, sheet, trade)[0]!.on).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('one more rule never moves a date later', () => {
    fc.assert(
      fc.property(
        anyDevice,
        anySheet,
        anyProgram,
        fc.integer({ min: 1, max: 12 }),
        (device, sheet, program, count) => {
          const more = {
            ...program,
            employerRules: [{ inspectionMonths: count, revalidationMonths: count, why: 'Ours' }],
          };
          const [before] = dueDatesOf(device, sheet, program);
          const [after] = dueDatesOf(device, sheet, more);
          expect(after!.on <= before!.on).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

test('what the product ships while no program is adopted gives the dates of the trade alone', () => {
  fc.assert(
    fc.property(anyDevice, anySheet, (device, sheet) => {
      const shipped = dueDatesOf(device, sheet, dueProgram());
      const trade = dueDatesOf(device, sheet, tradeProgram);
      expect(shipped.map(({ what, on, rule }) => [what, on, rule])).toEqual(
        trade.map(({ what, on, rule }) => [what, on, rule]),
      );
    }),
  );
});

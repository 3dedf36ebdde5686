import { describe, expect, test } from 'vitest';
import { calendarDate, instant } from '../../src/domain/brand.ts';
import { decideAdoptProgram, type ProgramSettings } from '../../src/domain/decide/program.ts';
import { typesOfUse } from '../../src/domain/due/type-of-use.ts';
import type { DomainEvent } from '../../src/domain/event.ts';
import { evolveStation, type Station } from '../../src/domain/evolve.ts';
import { programInForce } from '../../src/domain/program-in-force.ts';
import { releaseRules, program as shipped } from '../support/shipped-rules.ts';

const today = calendarDate('2026-03-10');
const { version: _version, ...annual } = shipped;

const station: Station = {
  stationId: 'S1',
  name: 'Depot',
  timeZone: 'Europe/Madrid',
  lengthUnit: 'm',
  demo: false,
  printers: [],
};

const adopt = (
  changed: Partial<ProgramSettings> = {},
  { effectiveFrom = today as string, at = station } = {},
) =>
  decideAdoptProgram(
    { settings: { ...annual, key: 'depot', ...changed }, effectiveFrom: calendarDate(effectiveFrom) },
    { station: at, presets: [shipped], shipped, releaseRules, modelSheets: [{ modelSheetId: 'M001' }] },
    today,
  );

const recorded = (events: ReturnType<typeof adopt>, at = station): Station =>
  (events as readonly DomainEvent[]).reduce<Station>(
    (now, event) =>
      evolveStation(now, { seq: 9, at: instant('2026-03-10T08:00:00.000Z'), on: today, by: 'P001', event })!,
    at,
  );

describe('a program that is adopted', () => {
  test('holds from then on, and says who adopted it, when, and from which day it holds', () => {
    const adopted = recorded(adopt({ dueSoonDays: 45 }, { effectiveFrom: '2026-01-01' }));
    expect(programInForce(station, shipped)).toEqual({ program: shipped });
    expect(programInForce(adopted, shipped)).toMatchObject({
      program: { key: 'depot', version: 1, dueSoonDays: 45 },
      since: '2026-01-01',
    });
    expect(adopted.programs).toMatchObject([{ key: 'depot', version: 1, by: 'P001', on: today, seq: 9 }]);
  });

  test('is the next version of its key, above those that the product ships', () => {
    expect(adopt({ key: 'annual', monthEnd: true })).toMatchObject([
      { program: { key: 'annual', version: 2 } },
    ]);
    const first = recorded(adopt());
    expect(adopt({ monthEnd: true }, { at: first })).toMatchObject([{ program: { version: 2 } }]);
  });

  test('is refused where it changes nothing, whatever the order of its rules', () => {
    const first = recorded(adopt());
    expect(adopt({}, { at: first })).toMatchObject({ code: 'program-unchanged' });
    const reordered = Object.fromEntries(Object.entries(annual).toReversed()) as ProgramSettings;
    expect(adopt(reordered, { at: first })).toMatchObject([{ program: { key: 'annual', version: 2 } }]);
    expect(adopt({}, { at: first, effectiveFrom: '2026-02-01' })).toMatchObject([
      { type: 'program.adopted' },
    ]);
  });

  test('is refused for a day that is still to come', () => {
    expect(adopt({}, { effectiveFrom: '2026-03-11' })).toMatchObject({ code: 'program-effective-in-future' });
  });
});

describe('a program that is weaker than the trade is refused', () => {
  const source = { mark: 'employer' as const, citation: 'Ours' };

  test('with a documented inspection less than once in 12 months (EN 365:2004, as quoted in leaflets)', () => {
    expect(adopt({ inspectionInterval: { months: 12, source } })).toMatchObject([
      { type: 'program.adopted' },
    ]);
    expect(adopt({ inspectionInterval: { months: 13, source } })).toMatchObject({
      code: 'program-inspection-too-rare',
      values: { months: 13, most: 12 },
    });
  });

  // ANSI/ASSP Z359.14 Appendix A (from memory): the laxer end of each range, and 5, 2 and 1 years.
  test.each([
    ['infrequent to light', 12, 60],
    ['moderate to heavy', 12, 24],
    ['severe to continuous', 6, 12],
  ] as const)(
    '%s: an inspection at least every %s and a revalidation every %s months',
    (use, inspection, revalidation) => {
      const strictest = { inspectionMonths: 1, revalidationMonths: 1 };
      const all = Object.fromEntries(typesOfUse.map((each) => [each, strictest])) as NonNullable<
        ProgramSettings['typesOfUse']
      >;
      const chosen = (inspectionMonths: number, revalidationMonths: number) =>
        adopt({ typesOfUse: { ...all, [use]: { inspectionMonths, revalidationMonths } } });
      expect(chosen(inspection, revalidation)).toMatchObject([{ type: 'program.adopted' }]);
      expect(chosen(inspection + 1, revalidation)).toMatchObject({ code: 'program-use-inspection-too-rare' });
      expect(chosen(inspection, revalidation + 1)).toMatchObject({
        code: 'program-use-revalidation-too-rare',
      });
    },
  );

  test('without a ground for taking a device out of service at once', () => {
    const [fall, ...others] = annual.removalGrounds;
    expect(adopt({ removalGrounds: others })).toMatchObject({
      code: 'program-ground-missing',
      values: { ground: fall?.key },
    });
  });
});

test('a program with two grounds of one key is refused, and one with a ground of the employer is adopted', () => {
  const [fall] = annual.removalGrounds;
  const own = { ...fall!, key: 'own-flood' };
  expect(adopt({ removalGrounds: [...annual.removalGrounds, own] })).toMatchObject([
    { type: 'program.adopted' },
  ]);
  expect(adopt({ removalGrounds: [...annual.removalGrounds, own, own] })).toMatchObject({
    code: 'program-ground-twice',
    values: { ground: 'own-flood' },
  });
});

test('a rule of the employer without an interval, or for a model that is not there, is refused', () => {
  expect(adopt({ employerRules: [{ why: 'Because' }] })).toMatchObject({ code: 'program-rule-empty' });
  expect(
    adopt({ employerRules: [{ why: 'Salt', inspectionMonths: 3, modelSheetId: 'M009' }] }),
  ).toMatchObject({
    code: 'model-sheet-unknown',
  });
  expect(
    adopt({ employerRules: [{ why: 'Salt', inspectionMonths: 3, modelSheetId: 'M001' }] }),
  ).toMatchObject([{ type: 'program.adopted' }]);
});

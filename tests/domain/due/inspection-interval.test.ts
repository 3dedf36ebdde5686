import { describe, expect, test } from 'vitest';
import type { TypeOfUse } from '../../../src/domain/due/type-of-use.ts';
import type { Program } from '../../../src/domain/program.ts';
import {
  datesOf,
  dueDevice,
  dueProgram,
  dueSheet,
  inspectedOn,
  twoAYear,
  used,
} from '../../support/due-fixture.ts';

/** [type of use, manufacturer's interval in months, two a year asked for, due on, the rule that is named]. */
type Row = readonly [TypeOfUse | undefined, number | undefined, boolean, string, string];

const light = 'infrequent to light';
const moderate = 'moderate to heavy';
const severe = 'severe to continuous';

const next = (row: Row, changed: Partial<Program> = {}) => {
  const [use, manufacturerIntervalMonths, isTwoAYear] = row;
  const [first] = datesOf(
    dueDevice(use === undefined ? {} : { uses: [used(use)] }),
    dueSheet(manufacturerIntervalMonths === undefined ? {} : { manufacturerIntervalMonths }),
    dueProgram({ ...(isTwoAYear ? { jurisdictions: [twoAYear] } : {}), ...changed }),
  );
  return first;
};

describe('the next documented inspection of a device inspected on 2026-03-10', () => {
  // ANSI/ASSP Z359.14 Appendix A (from memory): annually; semi-annually to annually; quarterly to semi-annually. At least
  // every 12 months: EN 365:2004, as quoted in manufacturers' leaflets. Two a year: Cal. Code Regs. title 8 §1670 (section
  // number from memory). The shortest of standard, manufacturer, employer and jurisdiction applies. Dates worked by hand.
  test.each<Row>([
    [undefined, undefined, false, '2027-03-10', 'employer'],
    [undefined, 24, false, '2027-03-10', 'employer'],
    [undefined, 12, false, '2027-03-10', 'employer'],
    [undefined, 6, false, '2026-09-10', 'manufacturer'],
    [undefined, undefined, true, '2026-09-10', 'jurisdiction'],
    [light, undefined, false, '2027-03-10', 'standard'],
    [light, 24, false, '2027-03-10', 'standard'],
    [light, 6, false, '2026-09-10', 'manufacturer'],
    [light, undefined, true, '2026-09-10', 'jurisdiction'],
    [light, 3, true, '2026-06-10', 'manufacturer'],
    [light, 12, true, '2026-09-10', 'jurisdiction'],
    [moderate, undefined, false, '2026-09-10', 'standard'],
    [moderate, 12, false, '2026-09-10', 'standard'],
    [moderate, 3, false, '2026-06-10', 'manufacturer'],
    [moderate, undefined, true, '2026-09-10', 'standard'],
    [moderate, 5, true, '2026-08-10', 'manufacturer'],
    [severe, undefined, false, '2026-06-10', 'standard'],
    [severe, 6, false, '2026-06-10', 'standard'],
    [severe, 2, false, '2026-05-10', 'manufacturer'],
    [severe, undefined, true, '2026-06-10', 'standard'],
    [severe, 12, true, '2026-06-10', 'standard'],
  ])('%s, manufacturer %s months, two a year %s: due on %s by the %s', (...row) => {
    expect(next(row)).toEqual(['documented inspection', row[3], row[4]]);
  });

  // The laxer ends of the same ranges, which a program may choose.
  const laxerEnds: Partial<Program> = {
    typesOfUse: {
      [light]: { inspectionMonths: 12, revalidationMonths: 60 },
      [moderate]: { inspectionMonths: 12, revalidationMonths: 24 },
      [severe]: { inspectionMonths: 6, revalidationMonths: 12 },
    },
  };
  test.each<Row>([
    [moderate, undefined, false, '2027-03-10', 'standard'],
    [moderate, undefined, true, '2026-09-10', 'jurisdiction'],
    [moderate, 9, false, '2026-12-10', 'manufacturer'],
    [severe, undefined, false, '2026-09-10', 'standard'],
    [severe, undefined, true, '2026-09-10', 'standard'],
    [severe, 4, true, '2026-07-10', 'manufacturer'],
  ])('at the laxer end, %s, manufacturer %s months, two a year %s: due on %s by the %s', (...row) => {
    expect(next(row, laxerEnds)).toEqual(['documented inspection', row[3], row[4]]);
  });

  test('follows a stricter rule of the employer for a type of use, for a model, or for both', () => {
    const rule = (each: Partial<Program['employerRules'][number]>): Partial<Program> => ({
      employerRules: [{ inspectionMonths: 2, why: 'Salt spray on the quay', ...each }],
    });
    const row: Row = [moderate, undefined, false, '', ''];
    const stricter = ['documented inspection', '2026-05-10', 'employer'];
    const asBefore = ['documented inspection', '2026-09-10', 'standard'];
    expect(next(row, rule({}))).toEqual(stricter);
    expect(next(row, rule({ typeOfUse: moderate }))).toEqual(stricter);
    expect(next(row, rule({ typeOfUse: severe }))).toEqual(asBefore);
    expect(next(row, rule({ modelSheetId: 'M001' }))).toEqual(stricter);
    expect(next(row, rule({ modelSheetId: 'M002' }))).toEqual(asBefore);
    expect(next(row, rule({ typeOfUse: moderate, modelSheetId: 'M002' }))).toEqual(asBefore);
  });
});

describe('the day of the next documented inspection', () => {
  // Clamped to the month, as in ECMA Temporal (published): 2024-02-29 + 1 year = 2025-02-28, 2025-08-31 + 6 months = 2026-02-28.
  test.each([
    ['2024-02-29', 12, '2025-02-28'],
    ['2023-02-28', 12, '2024-02-28'],
    ['2025-08-31', 6, '2026-02-28'],
    ['2023-08-31', 6, '2024-02-29'],
    ['2025-11-30', 3, '2026-02-28'],
    ['2026-01-31', 1, '2026-02-28'],
    ['2026-12-31', 2, '2027-02-28'],
  ])('%s and %s months is %s', (on, months, due) => {
    const device = dueDevice({ ...inspectedOn(on), firstUsedOn: '2023' });
    const sheet = dueSheet({ manufacturerIntervalMonths: months });
    expect(datesOf(device, sheet)[0]?.slice(0, 2)).toEqual(['documented inspection', due]);
  });
});

describe('a change of the type of use', () => {
  const device = dueDevice({ uses: [used(light)] });

  test('counts from the last documented inspection, whenever it is recorded', () => {
    expect(datesOf(device)[0]?.[1]).toBe('2027-03-10');
    const harder = { ...device, uses: [used(light), used(severe, '2026-05-20')] };
    expect(datesOf(harder)[0]).toEqual(['documented inspection', '2026-06-10', 'standard']);
  });

  test('holds from the day that it names: one of an earlier day does not undo a later one', () => {
    const backDated = { ...device, uses: [used(severe, '2026-05-20'), used(light, '2026-04-01')] };
    expect(datesOf(backDated)[0]).toEqual(['documented inspection', '2026-06-10', 'standard']);
    const sameDay = { ...device, uses: [used(severe, '2026-05-20'), used(moderate, '2026-05-20')] };
    expect(datesOf(sameDay)[0]).toEqual(['documented inspection', '2026-09-10', 'standard']);
  });

  test('to a lighter one never moves a date past the one on the status tag', () => {
    const tagged = dueDevice({
      uses: [used(severe), used(light, '2026-04-01')],
      taggedDue: {
        on: '2026-06-10' as NonNullable<typeof device.taggedDue>['on'],
        what: 'documented inspection',
      },
    });
    expect(datesOf(tagged)[0]).toEqual(['documented inspection', '2026-06-10', 'tag']);
  });
});

describe('a device that was bought and is not in use yet', () => {
  test('is due for nothing until it passes its first documented inspection', () => {
    const { lastInspection: _last, ...bought } = dueDevice({
      standing: 'new',
      dateOfManufacture: '2015-02',
      purchasedOn: '2026-02',
      uses: [used(severe)],
    });
    expect(datesOf(bought, dueSheet({ serviceLife: { years: 10, from: 'manufacture' } }))).toEqual([]);
  });

  test('and then its interval counts from that inspection, not from its purchase', () => {
    const device = dueDevice({
      ...inspectedOn('2026-07-01'),
      purchasedOn: '2026-02',
      dateOfManufacture: '2026-01',
    });
    expect(datesOf(device)).toEqual([['documented inspection', '2027-07-01', 'employer']]);
  });

  test('a device out of service is due for nothing', () => {
    for (const standing of ['quarantined', 'at manufacturer', 'scrapped'] as const)
      expect(datesOf(dueDevice({ standing }))).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { Device } from '../../../src/domain/device.ts';
import { monthEndOf } from '../../../src/domain/due/due-dates.ts';
import type { TypeOfUse } from '../../../src/domain/due/type-of-use.ts';
import { datesOf, dueDevice, dueProgram, dueSheet, inspectedOn, used } from '../../support/due-fixture.ts';

const revalidation = (device: Partial<Device>, months?: number, program = dueProgram()) =>
  datesOf(
    dueDevice(device),
    dueSheet(months === undefined ? {} : { manufacturerRevalidationMonths: months }),
    program,
  ).find(([what]) => what === 'revalidation');

describe('revalidation by the manufacturer', () => {
  // ANSI/ASSP Z359.14 Appendix A (from memory): at least every 5, 2 and 1 years. Dates worked by hand.
  test.each<readonly [TypeOfUse, number | undefined, string, string]>([
    ['infrequent to light', undefined, '2027-05-14', 'standard'],
    ['infrequent to light', 36, '2025-05-14', 'manufacturer'],
    ['infrequent to light', 120, '2027-05-14', 'standard'],
    ['moderate to heavy', undefined, '2024-05-14', 'standard'],
    ['moderate to heavy', 18, '2023-11-14', 'manufacturer'],
    ['severe to continuous', undefined, '2023-05-14', 'standard'],
    ['severe to continuous', 24, '2023-05-14', 'standard'],
  ])('%s, manufacturer %s months: a device first used on 2022-05-14 is due on %s by the %s', (...row) => {
    const [use, months, on, rule] = row;
    expect(revalidation({ firstUsedOn: '2022-05-14', uses: [used(use)] }, months)).toEqual([
      'revalidation',
      on,
      rule,
    ]);
  });

  const light = [used('infrequent to light')];
  test.each<readonly [string, Partial<Device>, string]>([
    ['the month of its first use from the first of it', { firstUsedOn: '2022-05' }, '2027-05-01'],
    ['the year of its first use from the first of January', { firstUsedOn: '2022' }, '2027-01-01'],
    [
      'manufacture, where its first use is not known and it was bought later',
      { firstUsedOn: undefined, dateOfManufacture: '2021-11', purchasedOn: '2022-02' },
      '2026-11-01',
    ],
    [
      'purchase, where nothing else is known',
      { firstUsedOn: undefined, dateOfManufacture: 'not legible', purchasedOn: '2022-02-10' },
      '2027-02-10',
    ],
    [
      'its registration, where nothing at all is known',
      { firstUsedOn: undefined, dateOfManufacture: '' },
      '2031-02-20',
    ],
    [
      'the last revalidation, once there was one',
      {
        firstUsedOn: '2018',
        revalidation: {
          revalidatedOn: calendarDate('2025-06-30'),
          revalidatedBy: 'Norvane Service',
          certificate: 'NS-1',
        },
      },
      '2030-06-30',
    ],
    ['29 February, clamped to the month', { firstUsedOn: '2024-02-29' }, '2029-02-28'],
  ])('counts from %s', (_from, facts, on) => {
    expect(revalidation({ ...facts, uses: light })?.[1]).toBe(on);
  });

  test('moves when the day of first use is corrected', () => {
    expect(revalidation({ firstUsedOn: '2022-05-14', uses: light })?.[1]).toBe('2027-05-14');
    expect(revalidation({ firstUsedOn: '2021-12-01', uses: light })?.[1]).toBe('2026-12-01');
  });

  test('is not asked for by an annual program while nobody has determined the type of use', () => {
    expect(revalidation({ firstUsedOn: '2015' })).toBeUndefined();
    expect(revalidation({ firstUsedOn: '2015' }, 24)).toEqual(['revalidation', '2017-01-01', 'manufacturer']);
  });

  test('is asked for by a program that goes by type of use, at the longest that any type allows', () => {
    const byUse = dueProgram({
      typesOfUse: {
        'infrequent to light': { inspectionMonths: 12, revalidationMonths: 48 },
        'moderate to heavy': { inspectionMonths: 6, revalidationMonths: 24 },
        'severe to continuous': { inspectionMonths: 3, revalidationMonths: 12 },
      },
    });
    expect(revalidation({ firstUsedOn: '2022-05-14' }, undefined, byUse)).toEqual([
      'revalidation',
      '2026-05-14',
      'standard',
    ]);
  });

  test('comes first where it is the earliest', () => {
    const device = dueDevice({ firstUsedOn: '2025-04-02', uses: [used('severe to continuous')] });
    expect(datesOf(device)).toEqual([
      ['revalidation', '2026-04-02', 'standard'],
      ['documented inspection', '2026-06-10', 'standard'],
    ]);
  });
});

describe('the service life that a manufacturer states', () => {
  const ends = (device: Partial<Device>, from: 'manufacture' | 'first use') =>
    datesOf(dueDevice(device), dueSheet({ serviceLife: { years: 10, from } })).find(
      ([what]) => what === 'service life',
    );

  test('ends ten years after manufacture, or after first use, whichever the manual says', () => {
    const facts = { dateOfManufacture: '2018-08', firstUsedOn: '2019-02-28' };
    expect(ends(facts, 'manufacture')).toEqual(['service life', '2028-08-01', 'manufacturer']);
    expect(ends(facts, 'first use')).toEqual(['service life', '2029-02-28', 'manufacturer']);
  });

  test('counts from manufacture where the first use is not known, which is stricter', () => {
    const facts = { dateOfManufacture: '2018-08', firstUsedOn: undefined, purchasedOn: '2018-11' };
    expect(ends(facts, 'first use')).toEqual(['service life', '2028-08-01', 'manufacturer']);
  });

  test('is not lengthened by a revalidation', () => {
    const revalidated = { revalidatedOn: calendarDate('2026-01-15'), revalidatedBy: 'N', certificate: '1' };
    const facts = { dateOfManufacture: '2018-08', revalidation: revalidated };
    expect(ends(facts, 'manufacture')?.[1]).toBe('2028-08-01');
  });
});

describe('dating by the end of a month', () => {
  // Worked by hand; 2028 is a leap year.
  test.each([
    ['2027-03-10', '2027-02-28'],
    ['2027-03-31', '2027-03-31'],
    ['2028-03-01', '2028-02-29'],
    ['2028-02-29', '2028-02-29'],
    ['2028-02-28', '2028-01-31'],
    ['2027-02-28', '2027-02-28'],
    ['2027-01-01', '2026-12-31'],
    ['2027-05-30', '2027-04-30'],
  ])('makes %s into %s, never later', (exact, end) => {
    expect(monthEndOf(calendarDate(exact))).toBe(end);
  });

  test('is an option of the program, for every date', () => {
    const device = dueDevice({ ...inspectedOn('2026-03-10'), uses: [used('infrequent to light')] });
    expect(datesOf(device, dueSheet(), dueProgram({ monthEnd: true }))).toEqual([
      ['documented inspection', '2027-02-28', 'standard'],
      ['revalidation', '2031-02-28', 'standard'],
    ]);
  });
});

import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { Device } from '../../../src/domain/device.ts';
import { programReasons } from '../../../src/domain/due/program-reasons.ts';
import type { Program } from '../../../src/domain/program.ts';
import { dueDevice, dueProgram, dueSheet, used } from '../../support/due-fixture.ts';

const keysOn = (
  today: string,
  device: Device,
  changed: Partial<Program> = {},
  since?: string,
): readonly string[] =>
  programReasons(
    device,
    dueSheet(),
    { program: dueProgram(changed), since: since === undefined ? undefined : calendarDate(since) },
    calendarDate(today),
  ).map(({ key }) => key);

const revalidate = (graceDays = 0): Partial<Program> => ({
  missedInspection: { rule: 'revalidate', graceDays },
});

describe('a revalidation that is overdue', () => {
  const device = dueDevice({ firstUsedOn: '2024-05-14', uses: [used('moderate to heavy')] });

  test('keeps the device from passing from the day after on, and not on the day itself', () => {
    expect(keysOn('2026-05-14', device)).toEqual([]);
    expect(keysOn('2026-05-15', device)).toEqual(['program.revalidation-overdue']);
  });

  test('no longer does once a later revalidation is recorded', () => {
    const revalidation = { revalidatedOn: calendarDate('2026-05-12'), revalidatedBy: 'N', certificate: '1' };
    expect(keysOn('2026-05-15', { ...device, revalidation })).toEqual([]);
  });

  test('keeps a new device from passing its first inspection too', () => {
    const { lastInspection: _last, ...bought } = dueDevice({
      standing: 'new',
      firstUsedOn: '2019',
      uses: [used('infrequent to light')],
    });
    expect(keysOn('2026-05-15', bought)).toEqual(['program.revalidation-overdue']);
  });
});

test('a service life that is over keeps the device from passing for good', () => {
  const [reason] = programReasons(
    dueDevice({ dateOfManufacture: '2016-03-01' }),
    dueSheet({ serviceLife: { years: 10, from: 'manufacture' } }),
    { program: dueProgram() },
    calendarDate('2026-03-02'),
  );
  expect(reason).toMatchObject({ key: 'program.service-life-over', effect: 'remove' });
});

describe('a documented inspection that was missed', () => {
  const device = dueDevice({ taggedDue: { on: calendarDate('2027-03-10'), what: 'documented inspection' } });

  test('calls for another inspection, where the program says so', () => {
    expect(keysOn('2029-01-01', device)).toEqual([]);
  });

  // ANSI/ASSP Z359.14, notes to Appendix A (from memory): revalidation or disposal.
  test('calls for revalidation, where the program says so, from the day after its due date on', () => {
    expect(keysOn('2027-03-10', device, revalidate())).toEqual([]);
    expect(keysOn('2027-03-11', device, revalidate())).toEqual(['program.inspection-missed']);
  });

  test('counts as missed only after the grace that the program gives', () => {
    expect(keysOn('2027-03-17', device, revalidate(7))).toEqual([]);
    expect(keysOn('2027-03-18', device, revalidate(7))).toEqual(['program.inspection-missed']);
  });

  test('was not missed before the rule that asks for it held', () => {
    const twice = {
      ...revalidate(),
      inspectionInterval: { months: 6, source: dueProgram().inspectionInterval.source },
    };
    expect(keysOn('2026-10-15', device, twice)).toEqual(['program.inspection-missed']);
    expect(keysOn('2026-10-15', device, twice, '2026-10-15')).toEqual([]);
    expect(keysOn('2026-10-16', device, twice, '2026-10-15')).toEqual(['program.inspection-missed']);
    expect(keysOn('2026-10-15', device, twice, '2026-08-01')).toEqual(['program.inspection-missed']);
  });

  test('nor before the type of use that asks for it was determined to hold', () => {
    const harder = { ...device, uses: [used('severe to continuous', '2026-07-01')] };
    expect(keysOn('2026-07-01', harder, revalidate())).toEqual([]);
    expect(keysOn('2026-07-02', harder, revalidate())).toEqual(['program.inspection-missed']);
  });

  test('is made good by a revalidation after it', () => {
    const revalidation = { revalidatedOn: calendarDate('2027-04-01'), revalidatedBy: 'N', certificate: '1' };
    expect(keysOn('2027-04-10', { ...device, revalidation }, revalidate())).toEqual([]);
  });

  test('cannot be missed by a device that was never inspected', () => {
    const { lastInspection: _last, ...bought } = dueDevice({ standing: 'new' });
    expect(keysOn('2029-01-01', bought, revalidate())).toEqual([]);
  });
});

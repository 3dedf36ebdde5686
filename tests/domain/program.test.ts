import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../src/domain/brand.ts';
import { type Device, dueStateOf, nextActionOf } from '../../src/domain/device.ts';
import { nextDue } from '../../src/domain/program.ts';
import { program } from '../support/shipped-rules.ts';

const on = calendarDate('2026-08-31');

describe('the next documented inspection', () => {
  test('is due at least every 12 months (EN 365:2004, as quoted in manufacturers’ leaflets)', () => {
    expect(nextDue(on, program, undefined)).toEqual({ dueOn: '2027-08-31', rule: 'program', months: 12 });
  });

  test('is due earlier where the manufacturer asks for it, on the last day of a shorter month', () => {
    expect(nextDue(on, program, 6)).toEqual({ dueOn: '2027-02-28', rule: 'manufacturer', months: 6 });
  });

  test('is never due later because the manufacturer would allow it', () => {
    expect(nextDue(on, program, 24)).toEqual({ dueOn: '2027-08-31', rule: 'program', months: 12 });
    expect(nextDue(on, program, 12)).toMatchObject({ rule: 'program' });
  });
});

const device = (changed: Partial<Device>): Device => ({
  benchId: 'K7M3X43SXJ' as Device['benchId'],
  modelSheetId: 'M001',
  serial: 'N-1',
  dateOfManufacture: '2025',
  marking: [],
  otherCodes: [],
  registeredOn: calendarDate('2026-01-01'),
  standing: 'in service',
  dueOn: calendarDate('2026-12-31'),
  reasons: [],
  pastTags: [],
  lastTagNumber: 2,
  currentTag: { kind: 'status', tagNumber: 2, issuedOn: calendarDate('2025-12-31'), printed: 0 },
  ...changed,
});

describe('a device', () => {
  test.each([
    ['2026-11-30', 'current'],
    ['2026-12-01', 'due soon'],
    ['2026-12-31', 'due soon'],
    ['2027-01-01', 'overdue'],
  ])('that is due on 2026-12-31 is on %s %s', (today, expected) => {
    expect(dueStateOf(device({}), calendarDate(today), 30)).toBe(expected);
  });

  test('that was never inspected says so, and one that is out of service is not due', () => {
    expect(dueStateOf(device({ standing: 'new' }), on, 30)).toBe('never inspected');
    expect(dueStateOf(device({ standing: 'quarantined' }), on, 30)).toBe('out of service');
  });

  test('has one next action for each standing', () => {
    expect(nextActionOf(device({}))).toBe('start inspection');
    expect(nextActionOf(device({ openInspection: 4 }))).toBe('resume inspection');
    expect(nextActionOf(device({ standing: 'quarantined' }))).toBe('keep out of service');
    expect(nextActionOf(device({ standing: 'at manufacturer' }))).toBe('keep out of service');
    expect(nextActionOf(device({ standing: 'scrapped' }))).toBe('nothing: scrapped');
  });
});

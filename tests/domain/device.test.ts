import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../src/domain/brand.ts';
import { type Device, dueStateOf, nextActionOf } from '../../src/domain/device.ts';

const on = calendarDate('2026-08-31');

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
    const custody = { spell: 3, userId: 'P1', handedOutBy: 'P2', since: {} } as never;
    expect(nextActionOf(device({ custody }))).toBe('check in first');
    expect(nextActionOf(device({ standing: 'quarantined', custody }))).toBe('keep out of service');
    const released = { standing: 'quarantined', release: {} as never } as const;
    const openCheckIn = { unanswered: ['fall'], unexplained: [] };
    expect(nextActionOf(device({ ...released, openCheckIn }))).toBe('check in first');
    expect(nextActionOf(device(released))).toBe('start inspection');
    expect(nextActionOf(device({ standing: 'quarantined' }))).toBe('keep out of service');
    expect(nextActionOf(device({ standing: 'at manufacturer' }))).toBe('keep out of service');
    expect(nextActionOf(device({ standing: 'scrapped' }))).toBe('nothing: scrapped');
  });
});

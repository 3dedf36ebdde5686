import { describe, expect, test } from 'vitest';
import { calendarDate, instant } from '../../src/domain/brand.ts';
import { addDays, addMonths, dateInZone, daysBetween, isTimeZone } from '../../src/domain/calendar.ts';

describe('months added to a date', () => {
  /** ISO 8601 calendar; the day is clamped to the month, as in ECMA Temporal. */
  test.each([
    ['2024-02-29', 12, '2025-02-28'],
    ['2025-08-31', 6, '2026-02-28'],
    ['2026-11-24', 12, '2027-11-24'],
    ['2023-08-31', 6, '2024-02-29'],
    ['2026-12-31', 1, '2027-01-31'],
  ])('%s + %i months = %s', (from, months, expected) => {
    expect(addMonths(calendarDate(from), months)).toBe(expected);
  });
});

describe('days', () => {
  test('are counted over the end of February of a leap year', () => {
    expect(daysBetween(calendarDate('2024-02-28'), calendarDate('2024-03-01'))).toBe(2);
    expect(daysBetween(calendarDate('2026-03-01'), calendarDate('2026-02-28'))).toBe(-1);
    expect(addDays(calendarDate('2026-12-31'), 1)).toBe('2027-01-01');
  });
});

describe('the date of a moment', () => {
  /** Offsets from the IANA time zone database: Madrid is UTC+1 in winter, Denver UTC-7. */
  test('is the date on the wall calendar of the station', () => {
    const lateEvening = instant('2026-01-31T23:30:00.000Z');
    expect(dateInZone(lateEvening, 'Europe/Madrid')).toBe('2026-02-01');
    expect(dateInZone(lateEvening, 'America/Denver')).toBe('2026-01-31');
  });

  test('needs a time zone that exists', () => {
    expect(isTimeZone('Europe/Madrid')).toBe(true);
    expect(isTimeZone('Mars/Olympus')).toBe(false);
    expect(isTimeZone('')).toBe(false);
  });
});

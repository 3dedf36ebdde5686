/** What comes due in each week and month, on hand-made dates. */
import { expect, test } from 'vitest';
import { calendarDate } from '../../src/domain/brand.ts';
import { workload } from '../../src/planning/workload.ts';

// 31 December 2026 is a Thursday, 28 February 2028 a Monday of a leap year (from memory, and by the calendar of any phone).
const dates = ['2026-12-30', '2026-12-31', '2027-01-03', '2027-01-04', '2027-01-24', '2026-10-01'].map(
  calendarDate,
);

test('weeks go from Monday to Sunday over the end of a year, without a gap, and what is overdue stands apart', () => {
  expect(workload(dates, calendarDate('2026-12-31'), 'week')).toEqual({
    overdue: 2,
    periods: [
      { from: '2026-12-28', until: '2027-01-03', due: 2 },
      { from: '2027-01-04', until: '2027-01-10', due: 1 },
      { from: '2027-01-11', until: '2027-01-17', due: 0 },
      { from: '2027-01-18', until: '2027-01-24', due: 1 },
    ],
  });
});

test('months are whole ones, February of a leap year too', () => {
  const leap = ['2028-02-29', '2028-03-01', '2028-03-31'].map(calendarDate);
  expect(workload(leap, calendarDate('2028-02-28'), 'month')).toEqual({
    overdue: 0,
    periods: [
      { from: '2028-02-01', until: '2028-02-29', due: 1 },
      { from: '2028-03-01', until: '2028-03-31', due: 2 },
    ],
  });
});

test('a fleet of which nothing is due has the period of today alone', () => {
  expect(workload([], calendarDate('2026-03-10'), 'month').periods).toEqual([
    { from: '2026-03-01', until: '2026-03-31', due: 0 },
  ]);
});

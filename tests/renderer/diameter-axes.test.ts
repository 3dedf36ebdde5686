/** The axes of the diameter chart. */
import { describe, expect, it } from 'vitest';
import { chartAxes } from '../../renderer/drawing/diameter-axes.ts';
import { calendarDate } from '../../src/domain/brand.ts';
import { diameterTrend } from '../../src/domain/lifeline/trend.ts';

const trendOf = (...readings: readonly (readonly [string, number])[]) => {
  const trend = diameterTrend(
    readings.map(([on, diameterMm], index) => ({ inspection: index + 1, on: calendarDate(on), diameterMm })),
  );
  if (trend.kind !== 'trend') throw new Error(trend.kind);
  return trend;
};

describe('the axes of the diameter chart', () => {
  const trend = trendOf(['2025-01-01', 4.98], ['2025-07-02', 4.9], ['2026-01-01', 4.7]);
  const axes = chartAxes(trend, 4.6, 'mm', 1000, 300);

  it('run from the first day to the last, to scale: 182 of 365 days are not quite the middle', () => {
    expect(axes.x('2025-01-01')).toBe(0);
    expect(axes.x('2026-01-01')).toBe(1000);
    expect(axes.x('2025-07-02')).toBeCloseTo((1000 * 182) / 365, 9);
  });

  it('have every reading and the minimum inside, thinner further down', () => {
    for (const value of [4.98, 4.9, 4.7, 4.6]) {
      expect(axes.y(value)).toBeGreaterThanOrEqual(0);
      expect(axes.y(value)).toBeLessThanOrEqual(300);
    }
    expect(axes.y(4.6)).toBeGreaterThan(axes.y(4.98));
  });

  it('keep the band within the chart, however wide few readings make it', () => {
    for (const { lowMm, highMm } of trend.band)
      for (const value of [lowMm, highMm]) {
        expect(axes.clippedY(value)).toBeGreaterThanOrEqual(0);
        expect(axes.clippedY(value)).toBeLessThanOrEqual(300);
      }
  });

  it('have between two and eight ticks in round steps, whatever was read', () => {
    for (const [least, minimum] of [
      [4.98, 4.97],
      [4.7, 4.6],
      [3, 4.6],
      [1, 8],
    ] as const) {
      for (const [unit, millimetres] of [
        ['mm', 1],
        ['in', 25.4],
      ] as const) {
        const trend = trendOf(['2025-01-01', 5], ['2025-06-01', 5], ['2025-09-01', least]);
        const { ticks } = chartAxes(trend, minimum, unit, 1000, 300);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(8);
        for (const tick of ticks) {
          const thousandths = (tick / millimetres) * 1000;
          expect(thousandths).toBeCloseTo(Math.round(thousandths), 6);
        }
      }
    }
  });
});

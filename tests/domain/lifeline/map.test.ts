/** The map of a lifeline: to scale, nothing lost, and no label over another. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calendarDate, metres, millimetres } from '../../../src/domain/brand.ts';
import type {
  LifelineFinding,
  LifelineInspection,
} from '../../../src/domain/lifeline/lifeline-inspection.ts';
import { type LifelineMapRequest, lifelineMap } from '../../../src/domain/lifeline/map.ts';
import { placeLabels } from '../../../src/domain/lifeline/place-labels.ts';

const finding = (positionM: number, defect = 'kink'): LifelineFinding => ({
  check: 'lifeline.shape',
  defect,
  label: { en: 'Kink', es: 'Coca' },
  effect: 'remove',
  positionM,
});

const inspection = (
  findings: readonly LifelineFinding[],
  readings: readonly (readonly [number, number])[] = [],
  number = 1,
  on = '2026-03-10',
): LifelineInspection => ({
  inspection: number,
  state: 'signed',
  on: calendarDate(on),
  verdict: 'pass',
  findings: [...findings],
  readings: readings.map(([positionM, diameterMm]) => ({
    positionM: metres(positionM),
    diameterMm: millimetres(diameterMm),
  })),
});

/** Every character ten wide, so that a width can be counted by hand. */
const request = (
  inspections: readonly LifelineInspection[],
  changes: Partial<LifelineMapRequest> = {},
): LifelineMapRequest => ({
  ratedLengthM: metres(10),
  unit: 'm',
  inspections,
  width: 1000,
  gap: 8,
  markWidth: 20,
  measure: (text) => [...text].length * 10,
  textOfFindings: (findings) => (findings.length === 1 ? 'Kink' : `${findings.length} findings`),
  textOfReading: ({ diameterMm }) => diameterMm.toFixed(2),
  ...changes,
});

describe('the map', () => {
  test('puts each finding where it is, to scale from the hook', () => {
    const { rows } = lifelineMap(request([inspection([finding(0), finding(2.5), finding(10)])]));
    expect(rows[0]!.clusters.map(({ x }) => x)).toEqual([0, 250, 1000]);
  });

  test('is to scale in feet as in metres: 25 ft of 50 ft is the middle', () => {
    const fifty = { ratedLengthM: metres(15.24), unit: 'ft' } as const;
    const { rows, ticks } = lifelineMap(request([inspection([finding(25 * 0.3048)])], fifty));
    expect(rows[0]!.clusters[0]!.x).toBeCloseTo(500, 9);
    expect(ticks.find(({ value }) => value === 25)?.fraction).toBeCloseTo(0.5, 9);
  });

  test('makes one mark of findings whose marks would touch, from the first to the last of them', () => {
    // 20 wide on 1,000 for 10 m: nearer than 0.2 m.
    const { rows } = lifelineMap(
      request([inspection([finding(3.1), finding(3.25), finding(3.4), finding(3.7)])]),
    );
    expect(rows[0]!.clusters.map(({ fromM, toM, findings }) => [fromM, toM, findings.length])).toEqual([
      [3.1, 3.4, 3],
      [3.7, 3.7, 1],
    ]);
    expect(rows[0]!.clusters[0]!.label.text).toBe('3 findings');
  });

  test('has the newest inspection first, and earlier ones under it', () => {
    const map = lifelineMap(
      request([
        inspection([], [], 1, '2024-03-10'),
        inspection([], [], 7, '2026-03-10'),
        inspection([], [], 4, '2025-03-10'),
      ]),
    );
    expect(map.rows.map((row) => row.inspection.inspection)).toEqual([7, 4, 1]);
  });

  test('marks a reading that is below the minimum of the manufacturer, and none where there is no minimum', () => {
    const readings = [
      [0.5, 4.31],
      [5, 4.29],
      [9.5, 4.3],
    ] as const;
    const below = (minimumDiameterMm: number | undefined) =>
      lifelineMap(request([inspection([], readings)], { minimumDiameterMm })).rows[0]!.readings.map(
        ({ belowMinimum }) => belowMinimum,
      );
    expect(below(4.3)).toEqual([false, true, false]);
    expect(below(undefined)).toEqual([false, false, false]);
  });

  test('loses nothing and lets no label overlap or leave the drawing, wherever findings and readings lie', () => {
    const places = fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { maxLength: 50 });
    fc.assert(
      fc.property(places, places, (found, read) => {
        const given = inspection(
          found.map((positionM) => finding(positionM)),
          read.map((positionM) => [positionM, 4.7] as const),
        );
        const [row] = lifelineMap(request([given])).rows;
        expect(row!.clusters.flatMap(({ findings }) => findings)).toHaveLength(found.length);
        expect(row!.readings).toHaveLength(read.length);
        for (const labels of [row!.clusters, row!.readings].map((marks) => marks.map(({ label }) => label))) {
          labels.forEach((a, index) => {
            expect(a.left).toBeGreaterThanOrEqual(0);
            expect(a.left + a.width).toBeLessThanOrEqual(1000 + 1e-9);
            for (const b of labels.slice(index + 1)) {
              const apart =
                a.lane !== b.lane || a.left + a.width + 8 <= b.left || b.left + b.width + 8 <= a.left;
              expect(apart, JSON.stringify([a, b])).toBe(true);
            }
          });
        }
        for (const [index, { x }] of row!.clusters.entries()) {
          if (index > 0) expect(x).toBeGreaterThan(row!.clusters[index - 1]!.x);
        }
      }),
    );
  });
});

describe('a label', () => {
  const space = { width: 200, gap: 10, measure: (text: string) => [...text].length * 10 };

  test('is centred on its mark, and kept inside at the ends', () => {
    expect(
      placeLabels(
        [
          { x: 0, text: 'hook' },
          { x: 100, text: 'kink' },
          { x: 200, text: 'end' },
        ],
        space,
      ),
    ).toEqual([
      { left: 0, width: 40, lane: 0, text: 'hook' },
      { left: 80, width: 40, lane: 0, text: 'kink' },
      { left: 170, width: 30, lane: 0, text: 'end' },
    ]);
  });

  test('goes into the next lane where there is no room beside the one before', () => {
    const lanes = placeLabels(
      [
        { x: 100, text: 'kink' },
        { x: 120, text: 'bend' },
        { x: 160, text: 'burn' },
      ],
      space,
    ).map(({ lane }) => lane);
    // 80–120, 100–140, 140–180: the third has 20 between it and the first.
    expect(lanes).toEqual([0, 1, 0]);
  });

  test('that is wider than the drawing is cut, and says so', () => {
    const [label] = placeLabels([{ x: 50, text: 'a label that is far too long' }], space);
    expect(label!.width).toBeLessThanOrEqual(200);
    expect(label!.text).toBe('a label that is far…');
  });
});

import { describe, expect, test } from 'vitest';
import type { Picture } from '../../../src/tags/read/picture.ts';
import { exposed, lit } from './camera.ts';
import { blurred, type Field, smeared } from './field.ts';
import { type Print, printOf } from './print.ts';
import { randomOf } from './random.ts';
import { abraded, faded, scratched, soiled, torn } from './surface-wear.ts';
import { cameraDistanceMm, seen, type View } from './view.ts';
import { wear } from './wear.ts';
import { rangeAt, severityOf, wearLevels, wearScales } from './wear-amounts.ts';

const random = (seed = 1) => randomOf(seed, 'test');

/** 60×30 mm at 10 dots per millimetre. */
const plain = (luminance: number): Picture => ({
  width: 600,
  height: 300,
  luminance: new Uint8Array(600 * 300).fill(luminance),
});

const black: Print = printOf(plain(0), 10);
const white: Print = printOf(plain(255), 10);

const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((left, right) => left + right, 0) / values.length;

const same = (left: Float32Array | Uint8Array, right: Float32Array | Uint8Array): boolean =>
  Buffer.from(left.buffer).equals(Buffer.from(right.buffer));

const shareOf = (values: Float32Array | Uint8Array, test: (value: number) => boolean): number =>
  Array.from(values).filter(test).length / values.length;

describe('the random numbers', () => {
  test('are even between 0 and 1, and normal with deviation 1', () => {
    const stream = random();
    const even = Array.from({ length: 20_000 }, stream.next);
    const normal = Array.from({ length: 20_000 }, stream.normal);
    // Mean 1/2 and variance 1/12 of the even distribution; mean 0 and variance 1 of the normal one.
    expect(mean(even)).toBeCloseTo(0.5, 1);
    expect(mean(even.map((value) => (value - 0.5) ** 2))).toBeCloseTo(1 / 12, 2);
    expect(mean(normal)).toBeCloseTo(0, 1);
    expect(mean(normal.map((value) => value ** 2))).toBeCloseTo(1, 1);
  });

  test('differ by seed and by purpose', () => {
    expect(randomOf(1, 'a').next()).toBe(randomOf(1, 'a').next());
    expect(randomOf(1, 'a').next()).not.toBe(randomOf(2, 'a').next());
    expect(randomOf(1, 'a').next()).not.toBe(randomOf(1, 'b').next());
    expect(randomOf(1_000_000, 'a').next()).not.toBe(randomOf(0, 'a').next());
  });
});

describe('wear of the face', () => {
  test('fading leaves the share of the ink that is asked for and does not touch the material', () => {
    const pale = faded(black, { inkLeft: 0.4, unevenness: 0 }, random());
    expect(mean(pale.ink)).toBeCloseTo(0.4, 5);
    expect(same(pale.material, black.material)).toBe(true);
  });

  test('uneven fading differs from place to place within its swing', () => {
    const { ink } = faded(black, { inkLeft: 0.5, unevenness: 0.2 }, random());
    const [least, most] = [Math.min(...ink.slice(0, 60_000)), Math.max(...ink.slice(0, 60_000))];
    expect(most - least).toBeGreaterThan(0.02);
    expect(least).toBeGreaterThanOrEqual(0.3 - 1e-6);
    expect(most).toBeLessThanOrEqual(0.7 + 1e-6);
  });

  test.each([0.1, 0.3])('abrasion rubs %d of the face and never adds ink', (share) => {
    const { ink } = abraded(black, { share, depth: 1, grainMm: 4 }, random());
    expect(shareOf(ink, (value) => value < 1)).toBeCloseTo(share, 1);
    expect(shareOf(ink, (value) => value > 1)).toBe(0);
  });

  test.each([
    ['across the bars', 1, 0],
    ['along the bars', 0, 1],
  ])('a scratch %s takes ink in a line of that direction', (_, acrossBars, alongBars) => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const { ink } = scratched(black, { acrossBars, alongBars, widestMm: 0.4, longestMm: 20 }, random(seed));
      const touched = [...ink.keys()].filter((index) => (ink[index] ?? 1) < 1);
      const extent = (values: number[]): number => Math.max(...values) - Math.min(...values) + 1;
      const wide = extent(touched.map((index) => index % 600));
      const high = extent(touched.map((index) => Math.floor(index / 600)));
      expect(touched.length).toBeGreaterThan(0);
      if (acrossBars === 1) expect(wide).toBeGreaterThan(high);
      else expect(high).toBeGreaterThan(wide);
    }
  });

  test('dirt darkens, lies on the material and leaves the ink', () => {
    for (const amounts of [
      { stains: 3, stainDepth: 0.5, grease: 0, grains: 0 },
      { stains: 0, stainDepth: 0, grease: 0.4, grains: 0 },
      { stains: 0, stainDepth: 0, grease: 0, grains: 0.03 },
    ]) {
      const { ink, material } = soiled(white, amounts, random());
      expect(same(ink, white.ink)).toBe(true);
      expect(shareOf(material, (value) => value > 1)).toBe(0);
      expect(mean(material)).toBeLessThan(0.999);
    }
  });

  test('a tear takes a corner or an end and leaves the opposite corner', () => {
    for (const seed of [1, 2, 3, 4]) {
      const { whole, width, height } = torn(white, 15, random(seed));
      const corners = [0, width - 1, width * height - 1, width * (height - 1)].map((at) => whole[at] === 1);
      const lost = corners.indexOf(false);
      expect(lost).toBeGreaterThanOrEqual(0);
      expect(corners.some((there, corner) => !there && corners[(corner + 2) % 4] === true)).toBe(true);
      expect(shareOf(whole, (there) => there === 1)).toBeGreaterThan(0.5);
    }
    expect(same(torn(white, 0, random()).whole, white.whole)).toBe(true);
  });

  test('no wear leaves the print as it was, and what is given is never altered', () => {
    const before = structuredClone(black);
    const untouched = scratched(
      abraded(black, { share: 0, depth: 1, grainMm: 4 }, random()),
      { acrossBars: 0, alongBars: 0, widestMm: 0.4, longestMm: 20 },
      random(),
    );
    expect(same(untouched.ink, before.ink)).toBe(true);
    scratched(black, { acrossBars: 5, alongBars: 5, widestMm: 0.5, longestMm: 20 }, random());
    soiled(black, { stains: 2, stainDepth: 0.5, grease: 0.3, grains: 0.02 }, random());
    torn(black, 10, random());
    for (const part of ['ink', 'material', 'whole'] as const)
      expect(same(black[part], before[part])).toBe(true);
  });
});

const level: View = {
  dotsPerMm: 10,
  wrapDegrees: 0,
  pitchDegrees: 0,
  yawDegrees: 0,
  rollDegrees: 0,
  marginMm: 5,
};

/** Columns of the middle row in which the white tag is seen; what surrounds it is darker than 0.85. */
const widthSeen = (view: View): number => {
  const { scene } = seen(white, view, random());
  const middle = Math.floor(scene.height / 2) * scene.width;
  return shareOf(scene.values.slice(middle, middle + scene.width), (value) => value > 0.85) * scene.width;
};

describe('the view', () => {
  test('shows a flat tag of 60 mm at 10 dots a millimetre 600 dots wide', () => {
    expect(Math.abs(widthSeen(level) - 600)).toBeLessThanOrEqual(3);
  });

  test('foreshortens a tag that is wrapped round a housing', () => {
    // An end 45° round a housing of radius r = 30/(π/4) = 38.197 mm lies r·sin 45° = 27.010 mm beside the middle and
    // r·(1 − cos 45°) = 11.188 mm behind it; a pinhole camera at 300 mm shows that at 27.010 · 300/311.188 = 26.039 mm.
    expect(cameraDistanceMm).toBe(300);
    expect(Math.abs(widthSeen({ ...level, wrapDegrees: 45 }) - 520.8)).toBeLessThanOrEqual(4);
  });

  test('turns the tag by the angle that is asked for', () => {
    // The picture holds the turned tag and 5 mm around: 60·cos 10° + 30·sin 10° = 64.30 mm wide, and 10 mm.
    const { scene } = seen(white, { ...level, rollDegrees: 10 }, random());
    expect(Math.abs(scene.width - 743)).toBeLessThanOrEqual(2);
  });

  test('makes the far side of a tilted tag smaller', () => {
    const rows = (pitchDegrees: number) => seen(white, { ...level, pitchDegrees }, random()).scene.height;
    expect(rows(25)).toBeLessThan(rows(0) - 15);
  });
});

/** Dark to the left of the middle, light to the right. */
const edge: Field = {
  width: 100,
  height: 40,
  values: Float32Array.from({ length: 4000 }, (_, index) => (index % 100 < 50 ? 0 : 1)),
};

const between = ({ values, width }: Field, low: number, high: number): number =>
  Array.from(values.slice(20 * width, 21 * width)).filter((value) => value > low && value < high).length;

describe('the camera', () => {
  test('blurs an edge over 2.56 standard deviations from a tenth to nine tenths', () => {
    // Quantiles of the normal distribution: 2 · 1.2816; at a deviation of 6 dots 15.4 dots.
    expect(Math.abs(between(blurred(edge, 6), 0.1, 0.9) - 15.4)).toBeLessThanOrEqual(1.4);
  });

  test('smears an edge over the length of the motion', () => {
    expect(Math.abs(between(smeared(edge, 12, 0), 0.001, 0.999) - 12)).toBeLessThanOrEqual(1);
    expect(between(smeared(edge, 12, Math.PI / 2), 0.001, 0.999)).toBe(0);
  });

  test('adds noise of the deviation that is asked for in full light, and less in the dark', () => {
    const shot = (light: number) => {
      const scene: Field = { width: 200, height: 200, values: new Float32Array(40_000).fill(light) };
      const { luminance } = exposed(
        { scene, alongMm: new Float32Array(40_000) },
        { defocusDots: 0, motionDots: 0, noise: 8 },
        random(),
      );
      const middle = mean(luminance);
      return Math.sqrt(mean(Array.from(luminance, (value) => (value - middle) ** 2)));
    };
    // The root of (1 + light)/2 of the deviation in full light: √0.9 · 8 = 7.59 and √0.6 · 8 = 6.20.
    expect(shot(0.8)).toBeCloseTo(7.59, 0);
    expect(shot(0.2)).toBeCloseTo(6.2, 0);
  });

  test('light from one side leaves the darkest corner its share, and glare only brightens', () => {
    const scene: Field = { width: 200, height: 100, values: new Float32Array(20_000).fill(1) };
    const flat = { scene, alongMm: new Float32Array(20_000) };
    const dim = lit(flat, { darkestShare: 0.4, glare: 0, exposure: 1 }, random()).scene.values;
    const glaring = lit(flat, { darkestShare: 0.4, glare: 0.5, exposure: 1 }, random()).scene.values;
    expect(Math.min(...dim)).toBeGreaterThanOrEqual(0.39);
    expect(Math.max(...dim)).toBeLessThanOrEqual(1.01);
    expect(Math.max(...dim) - Math.min(...dim)).toBeGreaterThan(0.3);
    expect(glaring.every((value, index) => value >= (dim[index] ?? 1))).toBe(true);
  });
});

describe('the whole model', () => {
  const tag: Picture = {
    width: 240,
    height: 120,
    luminance: Uint8Array.from({ length: 28_800 }, (_, index) => (Math.floor((index % 240) / 10) % 2) * 255),
  };

  test('gives the same picture for the same seed and another for another', () => {
    const first = wear(tag, 'B', 11);
    expect(same(wear(tag, 'B', 11).luminance, first.luminance)).toBe(true);
    expect(same(wear(tag, 'B', 12).luminance, first.luminance)).toBe(false);
    expect(same(wear(tag, 'A', 11).luminance, first.luminance)).toBe(false);
  });

  test('takes contrast from the print', () => {
    const contrast = (picture: Picture): number => {
      const sorted = picture.luminance.toSorted();
      return (
        (sorted[Math.floor(0.95 * sorted.length)] ?? 0) - (sorted[Math.floor(0.05 * sorted.length)] ?? 0)
      );
    };
    const [fresh = 0, worst = 0] = (['fresh', 'C'] as const).map((name) =>
      mean([1, 2].map((seed) => contrast(wear(tag, name, seed)))),
    );
    expect(worst).toBeLessThan(fresh / 1.5);
  });

  test('has levels in rising order, none of them beyond its scales', () => {
    const severities = wearLevels.map((name) => severityOf[name]);
    expect(severities).toEqual([...severities].sort((left, right) => left - right));
    expect(new Set(severities).size).toBe(5);
    expect(Math.max(...severities)).toBeLessThanOrEqual(1);
  });

  test.each(Object.entries(wearScales))('draws %s between two ends in the right order', (_, scale) => {
    for (const name of wearLevels) {
      const [low, high] = rangeAt(scale, severityOf[name]);
      expect(low).toBeLessThanOrEqual(high);
    }
  });
});

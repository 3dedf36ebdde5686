/** Quantiles of Student's t, against a published table. */
import { expect, test } from 'vitest';
import { studentTQuantile } from '../../../src/domain/lifeline/student-t.ts';

/** NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, upper critical values; quoted from memory. */
const columns = [0.9, 0.95, 0.975, 0.99, 0.995] as const;
const table: Readonly<Record<number, readonly number[]>> = {
  1: [3.078, 6.314, 12.706, 31.821, 63.657],
  2: [1.886, 2.92, 4.303, 6.965, 9.925],
  3: [1.638, 2.353, 3.182, 4.541, 5.841],
  4: [1.533, 2.132, 2.776, 3.747, 4.604],
  5: [1.476, 2.015, 2.571, 3.365, 4.032],
  6: [1.44, 1.943, 2.447, 3.143, 3.707],
  8: [1.397, 1.86, 2.306, 2.896, 3.355],
  10: [1.372, 1.812, 2.228, 2.764, 3.169],
  15: [1.341, 1.753, 2.131, 2.602, 2.947],
  20: [1.325, 1.725, 2.086, 2.528, 2.845],
  30: [1.31, 1.697, 2.042, 2.457, 2.75],
  60: [1.296, 1.671, 2.0, 2.39, 2.66],
  100: [1.29, 1.66, 1.984, 2.364, 2.626],
};

test('the quantiles are those of the published table, to its last digit', () => {
  for (const [degrees, row] of Object.entries(table))
    row.forEach((published, column) => {
      const t = studentTQuantile(columns[column]!, Number(degrees));
      expect(Math.abs(t - published), `${degrees} degrees, ${columns[column]}`).toBeLessThanOrEqual(0.00051);
    });
});

test('with one and two degrees of freedom they are what the closed forms say', () => {
  // One degree is the Cauchy distribution, tan(π(p − ½)); two degrees have (2p − 1) / √(2p(1 − p)): by integration.
  for (const p of [0.6, 0.75, 0.9, 0.975, 0.999]) {
    expect(studentTQuantile(p, 1) / Math.tan(Math.PI * (p - 0.5))).toBeCloseTo(1, 10);
    expect(studentTQuantile(p, 2) / ((2 * p - 1) / Math.sqrt(2 * p * (1 - p)))).toBeCloseTo(1, 10);
  }
});

test('with very many degrees they come to the normal distribution', () => {
  // Normal quantile of 0.975: 1.959964 (NIST e-Handbook 1.3.6.7.1, from memory); the next term is (z³ + z) / 4ν.
  const z = 1.959964;
  expect(studentTQuantile(0.975, 100_000)).toBeCloseTo(z + (z ** 3 + z) / 400_000, 6);
});

test('the half of the distribution lies below nought, and what is no probability is refused', () => {
  expect(studentTQuantile(0.5, 7)).toBeCloseTo(0, 12);
  for (const [probability, degrees] of [
    [1, 5],
    [0.2, 5],
    [Number.NaN, 5],
    [0.975, 0],
    [0.975, 1.5],
  ] as const)
    expect(() => studentTQuantile(probability, degrees)).toThrow(RangeError);
});

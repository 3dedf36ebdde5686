/** A straight line through points by least squares, with the interval in which one further reading is to be expected. */
import { studentTQuantile } from './student-t.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Prediction {
  /** On the line. */
  readonly fitted: number;
  readonly low: number;
  readonly high: number;
}

export interface StraightLine {
  readonly intercept: number;
  readonly slope: number;
  /** The square root of the residual sum of squares over its degrees of freedom. */
  readonly residualDeviation: number;
  /** Points less two. */
  readonly degreesOfFreedom: number;
  /** The prediction interval of one further reading at `x`, which holds it with this `confidence` (0 to 1). */
  predict(x: number, confidence: number): Prediction;
}

/**
 * `undefined` where there are fewer than three points, or all have the same `x`. Interval: Montgomery and Runger, Applied
 * Statistics and Probability for Engineers, section 11-6: ŷ ± t √(σ̂² (1 + 1/n + (x − x̄)² / Sxx)).
 */
export const leastSquares = (points: readonly Point[]): StraightLine | undefined => {
  const count = points.length;
  const meanX = mean(points.map(({ x }) => x));
  const meanY = mean(points.map(({ y }) => y));
  const sumXX = sum(points.map(({ x }) => (x - meanX) ** 2));
  if (count < 3 || sumXX === 0) return undefined;
  const slope = sum(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / sumXX;
  const at = (x: number) => meanY + slope * (x - meanX);
  const degreesOfFreedom = count - 2;
  const residualDeviation = Math.sqrt(sum(points.map(({ x, y }) => (y - at(x)) ** 2)) / degreesOfFreedom);
  return {
    intercept: at(0),
    slope,
    residualDeviation,
    degreesOfFreedom,
    predict: (x, confidence) => {
      const t = studentTQuantile((1 + confidence) / 2, degreesOfFreedom);
      const half = t * residualDeviation * Math.sqrt(1 + 1 / count + (x - meanX) ** 2 / sumXX);
      const fitted = at(x);
      return { fitted, low: fitted - half, high: fitted + half };
    },
  };
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;

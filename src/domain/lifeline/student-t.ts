/** Quantiles of Student's t distribution, from the regularised incomplete beta function. */

/**
 * The t for which a share `probability` (0.5 to 1, exclusive of 1) of the distribution with `degrees` of freedom (a whole
 * number from 1 on) lies below it. Throws RangeError outside those.
 */
export const studentTQuantile = (probability: number, degrees: number): number => {
  if (!(probability >= 0.5 && probability < 1) || !Number.isInteger(degrees) || degrees < 1)
    throw new RangeError(`No t quantile for probability ${probability} and ${degrees} degrees of freedom.`);
  let low = 0;
  let high = 1;
  while (studentTShareBelow(high, degrees) < probability) high *= 2;
  for (let halving = 0; halving < 200; halving += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (studentTShareBelow(middle, degrees) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

/** For t from 0 on: 1 − I_x(ν/2, 1/2) / 2 with x = ν / (ν + t²) (NIST Digital Library of Mathematical Functions, §8.17). */
const studentTShareBelow = (t: number, degrees: number): number =>
  1 - incompleteBeta(degrees / (degrees + t * t), degrees / 2, 0.5) / 2;

/** I_x(a, b) by its continued fraction, which converges fast below the mean; above it, by symmetry (DLMF 8.17.4, 8.17.22). */
const incompleteBeta = (x: number, a: number, b: number): number => {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const logFactor = logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x);
  return (Math.exp(logFactor) / a) * continuedFraction(x, a, b);
};

/** Far more terms than it takes below the mean for any number of inspections of a device. */
const mostTerms = 1000;

/** Evaluated from the front by the method of Lentz. */
const continuedFraction = (x: number, a: number, b: number): number => {
  let numerator = 1;
  let denominator = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let value = denominator;
  for (let term = 1; term <= mostTerms; term += 1) {
    let change = 1;
    for (const coefficient of [
      (term * (b - term) * x) / ((a + 2 * term - 1) * (a + 2 * term)),
      (-(a + term) * (a + b + term) * x) / ((a + 2 * term) * (a + 2 * term + 1)),
    ]) {
      denominator = 1 / awayFromZero(1 + coefficient * denominator);
      numerator = awayFromZero(1 + coefficient / numerator);
      change = numerator * denominator;
      value *= change;
    }
    if (Math.abs(change - 1) < Number.EPSILON) break;
  }
  return value;
};

const awayFromZero = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);

/** ln Γ(x) for x from 0.5 on: by recurrence to where Stirling's series is exact to double precision (DLMF 5.11.1). */
const logGamma = (x: number): number => {
  if (x < 10) return logGamma(x + 1) - Math.log(x);
  const inverseSquare = 1 / (x * x);
  const series =
    (1 / 12 -
      inverseSquare *
        (1 / 360 - inverseSquare * (1 / 1260 - inverseSquare * (1 / 1680 - inverseSquare / 1188)))) /
    x;
  return (x - 0.5) * Math.log(x) - x + Math.log(2 * Math.PI) / 2 + series;
};

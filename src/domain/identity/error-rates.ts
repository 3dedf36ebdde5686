/**
 * How often each fact is taken down wrongly: the m side of the weights.
 *
 * Every number here is common practice, no source: an estimate of our own, on the careful side, that no study stands behind.
 * The form of the model is that of record linkage: a weight is log2(m / u) (Fellegi and Sunter 1969, "A theory for record
 * linkage", from memory), and a fact is either a hit, with the value of the device, or a miss, with any value as it
 * occurs in the population (the hit-miss model of Copas and Hilton 1990, from memory).
 */

/** The probability that the fact was taken down from something else than the device, or by mistake. */
export const missRates = {
  manufacturer: 0.02,
  model: 0.03,
  /** Measured off: not fully paid out, shortened, or a slip of the tape. */
  lengthM: 0.04,
  /** Dirty stainless is taken for galvanised, and the other way round. */
  lifelineMaterial: 0.06,
  hookType: 0.06,
  /** Faded, painted over or filthy. */
  housingColour: 0.1,
  dateOfManufacture: 0.02,
  serial: 0.01,
  benchId: 0.01,
  tagNumber: 0.03,
  /** Devices change hands, and memory errs. */
  lastUserId: 0.35,
  found: 0.1,
} as const;

/** Of a measured length: a part of the length and a fixed part for where the tape was held, as one standard deviation. */
export const lengthSpread = { ofLength: 0.015, fixedM: 0.04 } as const;

/** The longest lifeline that a measurement taken off something else would show. */
export const longestLifelineM = 60;

/** Of a tag that is found on a device: that it is the newest one, and not an old one that stayed on. */
export const newestTagShare = 0.9;

/** For the reading of one character that is there. */
export const characterRates = {
  /** Taken for one that looks alike. */
  confused: 0.01,
  /** Taken for any other. */
  wrong: 0.002,
  /** Overlooked, so that it is missing from what was taken down. */
  overlooked: 0.001,
  /** One is taken down that is not there, beside it. */
  invented: 0.001,
} as const;

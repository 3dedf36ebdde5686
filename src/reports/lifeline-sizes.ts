/** The sizes of the map of a lifeline on paper. */
export const mapSizes = {
  /** Beside the rope, so that a mark at its end stays on the page. */
  marginMm: 2,
  headingGapMm: 1.5,
  laneMm: 4,
  ropeMm: 2.2,
  /** Between the rope and the labels. */
  stemMm: 2.6,
  markMm: 3.2,
  /** Of the mark of a diameter. */
  dotMm: 1.1,
  lineMm: 0.25,
  labelPaddingMm: 0.6,
  rowGapMm: 3,
  scaleMm: 10.5,
  /** From the top of a line of words to where they stand. */
  baselineMm: 3,
} as const;

/** The classes of age in which removals are counted. */

/** Ages in whole years, from the first of each class on. Common practice, no source. */
export const ageClasses = [0, 2, 5, 10] as const;

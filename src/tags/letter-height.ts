/** How high letters must be, from the distance at which they are read. */
import { mmPerInch } from '../typesetting/primitive.ts';
import { xHeightEm } from '../typesetting/typeface.ts';

/** 5 ft, at which the signal word of an accident prevention tag must be read (29 CFR 1910.145(f)(4)(ii)). */
const tagViewingDistanceIn = 60;

/** Signal word at least 1/150 of the viewing distance (ANSI Z535.2 §9.2.3): 0.40 in at 5 ft. */
export const signalWordCapMm = (tagViewingDistanceIn / 150) * mmPerInch;

/** Other words that must be read from there at least 1/300 (ANSI Z535.2 §9.2.3): 0.20 in at 5 ft. */
export const majorMessageCapMm = (tagViewingDistanceIn / 300) * mmPerInch;

/** Bench ID and due month at arm's length, 0.7 m, by the same 1/300. */
export const armsLengthCapMm = 700 / 300;

/**
 * The smallest em size of anything printed: `x` of 1.2 mm, the least that Regulation (EU) 1169/2011 article 13(2) takes
 * for legible print (from memory).
 */
export const smallestSizeMm = 1.2 / xHeightEm;

/**
 * How much of each kind of wear a picture has, by level.
 *
 * One number, the severity, drives all kinds together, so that no level is made of one trick. Each kind has a range at
 * severity 0 and one at severity 1; a level lies between, and every picture draws its own amounts within the range.
 */
import type { Random } from './random.ts';

export const wearLevels = ['fresh', 'used', 'A', 'B', 'C'] as const;
export type WearLevel = (typeof wearLevels)[number];

/**
 * Levels A, B and C are set by what general decoders can do and by nothing else: at A the best single one reads about half
 * of the pictures, at B about 5 in 100, at C none reads any.
 */
export const severityOf: Readonly<Record<WearLevel, number>> = {
  fresh: 0,
  used: 0.2,
  A: 0.475,
  B: 0.62,
  C: 0.8,
};

type Range = readonly [number, number];

/** At severity 0, and at severity 1. */
type Scale = readonly [Range, Range];

export const wearScales = {
  /** Share of the ink that is left. */
  inkLeft: [
    [0.97, 1],
    [0.25, 0.4],
  ],
  /** Swing of that share to either side. */
  fadingUnevenness: [
    [0, 0.02],
    [0.1, 0.2],
  ],
  /** Share of the face that is rubbed. */
  abradedShare: [
    [0, 0],
    [0.25, 0.4],
  ],
  /** Share of the ink that goes where it is rubbed hardest. */
  abrasionDepth: [
    [0.5, 0.7],
    [0.7, 1],
  ],
  /** Size of the rubbed blobs, mm. */
  abrasionGrainMm: [
    [3, 9],
    [3, 9],
  ],
  /** Scratches across the bars, on the whole tag. */
  scratchesAcrossBars: [
    [0, 0],
    [20, 40],
  ],
  /** Scratches along the bars, on the whole tag. */
  scratchesAlongBars: [
    [0, 0],
    [25, 45],
  ],
  scratchWidestMm: [
    [0.2, 0.2],
    [0.4, 0.7],
  ],
  scratchLongestMm: [
    [20, 40],
    [40, 80],
  ],
  stains: [
    [0, 0],
    [3, 7],
  ],
  /** Share of the light that a stain takes away. */
  stainDepth: [
    [0.1, 0.2],
    [0.3, 0.6],
  ],
  /** Share of the light that the film of grease takes away. */
  grease: [
    [0, 0.03],
    [0.2, 0.5],
  ],
  /** Share of the face under grains of dirt. */
  grains: [
    [0, 0],
    [0.01, 0.05],
  ],
  /** How deep a corner is torn off, mm; below 0 none is. */
  tearMm: [
    [-40, 0],
    [-20, 20],
  ],
  wrapDegrees: [
    [0, 10],
    [15, 45],
  ],
  pitchDegrees: [
    [-3, 3],
    [-22, 22],
  ],
  yawDegrees: [
    [-3, 3],
    [-15, 15],
  ],
  rollDegrees: [
    [-3, 3],
    [-15, 15],
  ],
  /** Light on the darkest side as a share of the brightest. */
  darkestShare: [
    [0.85, 1],
    [0.35, 0.7],
  ],
  glare: [
    [0, 0],
    [0, 0.6],
  ],
  exposure: [
    [0.8, 0.95],
    [0.6, 0.95],
  ],
  /** Standard deviation of the blur, mm on the tag. */
  defocusMm: [
    [0.04, 0.07],
    [0.22, 0.36],
  ],
  motionMm: [
    [0, 0.05],
    [0.2, 0.6],
  ],
  /** Standard deviation of the noise in full light, in steps of 255. */
  noise: [
    [1, 2],
    [6, 12],
  ],
  jpegQuality: [
    [88, 94],
    [40, 70],
  ],
} as const satisfies Record<string, Scale>;

export type WearAmounts = Readonly<Record<keyof typeof wearScales, number>>;

/** The range of one kind of wear at a severity. */
export const rangeAt = ([[low0, high0], [low1, high1]]: Scale, severity: number): Range => [
  low0 + (low1 - low0) * severity,
  high0 + (high1 - high0) * severity,
];

export const drawAmounts = (severity: number, random: Random): WearAmounts =>
  Object.fromEntries(
    Object.entries(wearScales).map(([kind, scale]) => [kind, random.between(...rangeAt(scale, severity))]),
  ) as WearAmounts;

/** How surely a notice speaks of a device: a recall never says no where it is not certain. */
import { z } from 'zod';

export const matchLevelSchema = z.enum(['certain', 'possible', 'no']);
export type MatchLevel = z.infer<typeof matchLevelSchema>;

const rank: Record<MatchLevel, number> = { no: 0, possible: 1, certain: 2 };

/** Of conditions that must all hold. */
export const allOf = (levels: readonly MatchLevel[]): MatchLevel =>
  levels.reduce<MatchLevel>((least, level) => (rank[level] < rank[least] ? level : least), 'certain');

/** Of conditions of which one is enough. */
export const anyOf = (levels: readonly MatchLevel[]): MatchLevel =>
  levels.reduce<MatchLevel>((most, level) => (rank[level] > rank[most] ? level : most), 'no');

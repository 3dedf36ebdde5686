/** What a part of a tag asks for: how large it would like to be, how small it may be, and whether the tag may go without it. */
import { sizeAt } from './stack.ts';

export interface PartRule {
  /** Em size on the default stock of the kind; larger and smaller stock scale it. */
  readonly preferredMm: number;
  /** Em size under which the part is not legible at its distance. */
  readonly minimumMm: number;
}

/** Between preferred (tightness 0) and minimum (1) on stock that is `scale` times the default one. */
export const sizeOf = (rule: PartRule, scale: number, tightness: number): number =>
  sizeAt(tightness, rule.preferredMm * scale, rule.minimumMm);

/** Keys as the wedge takes them, from their names. */
import type { StruckKey } from '../../renderer/scan/wedge.ts';

export interface Stroke {
  readonly key: string;
  readonly at: number;
}

export const struck = ({ key, at }: Stroke): StruckKey => {
  if (key === 'Shift') return { kind: 'modifies' };
  if (key === 'Enter' || key === 'Tab') return { kind: 'ends', end: key, at };
  if (key.length > 1) return { kind: 'breaks' };
  return { kind: 'writes', stroke: { text: key, code: '', shift: false, capsLock: false, at } };
};

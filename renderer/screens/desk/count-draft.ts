/** A count that is under way stays with the window, so that a device which is found out is checked in without losing it. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';

export interface CountDraft {
  readonly scanned: readonly BenchId[];
  readonly unknown: readonly string[];
  /** Devices of another place whose place is this one from now on. */
  readonly keepHere: readonly BenchId[];
}

const emptyCount: CountDraft = { scanned: [], unknown: [], keepHere: [] };
const underWay = new Map<string, CountDraft>();

/** Without a change the draft of the place is given up. */
export type ChangeCount = (change?: (draft: CountDraft) => CountDraft) => void;

export const useCountDraft = (place: string): readonly [CountDraft, ChangeCount] => {
  const [draft, setDraft] = useState(() => underWay.get(place) ?? emptyCount);
  const change: ChangeCount = (how) => {
    if (how === undefined) underWay.delete(place);
    else {
      const changed = how(underWay.get(place) ?? emptyCount);
      underWay.set(place, changed);
      setDraft(changed);
    }
  };
  return [draft, change];
};

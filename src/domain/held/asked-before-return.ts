/** What must exist before a device returns, for all of its reasons together: each piece once, with the reasons that ask for it. */
import type { Message } from '../message.ts';
import type { Reason } from '../verdict.ts';
import type { ReleaseTerms } from './missing-evidence.ts';
import { type EvidenceKind, needsOf } from './release-rules.ts';

export interface AskedEvidence {
  /** The places of the reasons in the list of the device, from 1 on, ascending. */
  readonly reasons: readonly number[];
  /** Any one of them will do; the usual one first. */
  readonly kinds: readonly EvidenceKind[];
}

/** In the order of the reasons; whether some of it exists already makes no difference. */
export const askedBeforeReturn = (
  reasons: readonly Reason[],
  { rules, program }: ReleaseTerms,
): readonly AskedEvidence[] => {
  const asked = new Map<string, AskedEvidence>();
  for (const [index, { key }] of reasons.entries()) {
    for (const group of needsOf(rules, program.release, key)) {
      const name = group.join();
      const known = asked.get(name);
      const kinds =
        known?.kinds ??
        group
          .map((each) => rules.kinds.find((kind) => kind.key === each))
          .filter((kind) => kind !== undefined);
      asked.set(name, { reasons: [...(known?.reasons ?? []), index + 1], kinds });
    }
  }
  return [...asked.values()];
};

/** In few words, for a tag; where it cannot exist, what to do instead. */
export const shortWords = ({ how, label, missing }: EvidenceKind): Message =>
  how === 'never' ? missing : label;

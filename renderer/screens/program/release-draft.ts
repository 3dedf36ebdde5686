/** A release rule of the employer as it is put together: what the trade asks for, and what is asked for besides. */
import type { EvidenceNeeds, StrictRelease } from '../../../src/domain/held/release-rules.ts';
import type { OutputOf } from '../../../src/station/contract.ts';

export type ReleaseOfTrade = OutputOf<'program.show'>['release'];

/** Kinds that can be asked for besides: what can never exist is none of them. */
export const kindsToAsk = ({ kinds }: ReleaseOfTrade): ReleaseOfTrade['kinds'] =>
  kinds.filter(({ how }) => how !== 'never');

export const needsOfRule = ({ rules }: ReleaseOfTrade, rule: string): EvidenceNeeds =>
  rules.find(({ key }) => key === rule)?.needs ?? [];

/** Kinds that are asked for whatever else there is. */
export const certain = (needs: EvidenceNeeds): readonly string[] =>
  needs.filter((group) => group.length === 1).flat();

/**
 * The needs of the trade with each of `besides` asked for by itself. One that was a choice among several is no choice any
 * more.
 */
export const strictNeeds = (ofTrade: EvidenceNeeds, besides: readonly string[]): EvidenceNeeds => [
  ...ofTrade.filter((group) => group.length === 1 || !group.some((key) => besides.includes(key))),
  ...besides.filter((key) => !certain(ofTrade).includes(key)).map((key) => [key]),
];

/** `undefined` where it would ask for nothing more than the trade does. */
export const strictRelease = (
  release: ReleaseOfTrade,
  rule: string,
  besides: readonly string[],
  persons: number,
): StrictRelease | undefined => {
  const ofTrade = needsOfRule(release, rule);
  const more = besides.filter((key) => !certain(ofTrade).includes(key));
  if (more.length === 0 && persons <= 2) return undefined;
  return { for: rule, needs: strictNeeds(ofTrade, more), ...(persons <= 2 ? {} : { persons }) };
};

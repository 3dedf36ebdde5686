/** The rules of "who is this?": what may be guessed, who proposes, who must look and agree, and what follows. */
import type { BenchId } from '../brand.ts';
import { isCompetentOn } from '../competence.ts';
import type { Device } from '../device.ts';
import type { DomainEvent, Occasion } from '../event.ts';
import { type CaseRanking, candidatesInCase, type IdentityCase } from '../identity/identity-case.ts';
import { type Observation, seenFields } from '../identity/observation.ts';
import type { Person } from '../person.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Reason } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { removalOf } from './device.ts';

/** Why a person is no competent person today, or `undefined` where they are one. */
const notCompetent = (person: Person, { on }: Occasion): Refusal | undefined =>
  isCompetentOn(person, on) ? undefined : refusal('identity-competent-person-needed', { name: person.name });

export interface NewIdentityCase {
  readonly identityCase: number;
  readonly observation: Observation;
  readonly ranking: CaseRanking;
  readonly keptAt: string;
}

/** A competent person opens the case; the ranking is kept as it was, cut to as many as can be compared. */
export const decideOpenIdentity = (
  { identityCase, observation, ranking, keptAt }: NewIdentityCase,
  person: Person,
  occasion: Occasion,
): Decision => {
  const unfit = notCompetent(person, occasion);
  if (unfit !== undefined) return unfit;
  if (seenFields(observation).length === 0) return refusal('identity-nothing-seen', {}, 'observation');
  const candidates = ranking.candidates.slice(0, candidatesInCase);
  return [
    { type: 'identity.opened', identityCase, observation, ranking: { ...ranking, candidates }, keptAt },
  ];
};

/** Proposing changes nothing about the candidate: it may well be another device, at work on somebody's back. */
export const decideProposeIdentity = (
  identity: IdentityCase,
  candidate: Device,
  person: Person,
  occasion: Occasion,
): Decision => {
  const { identityCase } = identity;
  if (identity.state !== 'open') return notOpen(identity);
  const unfit = notCompetent(person, occasion);
  if (unfit !== undefined) return unfit;
  if (!isCandidate(identity, candidate.benchId)) {
    return refusal('identity-not-a-candidate', { benchId: candidate.benchId, identityCase }, 'candidate');
  }
  if (candidate.standing === 'scrapped')
    return refusal('identity-scrapped', { benchId: candidate.benchId }, 'candidate');
  return [{ type: 'identity.proposed', identityCase, candidate: candidate.benchId }];
};

const isCandidate = ({ ranking }: IdentityCase, benchId: BenchId): boolean =>
  ranking.candidates.some((candidate) => candidate.benchId === benchId);

/** Why a person may not be the second one of this case, or `undefined` where they may. */
export const unfitAsSecond = (
  identity: IdentityCase,
  person: Person,
  occasion: Occasion,
): Refusal | undefined => {
  const { identityCase, proposal } = identity;
  if (identity.state === 'open') return refusal('identity-not-proposed', { identityCase });
  if (identity.state !== 'proposed' || proposal === undefined) return notOpen(identity);
  if (proposal.by === person.personId) return refusal('identity-second-person', { name: person.name });
  return person.roles.includes('attendant') || isCompetentOn(person, occasion.on)
    ? undefined
    : refusal('identity-second-not-entitled', { name: person.name });
};

/**
 * The second person looked at the device and agrees. The device goes out of service at once, for its marking is
 * unreadable; an open inspection of it is broken off, and what that had `found` is kept among the reasons.
 */
export const decideTakeIdentity = (
  identity: IdentityCase,
  candidate: Device,
  found: readonly Reason[],
  person: Person,
  occasion: Occasion,
): Decision => {
  const unfit = unfitAsSecond(identity, person, occasion);
  if (unfit !== undefined) return unfit;
  if (identity.proposal?.benchId !== candidate.benchId) {
    return refusal('identity-not-a-candidate', {
      benchId: candidate.benchId,
      identityCase: identity.identityCase,
    });
  }
  if (candidate.standing === 'scrapped') return refusal('identity-scrapped', { benchId: candidate.benchId });
  const taken: DomainEvent = {
    type: 'identity.taken',
    identityCase: identity.identityCase,
    benchId: candidate.benchId,
    proposedBy: identity.proposal.by,
  };
  return [taken, ...removalOf(candidate, [presumedReason(identity.identityCase), ...found])];
};

/** The key of the reason that keeps a device out of service while its identity is presumed. */
export const presumedReasonKey = 'identity.presumed';

const presumedReason = (identityCase: number): Reason => ({
  key: presumedReasonKey,
  zone: 'marking',
  effect: 'remove',
  sentence: {
    en: `Manufacturer’s marking unreadable. Identity presumed by two people, case ${identityCase}.`,
    es: `Marcado del fabricante ilegible. Identidad supuesta por dos personas, caso ${identityCase}.`,
  },
});

/** The second person looked at the device and says that it is another. */
export const decideDisagree = (
  identity: IdentityCase,
  why: string,
  person: Person,
  occasion: Occasion,
): Decision => {
  const unfit = unfitAsSecond(identity, person, occasion);
  if (unfit !== undefined) return unfit;
  if (identity.proposal === undefined) return notOpen(identity);
  const { identityCase, proposal } = identity;
  return [{ type: 'identity.disagreed', identityCase, candidate: proposal.benchId, why }];
};

/** None of these: the device stays where it is kept, and nothing of the register is touched. */
export const decideLeaveUnidentified = (
  identity: IdentityCase,
  keptAt: string,
  person: Person,
  occasion: Occasion,
): Decision => {
  if (identity.state !== 'open' && identity.state !== 'proposed') return notOpen(identity);
  return (
    notCompetent(person, occasion) ?? [
      { type: 'identity.left-unidentified', identityCase: identity.identityCase, keptAt },
    ]
  );
};

const notOpen = ({ identityCase, state }: IdentityCase): Refusal =>
  refusal('identity-case-not-open', { identityCase, state });

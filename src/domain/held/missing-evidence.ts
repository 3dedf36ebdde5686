/** What is still missing before a held device may go back to the bench, reason by reason. */
import type { Device } from '../device.ts';
import type { Program } from '../program.ts';
import type { Reason } from '../verdict.ts';
import { personsBehind } from './evidence.ts';
import { type EvidenceKind, needsOf, personsOf, type ReleaseRules } from './release-rules.ts';

export interface ReleaseTerms {
  readonly rules: ReleaseRules;
  readonly program: Pick<Program, 'release'>;
}

/** One piece of evidence that does not exist yet; any one of `kinds` will do. */
export interface MissingEvidence {
  /** The place of the reason in the list of the device, from 1 on. */
  readonly reason: number;
  /** In the order of the rule: the usual one first. */
  readonly kinds: readonly EvidenceKind[];
  /** Recorded already, and waiting for another person: the number of the evidence. */
  readonly unconfirmed?: number | undefined;
  /** How many persons must still look and agree to it. */
  readonly stillToAgree?: number | undefined;
}

/** Empty where everything is there that the reasons of the device ask for. */
export const missingEvidence = (device: Device, terms: ReleaseTerms): readonly MissingEvidence[] =>
  device.reasons.flatMap((reason, index) => missingFor(device, reason, index + 1, terms));

const missingFor = (
  device: Device,
  { key }: Reason,
  reason: number,
  { rules, program }: ReleaseTerms,
): readonly MissingEvidence[] => {
  const persons = personsOf(rules, program.release, key);
  return needsOf(rules, program.release, key)
    .map((group) =>
      group.map((key) => rules.kinds.find((kind) => kind.key === key)).filter((kind) => kind !== undefined),
    )
    .filter((kinds) => !kinds.some((kind) => exists(device, reason, kind, persons)))
    .map((kinds) => ({ reason, kinds, ...unconfirmedOf(device, reason, kinds, persons) }));
};

const exists = (device: Device, reason: number, kind: EvidenceKind, persons: number): boolean => {
  if (!isTrueBesides(device, kind)) return false;
  switch (kind.how) {
    case 'never':
      return false;
    case 'fall case':
      return (
        (device.fallCases ?? []).some(({ covers = 0 }) => covers >= reason) &&
        (device.fallCases ?? []).every(({ closedOn }) => closedOn !== undefined)
      );
    case 'certificate':
      return recordedFor(device, reason, kind).length > 0;
    case 'statement':
      return recordedFor(device, reason, kind).some((entry) => personsBehind(entry).length >= persons);
  }
};

const isTrueBesides = ({ presumedIdentity, custody }: Device, { also }: EvidenceKind): boolean => {
  switch (also) {
    case undefined:
      return true;
    case 'identity not presumed':
      return presumedIdentity === undefined;
    case 'checked in':
      return custody === undefined;
  }
};

const recordedFor = ({ evidence = [] }: Device, reason: number, { key }: EvidenceKind) =>
  evidence.filter(
    ({ kind, covers, withdrawn }) => kind === key && withdrawn === undefined && covers.includes(reason),
  );

const unconfirmedOf = (
  device: Device,
  reason: number,
  kinds: readonly EvidenceKind[],
  persons: number,
): Pick<MissingEvidence, 'unconfirmed' | 'stillToAgree'> => {
  const waiting = kinds
    .filter(({ how }) => how === 'statement')
    .flatMap((kind) => recordedFor(device, reason, kind))
    .find((entry) => personsBehind(entry).length < persons);
  return waiting === undefined
    ? {}
    : { unconfirmed: waiting.evidence, stillToAgree: persons - personsBehind(waiting).length };
};

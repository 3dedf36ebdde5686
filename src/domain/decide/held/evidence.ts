/** The rules of recording evidence for the return of a held device, and of agreeing to it and taking it back. */
import type { CalendarDate } from '../../brand.ts';
import { isCompetentOn } from '../../competence.ts';
import type { Device } from '../../device.ts';
import type { DomainEvent, Occasion } from '../../event.ts';
import { type EvidenceEntry, personsBehind, type RecordedEvidence } from '../../held/evidence.ts';
import type { ReleaseTerms } from '../../held/missing-evidence.ts';
import { type EvidenceKind, needsOf, personsOf } from '../../held/release-rules.ts';
import type { Person } from '../../person.ts';
import { type Refusal, refusal } from '../../refusal.ts';
import type { Reason } from '../../verdict.ts';
import type { Decision } from '../decision.ts';
import { removalOf } from '../device.ts';

export interface EvidencePlace {
  readonly terms: ReleaseTerms;
  /** Since when each open reason holds the device, in their order. */
  readonly since: readonly CalendarDate[];
  readonly person: Person;
}

/** Only for open reasons that ask for it, and never older than they are: an earlier certificate knew nothing of them. */
export const decideRecordEvidence = (
  device: Device,
  entry: EvidenceEntry,
  { terms, since, person }: EvidencePlace,
  { on }: Occasion,
): Decision => {
  const notHeld = heldFault(device);
  if (notHeld !== undefined) return notHeld;
  const { benchId } = device;
  const kinds = terms.rules.kinds.filter(({ how }) => how === 'certificate' || how === 'statement');
  const kind = kinds.find(({ key }) => key === entry.kind);
  if (kind === undefined)
    return refusal(
      'evidence-kind-unknown',
      { kind: entry.kind, allowed: kinds.map(({ key }) => key).join(', ') },
      'kind',
    );
  const fault =
    coversFault(device, entry, kind, terms) ??
    (kind.how === 'certificate'
      ? certificateFault(entry, kind, since, on)
      : statementFault(entry, person, on));
  if (fault !== undefined) return fault;
  const recorded: DomainEvent = { type: 'evidence.recorded', benchId, ...entry };
  return kind.key === 'revalidation' ? [recorded, ...revalidated(device, entry)] : [recorded];
};

/** Why evidence cannot be recorded or the device released, or `undefined` where it is held. */
export const heldFault = ({ benchId, standing }: Device): Refusal | undefined => {
  switch (standing) {
    case 'scrapped':
      return refusal('device-scrapped', { benchId });
    case 'new':
    case 'in service':
      return refusal('device-is-not-held', { benchId });
    case 'quarantined':
    case 'at manufacturer':
      return undefined;
  }
};

/** Why nothing is done with a held device yet, or `undefined` where it lies here and everything about its return was said. */
export const notHere = ({
  benchId,
  standing,
  custody,
  openCheckIn,
  returnBatch,
}: Device): Refusal | undefined => {
  if (standing === 'at manufacturer') return refusal('release-at-manufacturer', { benchId });
  if (custody !== undefined) return refusal('release-not-checked-in', { benchId });
  if (openCheckIn !== undefined) return refusal('inspection-check-in-open', { benchId });
  return returnBatch === undefined ? undefined : refusal('release-in-batch', { benchId, batch: returnBatch });
};

const coversFault = (
  { benchId, reasons }: Device,
  { covers }: EvidenceEntry,
  kind: EvidenceKind,
  { rules, program }: ReleaseTerms,
): Refusal | undefined => {
  for (const number of covers) {
    const reason = reasons[number - 1];
    if (reason === undefined)
      return refusal('evidence-reason-unknown', { benchId, number, most: reasons.length }, 'covers');
    if (!needsOf(rules, program.release, reason.key).flat().includes(kind.key))
      return refusal('evidence-does-not-fit', { kind: kind.label, reason: reason.sentence }, 'covers');
  }
  return undefined;
};

const certificateFault = (
  { certificate, documents, covers }: EvidenceEntry,
  kind: EvidenceKind,
  since: readonly CalendarDate[],
  on: CalendarDate,
): Refusal | undefined => {
  if (certificate === undefined)
    return refusal('evidence-certificate-needed', { kind: kind.label }, 'certificate');
  if (documents.length === 0) return refusal('evidence-document-needed', { kind: kind.label }, 'documents');
  if (certificate.on > on) return refusal('evidence-in-future', { on: certificate.on }, 'certificate');
  const later = covers
    .map((number) => since[number - 1])
    .find((day) => day !== undefined && certificate.on < day);
  return later === undefined
    ? undefined
    : refusal('evidence-too-old', { on: certificate.on, since: later }, 'certificate');
};

const statementFault = (
  { statement }: EvidenceEntry,
  person: Person,
  on: CalendarDate,
): Refusal | undefined => {
  if (statement === undefined) return refusal('evidence-statement-needed', {}, 'statement');
  return isCompetentOn(person, on)
    ? undefined
    : refusal('evidence-competent-person-needed', { name: person.name });
};

/** The certificate counts for the due dates too, unless a later one is known. */
const revalidated = (
  { benchId, revalidation }: Device,
  { certificate }: EvidenceEntry,
): readonly DomainEvent[] =>
  certificate === undefined || (revalidation?.revalidatedOn ?? '') >= certificate.on
    ? []
    : [
        {
          type: 'device.revalidation-recorded',
          benchId,
          revalidatedOn: certificate.on,
          revalidatedBy: certificate.issuer,
          certificate: certificate.number,
        },
      ];

/** Somebody else than who wrote it and whoever agreed before, competent, who looked at the device. */
export const decideConfirmEvidence = (
  device: Device,
  number: number,
  terms: ReleaseTerms,
  second: Person,
  occasion: Occasion,
): Decision => {
  const found = evidenceIn(device, number);
  if ('refused' in found) return found;
  const unfit = unfitToConfirm(found, second, occasion);
  if (unfit !== undefined) return unfit;
  const kind = terms.rules.kinds.find(({ key }) => key === found.kind);
  return kind?.how === 'statement' && personsBehind(found).length < personsFor(device, found, terms)
    ? [{ type: 'evidence.confirmed', benchId: device.benchId, evidence: number }]
    : refusal('evidence-needs-no-second', { evidence: number });
};

/** Of all the reasons that it is for, the most persons that one of them asks for. */
const personsFor = (
  { reasons }: Device,
  { covers }: RecordedEvidence,
  { rules, program }: ReleaseTerms,
): number =>
  Math.max(...covers.map((place) => personsOf(rules, program.release, reasons[place - 1]?.key ?? '')));

export const unfitToConfirm = (
  entry: RecordedEvidence,
  second: Person,
  { on }: Occasion,
): Refusal | undefined => {
  if (entry.by === second.personId) return refusal('evidence-second-person-needed', { name: second.name });
  if (personsBehind(entry).includes(second.personId))
    return refusal('evidence-agreed-already', { name: second.name });
  return isCompetentOn(second, on)
    ? undefined
    : refusal('evidence-competent-person-needed', { name: second.name });
};

/** A device that was released on it goes back to quarantine at once; `found` is what its open inspection had found. */
export const decideWithdrawEvidence = (
  device: Device,
  number: number,
  because: string,
  found: readonly Reason[],
): Decision => {
  const entry = evidenceIn(device, number);
  if ('refused' in entry) return entry;
  const withdrawn: DomainEvent = {
    type: 'evidence.withdrawn',
    benchId: device.benchId,
    evidence: number,
    because,
  };
  return device.release === undefined
    ? [withdrawn]
    : [withdrawn, ...removalOf(device, [evidenceWithdrawn, ...found])];
};

const evidenceWithdrawn: Reason = {
  key: 'release.evidence-withdrawn',
  zone: 'history',
  effect: 'remove',
  sentence: {
    en: 'Evidence for its return was withdrawn.',
    es: 'Se retiró una evidencia para su retorno.',
  },
};

export const evidenceIn = (device: Device, number: number): RecordedEvidence | Refusal => {
  const notHeld = heldFault(device);
  if (notHeld !== undefined) return notHeld;
  const found = (device.evidence ?? []).find(
    ({ evidence, withdrawn }) => evidence === number && withdrawn === undefined,
  );
  return found ?? refusal('evidence-unknown', { benchId: device.benchId, evidence: number }, 'evidence');
};

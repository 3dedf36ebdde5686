/** The rules of a fall case: opened at once, added to as more is known, closed by somebody else with what was found. */
import type { CalendarDate } from '../../brand.ts';
import { isCompetentOn } from '../../competence.ts';
import type { Device } from '../../device.ts';
import type { DomainEvent, Occasion } from '../../event.ts';
import type { DocumentFile } from '../../held/evidence.ts';
import type { FallCase, FallFacts } from '../../held/fall-case.ts';
import { isAdministrator, type Person } from '../../person.ts';
import { type Refusal, refusal } from '../../refusal.ts';
import type { Reason } from '../../verdict.ts';
import type { Decision } from '../decision.ts';
import { removalOf } from '../device.ts';
import { heldFault } from './evidence.ts';

export interface NewFallCase {
  readonly fallCase: number;
  readonly facts: FallFacts;
  /** Devices of the same system, with what an open inspection of each had found. */
  readonly linked: readonly { readonly device: Device; readonly found: readonly Reason[] }[];
}

/** Of a device that is held. Whatever was in the same system is held from now on too. */
export const decideOpenFallCase = (
  device: Device,
  { fallCase, facts, linked }: NewFallCase,
  { on }: Occasion,
): Decision => {
  const refused = heldFault(device) ?? isInCase(device) ?? dateFault(facts, on);
  if (refused !== undefined) return refused;
  for (const { device: other } of linked) {
    const { benchId } = other;
    if (benchId === device.benchId) return refusal('fall-case-linked-itself', { benchId }, 'linked');
    if (other.standing === 'scrapped') return refusal('device-scrapped', { benchId }, 'linked');
    const already = isInCase(other);
    if (already !== undefined) return already;
  }
  return [
    { type: 'fall-case.opened', fallCase, facts },
    { type: 'fall-case.device-joined', fallCase, benchId: device.benchId },
    ...linked.flatMap(({ device: other, found }): readonly DomainEvent[] => [
      ...removalOf(other, [linkedReason(fallCase, device.benchId), ...found]),
      { type: 'fall-case.device-joined', fallCase, benchId: other.benchId },
    ]),
  ];
};

const linkedReason = (fallCase: number, benchId: string): Reason => ({
  key: 'fall-case.linked',
  zone: 'history',
  effect: 'refer-to-manufacturer',
  sentence: {
    en: `In the same system as ${benchId} when it fell or took an impact, fall case ${fallCase}.`,
    es: `En el mismo sistema que ${benchId} cuando cayó o sufrió un impacto, caso de caída ${fallCase}.`,
  },
});

const isInCase = ({ benchId, fallCases = [] }: Device): Refusal | undefined => {
  const open = fallCases.find(({ closedOn }) => closedOn === undefined);
  return open && refusal('fall-case-already', { benchId, fallCase: open.fallCase });
};

const dateFault = ({ happenedOn }: FallFacts, on: CalendarDate): Refusal | undefined =>
  happenedOn !== undefined && happenedOn > on
    ? refusal('fall-case-in-future', { on: happenedOn }, 'facts.happenedOn')
    : undefined;

export const decideNoteFallCase = (
  file: FallCase,
  facts: FallFacts,
  photos: readonly DocumentFile[],
  { on }: Occasion,
): Decision => {
  const refused = notOpen(file) ?? dateFault(facts, on);
  if (refused !== undefined) return refused;
  return [{ type: 'fall-case.noted', fallCase: file.number, facts, photos: [...photos] }];
};

/** What must be known of a fall before its case is closed. */
const neededFacts = [
  { key: 'happenedOn', label: { en: 'Day of the fall', es: 'Día de la caída' } },
  { key: 'userId', label: { en: 'Who wore it', es: 'Quién lo llevaba' } },
  { key: 'job', label: { en: 'Job', es: 'Trabajo' } },
  { key: 'indicator', label: { en: 'Load indicator', es: 'Indicador de carga' } },
  { key: 'informed', label: { en: 'Who was told', es: 'A quién se informó' } },
  { key: 'bagNumber', label: { en: 'Number of the sealed bag', es: 'Número de la bolsa precintada' } },
] as const;

/** Somebody else than who opened it: a competent person or an administrator, with what was found. */
export const decideCloseFallCase = (
  file: FallCase,
  findings: string,
  person: Person,
  { on }: Occasion,
): Decision => {
  const refused = notOpen(file);
  if (refused !== undefined) return refused;
  const fallCase = file.number;
  if (file.openedBy === person.personId)
    return refusal('fall-case-second-person-needed', { name: person.name, fallCase });
  if (!isCompetentOn(person, on) && !isAdministrator(person))
    return refusal('fall-case-closer-needed', { name: person.name });
  const open = neededFacts.filter(({ key }) => (file.facts[key] ?? '') === '');
  const [first] = open;
  if (first !== undefined)
    return refusal(
      'fall-case-facts-missing',
      { fallCase, fact: first.label, count: open.length },
      `facts.${first.key}`,
    );
  if (findings.trim() === '') return refusal('fall-case-findings-needed', { fallCase }, 'findings');
  return [
    { type: 'fall-case.closed', fallCase, findings },
    ...file.devices.map((benchId): DomainEvent => ({ type: 'fall-case.device-closed', fallCase, benchId })),
  ];
};

const notOpen = ({ number, phase }: FallCase): Refusal | undefined =>
  phase === 'open' ? undefined : refusal('fall-case-not-open', { fallCase: number });

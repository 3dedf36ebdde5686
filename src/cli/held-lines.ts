/** A held device, a fall case and a return batch as lines for a person. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { OutputOf } from '../station/contract.ts';
import type { Job } from './job.ts';
import { dateText } from './wording.ts';

type Held = OutputOf<'held.show'>['held'];

export const heldLines = (held: Held, { words, language }: Job): readonly string[] => [
  words('held-head', {
    benchId: formatBenchId(held.device.benchId),
    model: `${held.device.manufacturer} ${held.device.model}`,
    days: held.days,
    place: held.place ?? held.quarantinePlace[language],
  }),
  ...held.reasons.flatMap(({ number, sentence, missing }) => [
    `  ${number}. ${sentence[language]}`,
    ...missing.map(({ kinds, unconfirmed, stillToAgree = 1 }) =>
      unconfirmed === undefined
        ? `     - ${kinds.map((kind) => `${kind.missing[language]} [${kind.key}]`).join(words('held-or'))}`
        : `     - ${words('held-unconfirmed', { evidence: unconfirmed, count: stillToAgree })}`,
    ),
  ]),
  ...held.evidence
    .filter(({ withdrawn }) => withdrawn === undefined)
    .map(({ evidence, kind, covers, by, on, certificate }) =>
      words('held-evidence-line', {
        evidence,
        kind: held.kinds.find(({ key }) => key === kind)?.label[language] ?? kind,
        covers: covers.join(', '),
        by,
        date: dateText(on, language),
        certificate: certificate === undefined ? '' : ` ${certificate.number}`,
      }),
    ),
  words('held-next', {
    step: words(`step-${held.nextStep}`),
    owner: words(`owner-${held.owner}`),
  }),
];

export const heldCells = (
  { device, days, nextStep, owner, missing, reasons }: OutputOf<'held.list'>['held'][number],
  { words, language }: Job,
): readonly string[] => [
  formatBenchId(device.benchId),
  `${device.manufacturer} ${device.model}`,
  words('held-days', { days }),
  words('held-missing', { count: missing }),
  words(`owner-${owner}`),
  words(`step-${nextStep}`),
  reasons[0]?.[language] ?? '',
];

export const caseLines = (
  {
    number,
    phase,
    facts,
    devices,
    openedBy,
    openedOn,
    custody,
    photos,
    closed,
  }: OutputOf<'fall-case.show'>['fallCase'],
  { words, language }: Job,
): readonly string[] => [
  words('case-head', {
    number,
    phase: words(`case-${phase}`),
    by: openedBy,
    date: dateText(openedOn, language),
  }),
  ...devices.map((benchId) => `  ${formatBenchId(benchId)}`),
  ...Object.entries(facts).map(([fact, value]) => `  ${fact}: ${value}`),
  ...custody.map(({ bagNumber, by, at }) => words('case-bag', { bagNumber, by, at })),
  ...(photos.length === 0 ? [] : [words('case-photos', { count: photos.length })]),
  ...(closed === undefined
    ? []
    : [
        words('case-closed-line', {
          by: closed.by,
          date: dateText(closed.on, language),
          findings: closed.findings,
        }),
      ]),
];

export const batchLines = (
  { number, manufacturer, phase, devices, shipped, askOn, followUps }: OutputOf<'return-batch.show'>['batch'],
  { words, language }: Job,
): readonly string[] => [
  words('batch-head', { number, manufacturer, phase: words(`batch-${phase}`), count: devices.length }),
  ...devices.map(({ benchId, back }) =>
    back === undefined
      ? `  ${formatBenchId(benchId)}`
      : `  ${formatBenchId(benchId)}  ${words(`outcome-${back.outcome}`)} ${dateText(back.on, language)} ${back.certificate?.number ?? ''}`.trimEnd(),
  ),
  ...(shipped === undefined
    ? []
    : [words('batch-shipped-line', { date: dateText(shipped.on, language), carrier: shipped.carrier })]),
  ...followUps.map(({ on, note }) => `  ${dateText(on, language)}: ${note}`),
  ...(askOn === undefined ? [] : [words('batch-ask', { date: dateText(askOn, language) })]),
];

/**
 * The record of a device over its life, with the fields of EN 365:2004 §4.7 (from memory): product, model or type,
 * manufacturer and contact, serial or batch number, year of manufacture, date of purchase, date first put into use, user,
 * and of each periodic examination and repair the date, reason, details, competent person and signature, and next due date.
 */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { PastTag } from '../domain/device.ts';
import type { DueDate } from '../domain/due/due-date.ts';
import type { LifelineInspection } from '../domain/lifeline/lifeline-inspection.ts';
import type { Verdict } from '../domain/verdict.ts';
import { correctedFacts, correctionStrips, type RecordedCorrection } from './corrections.ts';
import { deviceTitle, lifelineText, madeOf, type Pair, type ReportDevice, serialOf } from './device-facts.ts';
import { type RecordedUser, userStrips, usersTold } from './device-users.ts';
import { dueRows } from './due-rows.ts';
import { heldStrips, type RecordedHeldStep } from './held-strips.ts';
import { lifelineStrips } from './lifeline-strip.ts';
import { heading, leadingOn, prose } from './prose.ts';
import { reasonsCell } from './reasons.ts';
import { type RecordProof, recordStrips } from './record-strips.ts';
import type { Report } from './render-report.ts';
import type { ReportWords, Told } from './report-words.ts';
import type { Strip } from './strip.ts';
import { cell, facts, table } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface RecordedExamination {
  readonly inspection: number;
  readonly on: string;
  readonly by: string;
  readonly verdict: Verdict;
  readonly dueOn?: string | undefined;
  readonly seq: number;
  /** The second inspection of a blind pair. */
  readonly isBlind: boolean;
}

export interface RecordedRemoval {
  readonly on: string;
  readonly by: string;
  readonly reasons: readonly { readonly sentence: { readonly en: string; readonly es: string } }[];
  readonly seq: number;
}

export interface DeviceRecordContent {
  readonly station: string;
  /** When it is made: the moment in UTC. */
  readonly at: string;
  readonly of: ReportDevice;
  /** Of every thing that it is due for, with the rule that gave the date. */
  readonly due: readonly DueDate[];
  /** Everybody who had it, in the order in which they first did. */
  readonly users: readonly RecordedUser[];
  /** Oldest first, as all that follow. */
  readonly examinations: readonly RecordedExamination[];
  /** Without an inspection, or because one was broken off. */
  readonly removals: readonly RecordedRemoval[];
  /** What was done while it was held. */
  readonly heldSteps: readonly RecordedHeldStep[];
  /** What inspections saw along the lifeline. */
  readonly lifeline: readonly LifelineInspection[];
  readonly corrections: readonly RecordedCorrection[];
  readonly pictures: number;
  readonly proof: RecordProof;
}

export const deviceRecord = (content: DeviceRecordContent, words: ReportWords, widthMm: number): Report => {
  const { station, at, of, examinations, removals, proof } = content;
  const { device } = of;
  const strips: Strip[] = [
    heading(words.line('deviceRecord'), widthMm, textStyles.title),
    prose([deviceTitle(of)], widthMm, textStyles.strong),
    heading(
      words.line(`standing-${device.standing}`),
      widthMm,
      device.standing === 'in service' || device.standing === 'new'
        ? textStyles.verdict
        : { ...textStyles.verdict, colour: 'red' },
    ),
    ...(device.reasons.length === 0
      ? []
      : [
          prose(words.tell('openReasons'), widthMm, textStyles.strong),
          ...device.reasons.map(({ sentence }) => prose(words.told(sentence), widthMm)),
        ]),
    heading(words.line('equipment'), widthMm),
    facts(equipmentOf(content, words), widthMm),
    ...correctedFacts(content.corrections, words, widthMm),
    ...userStrips(content.users, words, widthMm),
    heading(words.line('examinations'), widthMm),
    leadingOn(prose(words.tell('examinationsText'), widthMm, textStyles.soft)),
    ...examinationStrips(examinations, words, widthMm),
    ...declaredStrips(content, words, widthMm),
    ...lifelineStrips(content.lifeline, of.modelSheet, words, widthMm),
    heading(words.line('removals'), widthMm),
    ...removalStrips(removals, words, widthMm),
    heading(words.line(content.heldSteps.length === 0 ? 'repairs' : 'heldSteps'), widthMm),
    ...heldStrips(content.heldSteps, words, widthMm),
    heading(words.line('tags'), widthMm),
    ...tagStrips(content, words, widthMm),
    ...correctionStrips(content.corrections, of.modelSheet, words, widthMm),
    ...recordStrips(proof, words, widthMm),
  ];
  return {
    title: words.line('deviceRecord'),
    station,
    of: formatBenchId(device.benchId),
    at: new Date(at),
    strips,
  };
};

const equipmentOf = (
  { of, due, users, pictures }: DeviceRecordContent,
  words: ReportWords,
): readonly Pair[] => {
  const { device, modelSheet, regularUser } = of;
  const dateOr = (date: string | undefined): Told =>
    date === undefined ? words.tell('notKnown') : words.told(words.date(date));
  const codes = device.otherCodes.map(({ code }) => code);
  return [
    [words.line('product'), words.tell('productText')],
    [words.line('modelOrType'), modelSheet.model],
    [words.line('manufacturer'), modelSheet.manufacturer],
    [words.line('contact'), modelSheet.manufacturerContact ?? words.tell('notKnown')],
    [words.line('serialOrBatch'), serialOf(device, words)],
    [words.line('yearOfManufacture'), madeOf(device, words)],
    [words.line('purchased'), dateOr(device.purchasedOn)],
    [words.line('firstUsed'), dateOr(device.firstUsedOn)],
    [words.line('user'), usersTold(regularUser, users, words)],
    [
      words.line('nextDue'),
      device.dueOn === undefined ? words.tell('noneDue') : words.dateLine(device.dueOn),
    ],
    ...dueRows(device, due, words),
    [words.line('ratedLength'), words.told(words.length(modelSheet.ratedLengthM))],
    [words.line('lifeline'), lifelineText(modelSheet, words)],
    [words.line('capacity'), `${modelSheet.capacityKg.from}–${modelSheet.capacityKg.to} kg`],
    [words.line('standard'), modelSheet.standard],
    [words.line('benchId'), formatBenchId(device.benchId)],
    [words.line('registered'), words.dateLine(device.registeredOn)],
    ...(codes.length === 0 ? [] : [[words.line('otherCodes'), codes] as const]),
    ...(device.presumedIdentity === undefined
      ? []
      : [[words.line('identity'), words.tell('presumed')] as const]),
    ...(pictures === 0
      ? []
      : [[words.line('pictures'), words.tell('pictureCount', { count: pictures })] as const]),
  ];
};

const examinationStrips = (
  examinations: readonly RecordedExamination[],
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  if (examinations.length === 0) return [prose(words.tell('none'), widthMm)];
  const rows = examinations.map(({ inspection, on, by, verdict, dueOn, seq, isBlind }) => [
    cell(words.told(words.date(on))),
    [
      ...cell(words.tell('periodicExamination', { number: inspection })),
      ...(isBlind ? cell(words.tell('blindSecond'), textStyles.soft) : []),
    ],
    [
      ...cell(words.tell(`verdict-${verdict.kind}`), { ...textStyles.cell, weight: 'bold' }),
      ...(verdict.kind === 'pass' ? [] : reasonsCell(verdict.reasons, words)),
    ],
    [...cell(by), ...cell(words.tell('signedEvent', { seq }), textStyles.soft)],
    cell(dueOn === undefined ? '–' : words.told(words.date(dueOn))),
  ]);
  return [
    table(
      [
        { title: words.line('date'), share: 4 },
        { title: words.line('why'), share: 5 },
        { title: words.line('details'), share: 9 },
        { title: words.line('competentPerson'), share: 6 },
        { title: words.line('nextDue'), share: 4 },
      ],
      rows,
      widthMm,
    ),
  ];
};

/** Visibly apart from ours, and never without the words that they are not. */
const declaredStrips = (
  { of }: DeviceRecordContent,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  const declared = of.device.declaredInspections ?? [];
  if (declared.length === 0) return [];
  const rows = declared.map(({ inspectedOn, inspectedBy, result, note, source }) => [
    cell(words.told(words.date(inspectedOn))),
    [
      ...cell(words.tell('declaredMark'), { ...textStyles.cell, weight: 'bold' }),
      ...cell(words.tell(`declared-${result}`)),
      ...(note === undefined ? [] : cell(`“${note}”`)),
    ],
    cell(inspectedBy === '' ? words.tell('notSaid') : inspectedBy),
    cell(words.tell('declaredSource', { fileName: source.fileName, row: source.row }), textStyles.soft),
  ]);
  return [
    heading(words.line('declared'), widthMm),
    leadingOn(prose(words.tell('declaredText'), widthMm, textStyles.soft)),
    table(
      [
        { title: words.line('date'), share: 4 },
        { title: words.line('details'), share: 10 },
        { title: words.line('declaredBy'), share: 6 },
        { title: words.line('source'), share: 8 },
      ],
      rows,
      widthMm,
    ),
  ];
};

const removalStrips = (
  removals: readonly RecordedRemoval[],
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  if (removals.length === 0) return [prose(words.tell('none'), widthMm)];
  return [
    table(
      [
        { title: words.line('date'), share: 4 },
        { title: words.line('reasons'), share: 14 },
        { title: words.line('by'), share: 6 },
      ],
      removals.map(({ on, by, reasons, seq }) => [
        cell(words.told(words.date(on))),
        reasonsCell(reasons, words),
        [...cell(by), ...cell(words.tell('eventNumber', { seq }), textStyles.soft)],
      ]),
      widthMm,
    ),
  ];
};

const tagStrips = (
  { of: { device } }: DeviceRecordContent,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  const { currentTag } = device;
  const tags: readonly (Omit<PastTag, 'endedOn' | 'because'> & Partial<PastTag>)[] = [
    ...device.pastTags,
    ...(currentTag === undefined ? [] : [currentTag]),
  ];
  if (tags.length === 0) return [prose(words.tell('none'), widthMm)];
  return [
    table(
      [
        { title: words.line('tagNumber'), share: 3 },
        { title: words.line('kind'), share: 5 },
        { title: words.line('issued'), share: 5 },
        { title: words.line('applied'), share: 5 },
        { title: words.line('ended'), share: 8 },
      ],
      tags.map(({ tagNumber, kind, issuedOn, provedOn, endedOn, because }) => [
        cell(String(tagNumber)),
        cell(words.tell(`tag-${kind}`)),
        cell(words.told(words.date(issuedOn))),
        cell(provedOn === undefined ? words.tell('notScanned') : words.told(words.date(provedOn))),
        endedOn === undefined || because === undefined
          ? cell(words.tell('belongs'), { ...textStyles.cell, weight: 'bold' })
          : [
              ...cell(words.told(words.date(endedOn))),
              ...cell(words.tell(`ended-${because}`), textStyles.soft),
            ],
      ]),
      widthMm,
    ),
  ];
};

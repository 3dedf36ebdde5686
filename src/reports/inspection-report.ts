/** The report of one documented inspection: every check with its answer, every reason, who signed, and how to prove it. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import { factsOf } from '../domain/decide/inspection.ts';
import type { Inspection } from '../domain/inspection.ts';
import type { LifelineInspection } from '../domain/lifeline/lifeline-inspection.ts';
import { applicableChecks, type Procedure } from '../domain/procedure.ts';
import type { Reason } from '../domain/verdict.ts';
import { answerCell } from './answer-cell.ts';
import { correctedAnswer, correctedFacts, correctionStrips, type RecordedCorrection } from './corrections.ts';
import { deviceTitle, identificationOf, type ReportDevice } from './device-facts.ts';
import { lifelineStrips } from './lifeline-strip.ts';
import { pictureStrip, type ReportPicture } from './picture-strip.ts';
import { heading, leadingOn, prose } from './prose.ts';
import { reasonTable } from './reasons.ts';
import { type RecordProof, recordStrips } from './record-strips.ts';
import type { Report } from './render-report.ts';
import type { ReportWords } from './report-words.ts';
import { type ReportSignature, signatureBlock } from './signature-block.ts';
import type { Strip } from './strip.ts';
import { cell, facts, table } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface InspectionReportContent {
  readonly station: string;
  readonly of: ReportDevice;
  readonly inspection: Inspection;
  readonly procedure: Procedure;
  /** The employer's program under which it was signed. */
  readonly program?: { readonly key: string; readonly version: number } | undefined;
  nameOf(personId: string): string;
  readonly signature?: ReportSignature | undefined;
  /** What it saw along the lifeline, then what earlier inspections saw. */
  readonly lifeline: readonly LifelineInspection[];
  readonly corrections: readonly RecordedCorrection[];
  readonly pictures: readonly ReportPicture[];
  /** Pictures that the record names and that are missing or were changed. */
  readonly lost: number;
  readonly proof: RecordProof;
}

export const inspectionReport = (
  content: InspectionReportContent,
  words: ReportWords,
  widthMm: number,
): Report => {
  const { station, of, inspection, pictures, lost, signature, proof } = content;
  const reasons = reasonsOf(inspection);
  const strips: Strip[] = [
    heading(words.line('inspectionReport', { number: inspection.inspection }), widthMm, textStyles.title),
    prose([deviceTitle(of)], widthMm, textStyles.strong),
    ...verdictStrips(inspection, content, words, widthMm),
    ...(reasons.length === 0
      ? []
      : [heading(words.line('reasons'), widthMm), reasonTable(reasons, words, widthMm)]),
    heading(words.line('identification'), widthMm),
    facts(identificationOf(of, words), widthMm),
    ...correctedFacts(content.corrections, words, widthMm),
    heading(words.line('checks'), widthMm),
    ...checkStrips(content, words, widthMm),
    ...lifelineStrips(content.lifeline, of.modelSheet, words, widthMm),
    ...(pictures.length === 0
      ? []
      : [heading(words.line('pictures'), widthMm), pictureStrip(pictures, widthMm)]),
    ...(lost === 0 ? [] : [prose(words.tell('picturesLost', { count: lost }), widthMm, textStyles.strong)]),
    ...correctionStrips(content.corrections, of.modelSheet, words, widthMm),
    ...(signature === undefined
      ? []
      : [heading(words.line('signature'), widthMm), ...signatureBlock(signature, words, widthMm)]),
    ...recordStrips(proof, words, widthMm),
  ];
  return {
    title: words.line('inspectionTitle', { number: inspection.inspection }),
    station,
    of: `${formatBenchId(inspection.benchId)}`,
    at: new Date(signature?.at ?? `${inspection.startedOn}T00:00:00Z`),
    strips,
  };
};

const reasonsOf = ({ signed }: Inspection): readonly Reason[] =>
  signed === undefined || signed.verdict.kind === 'pass' ? [] : signed.verdict.reasons;

const verdictStrips = (
  inspection: Inspection,
  { procedure, program, nameOf }: InspectionReportContent,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  const { signed, abandoned, startedBy, startedOn } = inspection;
  const isRemoved = signed?.verdict.kind === 'remove from service';
  const isBlindPass = inspection.reinspection !== undefined && signed?.verdict.kind === 'pass';
  const verdict =
    signed === undefined ? words.line('brokenOff') : words.line(`verdict-${signed.verdict.kind}`);
  const style = isRemoved ? { ...textStyles.verdict, colour: 'red' as const } : textStyles.verdict;
  return [
    heading(verdict, widthMm, style),
    facts(
      [
        ...(inspection.reinspection === undefined
          ? []
          : [[words.line('blind'), words.tell('blindText')] as const]),
        [words.line('begun'), words.tell('onBy', { on: words.date(startedOn), by: nameOf(startedBy) })],
        ...(signed === undefined
          ? []
          : [
              [
                words.line('signed'),
                words.tell('onBy', { on: words.date(signed.on), by: nameOf(signed.by) }),
              ] as const,
              [
                words.line('nextDue'),
                signed.dueOn === undefined
                  ? words.tell(isBlindPass ? 'blindUnchanged' : 'noneOutOfService')
                  : words.told(words.date(signed.dueOn)),
              ] as const,
              [words.line('tagNumber'), String(signed.tagNumber)] as const,
            ]),
        ...(abandoned === undefined
          ? []
          : [
              [
                words.line('brokenOff'),
                words.tell('onBy', { on: words.date(abandoned.on), by: nameOf(abandoned.by) }),
              ] as const,
              [words.line('why'), abandoned.why] as const,
            ]),
        [
          words.line('procedure'),
          `${words.inLine(procedure.title)} (${procedure.key} v${procedure.version})`,
        ],
        ...(program === undefined
          ? []
          : [[words.line('program'), `${program.key} v${program.version}`] as const]),
      ],
      widthMm,
    ),
  ];
};

const checkStrips = (
  { of, inspection, procedure, corrections, nameOf }: InspectionReportContent,
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  const rows = applicableChecks(procedure, factsOf(of.modelSheet)).map((check, index) => {
    const answered = inspection.answers[check.key];
    return [
      cell(String(index + 1)),
      [
        ...cell(words.told(check.title), { ...textStyles.cell, weight: 'bold' }),
        ...cell(words.told(check.criterion), textStyles.soft),
      ],
      [
        ...answerCell(check, answered?.answer, of.modelSheet, words),
        ...correctedAnswer(corrections, check.key, words),
      ],
      cell(answered === undefined ? '' : nameOf(answered.by)),
    ];
  });
  return [
    leadingOn(prose(words.tell('checksText', { count: rows.length }), widthMm)),
    table(
      [
        { title: '#', share: 1.2 },
        { title: words.line('checkAndCriterion'), share: 11 },
        { title: words.line('answer'), share: 7 },
        { title: words.line('answeredBy'), share: 4 },
      ],
      rows,
      widthMm,
    ),
  ];
};

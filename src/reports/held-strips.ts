/** What was done about a device while it was held: evidence, repairs, fall cases, the way to the manufacturer and back, scrap. */
import type { Message } from '../domain/message.ts';
import { prose } from './prose.ts';
import type { ReportWord, ReportWords } from './report-words.ts';
import type { Strip } from './strip.ts';
import { cell, table } from './table.ts';
import { textStyles } from './type-sizes.ts';

export interface RecordedHeldStep {
  readonly on: string;
  readonly by: string;
  readonly seq: number;
  readonly what: Extract<ReportWord, `step-${string}`>;
  /** What the words of the step name. */
  readonly values: Readonly<Record<string, string | number | Message>>;
  /** As somebody wrote it. */
  readonly said?: string | undefined;
}

/** Oldest first; the documents themselves lie beside the record. */
export const heldStrips = (
  steps: readonly RecordedHeldStep[],
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  if (steps.length === 0) return [prose(words.tell('noRepairs'), widthMm)];
  return [
    table(
      [
        { title: words.line('date'), share: 4 },
        { title: words.line('details'), share: 14 },
        { title: words.line('by'), share: 6 },
      ],
      steps.map(({ on, by, seq, what, values, said }) => [
        cell(words.told(words.date(on))),
        [...cell(words.tell(what, values)), ...(said === undefined ? [] : cell(`“${said}”`))],
        [...cell(by), ...cell(words.tell('eventNumber', { seq }), textStyles.soft)],
      ]),
      widthMm,
    ),
  ];
};

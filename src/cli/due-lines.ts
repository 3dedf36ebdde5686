/** Due dates and the rules that gave them, as a person reads them in the terminal. */
import type { DueDate } from '../domain/due/due-date.ts';
import type { Source } from '../domain/procedure.ts';
import type { Job } from './job.ts';
import { dateText } from './wording.ts';

/** What is due, when, by whose rule, and where that rule comes from. */
export const dueCells = (
  { what, on, rule, months, source }: DueDate,
  { language, words }: Pick<Job, 'language' | 'words'>,
): readonly string[] => [
  dateText(on, language),
  words(`due-what-${what}`),
  months === undefined
    ? words(`due-rule-${rule}`)
    : words('due-rule-months', { rule: words(`due-rule-${rule}`), count: months }),
  source === undefined ? '' : sourceText(source, words),
];

export const sourceText = ({ mark, citation }: Source, words: Job['words']): string =>
  `${citation} (${words(`source-${mark}`)})`;

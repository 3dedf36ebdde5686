/** A correction as a line in the terminal. */
import type { AmendmentView } from '../station/amendment-view.ts';
import type { Job } from './job.ts';
import { dateText } from './wording.ts';

export const correctionLine = (
  { correction, on, by, because, inspection }: AmendmentView,
  { words, language }: Pick<Job, 'words' | 'language'>,
): string => {
  const { was = '–', now = '–' } = correction;
  const field = words(`corrected-${correction.field}`);
  const what = correction.field === 'answer' ? `${field} ${inspection ?? ''} ${correction.check}` : field;
  const text = (value: string | object): string =>
    typeof value === 'string' ? value : JSON.stringify(value);
  return `  ${words('correction-line', { what, was: text(was), now: text(now), date: dateText(on, language), by, because })}`;
};

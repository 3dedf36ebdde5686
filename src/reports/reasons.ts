/** Why a device is out of service: as a table of its own, and within a cell of another. */
import type { Message } from '../domain/message.ts';
import type { Reason } from '../domain/verdict.ts';
import type { ReportWords } from './report-words.ts';
import type { Strip } from './strip.ts';
import { type Cell, cell, table } from './table.ts';
import { textStyles } from './type-sizes.ts';

export const reasonTable = (reasons: readonly Reason[], words: ReportWords, widthMm: number): Strip =>
  table(
    [
      { title: '#', share: 1 },
      { title: words.line('reason'), share: 13 },
      { title: words.line('place'), share: 4 },
      { title: words.line('effect'), share: 5 },
    ],
    reasons.map(({ sentence, positionM, effect }, index) => [
      cell(String(index + 1)),
      cell(words.told(sentence), { ...textStyles.cell, weight: 'bold' }),
      cell(positionM === undefined ? '–' : words.told(words.length(positionM))),
      cell(words.tell(`effect-${effect}`)),
    ]),
    widthMm,
  );

/** One point for each reason, with the other language under the first. */
export const reasonsCell = (reasons: readonly { readonly sentence: Message }[], words: ReportWords): Cell =>
  reasons.flatMap(({ sentence }) =>
    cell(words.told(sentence).map((text, index) => (index === 0 ? `• ${text}` : text))),
  );

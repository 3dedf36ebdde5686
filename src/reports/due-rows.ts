/** What the record of a device says of its due dates: each with the rule that gave it, its type of use, its last revalidation. */
import type { Device } from '../domain/device.ts';
import type { DueDate } from '../domain/due/due-date.ts';
import { currentUse } from '../domain/due/type-of-use.ts';
import type { Pair } from './device-facts.ts';
import type { ReportWords, Told } from './report-words.ts';

export const dueRows = (
  { uses, revalidation }: Device,
  due: readonly DueDate[],
  words: ReportWords,
): readonly Pair[] => {
  const use = currentUse(uses);
  return [
    ...(due.length === 0
      ? []
      : [[words.line('dueDates'), due.flatMap((each) => dueLine(each, words))] as const]),
    [
      words.line('typeOfUse'),
      use === undefined
        ? words.tell('useNotDetermined')
        : words.tell('useFrom', {
            use: words.message(`use-${use.typeOfUse}`),
            from: words.date(use.from),
          }),
    ],
    ...(revalidation === undefined
      ? []
      : [
          [
            words.line('revalidated'),
            words.tell('revalidatedLine', {
              on: words.date(revalidation.revalidatedOn),
              by: revalidation.revalidatedBy,
              certificate: revalidation.certificate,
            }),
          ] as const,
        ]),
  ];
};

const dueLine = ({ what, on, rule, months, countedFrom }: DueDate, words: ReportWords): Told => {
  const said = { what: words.message(`due-for-${what}`), date: words.date(on) };
  return rule === 'tag' || months === undefined || countedFrom === undefined
    ? words.tell('dueByTag', said)
    : words.tell('dueByRule', {
        ...said,
        rule: words.message(`due-rule-${rule}`),
        months,
        from: words.date(countedFrom),
      });
};

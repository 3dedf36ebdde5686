/** The field *user* of EN 365: who regularly uses a device, who has it now, and everybody who had it. */
import { heading, leadingOn, prose } from './prose.ts';
import type { ReportWords, Told } from './report-words.ts';
import type { Strip } from './strip.ts';
import { cell, table } from './table.ts';
import { textStyles } from './type-sizes.ts';

/** A person who had the device, by name. */
export interface RecordedUser {
  readonly name: string;
  readonly times: number;
  readonly firstOn: string;
  /** Absent while they have it. */
  readonly lastOn?: string | undefined;
}

export const usersTold = (
  regularUser: string | undefined,
  users: readonly RecordedUser[],
  words: ReportWords,
): Told => {
  const now = users
    .filter(({ lastOn }) => lastOn === undefined)
    .flatMap(({ name }) => words.tell('userNow', { name }));
  const told = [...(regularUser === undefined ? [] : [regularUser]), ...now];
  return told.length === 0 ? words.tell('nobody') : told;
};

export const userStrips = (
  users: readonly RecordedUser[],
  words: ReportWords,
  widthMm: number,
): readonly Strip[] => {
  if (users.length === 0) return [];
  return [
    heading(words.line('users'), widthMm),
    leadingOn(prose(words.tell('usersText'), widthMm, textStyles.soft)),
    table(
      [
        { title: words.line('user'), share: 10 },
        { title: words.line('userTimes'), share: 4 },
        { title: words.line('userFirst'), share: 5 },
        { title: words.line('userLast'), share: 5 },
      ],
      users.map(({ name, times, firstOn, lastOn }) => [
        cell(name),
        cell(String(times)),
        cell(words.told(words.date(firstOn))),
        cell(lastOn === undefined ? words.tell('userHasIt') : words.told(words.date(lastOn))),
      ]),
      widthMm,
    ),
  ];
};

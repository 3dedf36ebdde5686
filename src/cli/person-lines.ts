/** A person, their designations and their history as lines in the terminal. */
import type { CalendarDate } from '../domain/brand.ts';
import type { HeldDesignation } from '../domain/competence.ts';
import type { OutputOf } from '../station/contract.ts';
import type { PersonRecord, PersonView } from '../station/person-view.ts';
import { correctionLine } from './correction-line.ts';
import type { Job } from './job.ts';
import { columns, dateText } from './wording.ts';

type Wording = Pick<Job, 'words' | 'language'>;

export const personCells = (person: PersonView, { words, language }: Wording): readonly string[] => {
  const { designation, left, trainingNotice } = person;
  const until = designation && dateText(designation.trainingValidUntil, language);
  const signing = (): string => {
    if (left !== undefined) return words('person-left', { on: dateText(left.on, language) });
    if (until === undefined) return words('person-not-designated');
    if (trainingNotice === undefined && person.maySign) return words('person-may-sign', { until });
    if (trainingNotice === undefined) return words('person-may-not-sign-yet');
    return words(trainingNotice === 'expired' ? 'person-expired' : 'person-ends-soon', { until });
  };
  const roles = person.roles.map((role) => words(`role-${role}`)).join(', ');
  return [person.personId, person.name, roles, person.badge, signing()];
};

export const personLines = (
  { person, designations, amendments, history }: PersonRecord,
  wording: Wording,
): readonly string[] => [
  ...columns([personCells(person, wording)]),
  ...amendments.map((amendment) => correctionLine(amendment, wording)),
  ...designations.flatMap((held) => designationLines(held, wording)),
  ...history.map((entry) => historyLine(entry, wording)),
];

const designationLines = (
  { designation, ended }: HeldDesignation,
  { words, language }: Wording,
): readonly string[] => {
  const day = (on: CalendarDate): string => dateText(on, language);
  const { scope, document, trainingCourse, trainedOn } = designation;
  const training = [trainingCourse, trainedOn && day(trainedOn)].filter((part) => part !== undefined);
  const facts = [
    words('designation-line', {
      by: designation.designatedBy,
      on: day(designation.designatedOn),
      until: day(designation.trainingValidUntil),
    }),
    words('designation-document', { document: document ?? '–' }),
    ...(training.length === 0 ? [] : [words('designation-training', { training: training.join(', ') })]),
    scope === undefined ? words('scope-all') : words('scope-some', { scope: scope.join(', ') }),
    ...(ended === undefined
      ? []
      : [
          words(`designation-${ended.how}`, {
            on: day(ended.on),
            because: ended.because === undefined ? '' : `: ${ended.because}`,
          }),
        ]),
  ];
  return [`  ${facts.join('; ')}`];
};

const historyLine = (
  { event, on, by }: PersonRecord['history'][number],
  { words, language }: Wording,
): string => {
  const because = 'because' in event && event.because !== undefined ? `: ${event.because}` : '';
  const who = by === 'station' ? words('history-by-station') : by;
  return `  ${dateText(on, language)}  ${who}  ${words(`history-${event.type}`)}${because}`;
};

export const competenceLine = (
  { name, competence }: OutputOf<'person.competence'>,
  on: CalendarDate,
  { words, language }: Wording,
): string => {
  const day = dateText(on, language);
  const values = { name, day };
  switch (competence.ground) {
    case 'designated': {
      const { designatedBy: by, designatedOn, trainingValidUntil } = competence.designation;
      const dates = {
        since: dateText(designatedOn, language),
        until: dateText(trainingValidUntil, language),
      };
      return words('competent', { ...values, ...dates, by });
    }
    case 'left':
    case 'designation ended':
      return words(`not-competent-${competence.ground}`, {
        ...values,
        on: dateText(competence.on, language),
      });
    case 'not yet designated':
      return words('not-competent-not yet designated', {
        ...values,
        on: dateText(competence.designation.designatedOn, language),
      });
    case 'training expired':
      return words('not-competent-training expired', {
        ...values,
        on: dateText(competence.designation.trainingValidUntil, language),
      });
    case 'not designated':
    case 'out of scope':
      return words(`not-competent-${competence.ground}`, values);
  }
};

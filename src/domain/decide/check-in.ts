/** The rules of check-in: every question is answered for every device, and any yes or doubt holds it at once. */
import type { CheckInAnswer } from '../custody/check-in-answer.ts';
import type { CheckInQuestion, DeskRules } from '../custody/desk-rules.ts';
import type { Device } from '../device.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { type Reason, withNote } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { removalOf } from './device.ts';

export interface CheckIn {
  /** A person's ID. */
  readonly answeredBy: string;
  readonly answers: readonly CheckInAnswer[];
  /** It is not recorded out, and came back or was found all the same. */
  readonly withoutCheckOut: boolean;
}

/** `found` is what an open inspection of it had found. */
export const decideCheckIn = (
  device: Device,
  rules: DeskRules,
  { answeredBy, answers, withoutCheckOut }: CheckIn,
  found: readonly Reason[],
): Decision => {
  const { benchId, custody, standing } = device;
  if (custody === undefined && !withoutCheckOut) return refusal('check-in-not-out', { benchId });
  const fault = faultOf(rules, answers, benchId);
  if (fault !== undefined) return fault;
  const reasons = rules.checkIn.flatMap((question) => reasonsOfAnswer(question, answers));
  return [
    {
      type: 'device.checked-in',
      benchId,
      ...(custody === undefined ? {} : { userId: custody.userId }),
      answeredBy,
      rules: { key: rules.key, version: rules.version },
      answers: [...answers],
    },
    ...(reasons.length === 0 || standing === 'scrapped' ? [] : removalOf(device, [...reasons, ...found])),
  ];
};

const faultOf = (
  rules: DeskRules,
  answers: readonly CheckInAnswer[],
  benchId: string,
): Refusal | undefined => {
  const asked = new Map(rules.checkIn.map((question) => [question.key, question]));
  for (const answer of answers) {
    const question = asked.get(answer.question);
    if (question === undefined)
      return refusal(
        'check-in-question-unknown',
        {
          question: answer.question,
          allowed: [...asked.keys()].join(', '),
        },
        'answers',
      );
    if (answer.said !== 'yes') continue;
    const wrong = answer.choices.find((key) => question.choices.every((choice) => choice.key !== key));
    if (wrong !== undefined)
      return refusal(
        'check-in-choice-unknown',
        {
          choice: wrong,
          question: question.key,
          allowed: question.choices.map(({ key }) => key).join(', '),
        },
        'answers',
      );
  }
  const open = rules.checkIn.filter(
    ({ key }) => answers.filter(({ question }) => question === key).length !== 1,
  );
  const [first] = open;
  return first === undefined
    ? undefined
    : refusal('check-in-question-open', { benchId, count: open.length, question: first.text }, 'answers');
};

/** Why the device is held by what was answered to a question; nothing where the answer was no. */
const reasonsOfAnswer = (question: CheckInQuestion, answers: readonly CheckInAnswer[]): Reason[] => {
  const answer = answers.find(({ question: key }) => key === question.key);
  switch (answer?.said) {
    case undefined:
    case 'no':
      return [];
    case 'not known':
      return [
        {
          key: `check-in.${question.key}.not-known`,
          zone: question.zone,
          effect: 'remove',
          sentence: question.unknown,
        },
      ];
    case 'yes':
      return question.choices
        .filter(({ key }) => answer.choices.includes(key))
        .map(({ key, zone, reason }, index) => ({
          key: `check-in.${question.key}.${key}`,
          zone,
          effect: 'remove',
          sentence: index === 0 ? withNote(reason, answer.note) : reason,
        }));
  }
};

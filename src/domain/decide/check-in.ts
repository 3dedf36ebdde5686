/**
 * The rules of check-in. Any yes or doubt holds the device in the moment in which it is said; whatever is still open is
 * asked all the same. A device about which nothing was in doubt is back once every question is answered.
 */
import { type CheckInAnswer, isExplained, unexplainedYes } from '../custody/check-in-answer.ts';
import type { CheckInQuestion, DeskRules } from '../custody/desk-rules.ts';
import type { OpenQuestions } from '../custody/open-check-in.ts';
import type { Device } from '../device.ts';
import type { DomainEvent } from '../event.ts';
import { type Refusal, refusal } from '../refusal.ts';
import { type Reason, withNote } from '../verdict.ts';
import type { Decision } from './decision.ts';
import { removalOf } from './device.ts';

export interface CheckIn {
  /** A person's ID. */
  readonly answeredBy: string;
  /** Any number of them where one holds the device; all of them where none does. */
  readonly answers: readonly CheckInAnswer[];
  /** It is not recorded out, and came back or was found all the same. */
  readonly withoutCheckOut: boolean;
}

/** `found` is what an open inspection of it had found. */
export const decideCheckIn = (
  device: Device,
  rules: DeskRules,
  checkIn: CheckIn,
  found: readonly Reason[],
): Decision => {
  const fault = faultOf(rules, checkIn.answers, device.benchId);
  if (fault !== undefined) return fault;
  return device.openCheckIn === undefined
    ? begin(device, rules, checkIn, found)
    : goOn(device, device.openCheckIn, rules, checkIn, found);
};

const begin = (
  device: Device,
  rules: DeskRules,
  { answeredBy, answers, withoutCheckOut }: CheckIn,
  found: readonly Reason[],
): Decision => {
  const { benchId, custody } = device;
  if (custody === undefined && !withoutCheckOut) return refusal('check-in-not-out', { benchId });
  const asked = { unanswered: rules.checkIn.map(({ key }) => key), unexplained: [] };
  const open = openAfter(asked, answers);
  if (answers.every(({ said }) => said === 'no') && open !== undefined)
    return questionOpen(rules, open.unanswered, benchId);
  return [
    {
      type: 'device.checked-in',
      benchId,
      ...(custody === undefined ? {} : { userId: custody.userId }),
      answeredBy,
      rules: { key: rules.key, version: rules.version },
      answers: [...answers],
      ...(open === undefined ? {} : { open }),
    },
    ...heldFor(device, rules, answers, found),
  ];
};

/** A no counts for what was not answered before; a doubt counts whenever it is said, and nothing takes it back. */
const goOn = (
  device: Device,
  before: OpenQuestions,
  rules: DeskRules,
  { answeredBy, answers }: CheckIn,
  found: readonly Reason[],
): Decision => {
  const { benchId } = device;
  const counting = answers.filter(
    ({ question, said }) => said !== 'no' || before.unanswered.includes(question),
  );
  if (counting.length === 0) return refusal('check-in-answered-already', { benchId });
  const open = openAfter(before, counting);
  const isSaidBefore = (answer: CheckInAnswer): boolean =>
    answer.said === 'yes' && !isExplained(answer) && before.unexplained.includes(answer.question);
  return [
    {
      type: 'device.check-in-answered',
      benchId,
      answeredBy,
      rules: { key: rules.key, version: rules.version },
      answers: counting,
      ...(open === undefined ? {} : { open }),
    },
    ...heldFor(
      device,
      rules,
      counting.filter((answer) => !isSaidBefore(answer)),
      found,
    ),
  ];
};

const heldFor = (
  device: Device,
  rules: DeskRules,
  answers: readonly CheckInAnswer[],
  found: readonly Reason[],
): readonly DomainEvent[] => {
  const reasons = rules.checkIn.flatMap((question) => reasonsOfAnswer(question, answers));
  return reasons.length === 0 || device.standing === 'scrapped'
    ? []
    : removalOf(device, [...reasons, ...found]);
};

/**
 * What is still to be asked; `undefined` where nothing is. A yes is open until somebody says what it was, or says no more of
 * it a second time.
 */
const openAfter = (
  { unanswered, unexplained }: OpenQuestions,
  answers: readonly CheckInAnswer[],
): OpenQuestions | undefined => {
  const answered = new Map(answers.map((answer) => [answer.question, answer]));
  const still = {
    unanswered: unanswered.filter((key) => !answered.has(key)),
    unexplained: [
      ...unexplained.filter((key) => !answered.has(key)),
      ...unanswered.filter((key) => {
        const answer = answered.get(key);
        return answer?.said === 'yes' && !isExplained(answer);
      }),
    ],
  };
  return still.unanswered.length === 0 && still.unexplained.length === 0 ? undefined : still;
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
  const twice = rules.checkIn
    .map(({ key }) => key)
    .filter((key) => answers.filter(({ question }) => question === key).length > 1);
  return twice.length === 0 ? undefined : questionOpen(rules, twice, benchId);
};

const questionOpen = ({ checkIn }: DeskRules, open: readonly string[], benchId: string): Refusal => {
  const first = checkIn.find(({ key }) => open.includes(key));
  return refusal(
    'check-in-question-open',
    { benchId, count: open.length, question: first?.text ?? '' },
    'answers',
  );
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
      if (answer.choices.length === 0)
        return [
          {
            key: unexplainedYes(question.key),
            zone: question.zone,
            effect: 'remove',
            sentence: withNote(question.yes ?? question.text, answer.note),
          },
        ];
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

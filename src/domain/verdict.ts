/** The verdict as a pure function of the procedure, the answers and the device: it never stops at the first finding. */
import { z } from 'zod';
import type { Answer, Answers, Finding } from './answer.ts';
import { type LengthUnit, lengthText } from './length.ts';
import { faultOfReadings, reasonsOfReadings } from './lifeline/diameter-answer.ts';
import { fillMessage, type Language, type Message, messageSchema } from './message.ts';
import {
  applicableChecks,
  type Check,
  type ConditionCheck,
  type DeviceFacts,
  type PayoutCheck,
  type Procedure,
  zoneSchema,
} from './procedure.ts';
import { type Refusal, refusal } from './refusal.ts';

/** Why a device is out of service: the check and the finding behind it, and the sentence that goes on the tag. */
export const reasonSchema = z.object({
  key: z.string(),
  zone: zoneSchema,
  effect: z.enum(['remove', 'refer-to-manufacturer']),
  positionM: z.number().optional(),
  /** The number of the manufacturer's notice that recalls it, where one does. */
  notice: z.int().positive().optional(),
  sentence: messageSchema,
});
export type Reason = z.infer<typeof reasonSchema>;

export const verdictSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('pass') }),
  z.object({ kind: z.literal('remove from service'), reasons: z.array(reasonSchema).min(1) }),
  z.object({
    kind: z.literal('incomplete'),
    /** Keys of the checks without an answer, in order. */
    unanswered: z.array(z.string()),
    /** Keys of the checks that wait for cleaning and a second look, in order. */
    lookAgain: z.array(z.string()),
    /** The reasons for removal that are on the table already. */
    reasons: z.array(reasonSchema),
  }),
]);
export type Verdict = z.infer<typeof verdictSchema>;

/**
 * Every applicable check must be answered, and none may wait for a second look, before there is a verdict other than
 * `incomplete`. All reasons are kept, in the order of the procedure. Lengths in sentences are in `unit`.
 */
export const verdictOf = (
  procedure: Procedure,
  answers: Answers,
  facts: DeviceFacts,
  unit: LengthUnit,
): Verdict => {
  const checks = applicableChecks(procedure, facts);
  const reasons = checks.flatMap((check) => reasonsOf(check, answers[check.key], facts, unit));
  const unanswered = checks
    .filter((check) => !isAnswered(check, answers[check.key], facts))
    .map((check) => check.key);
  const lookAgain = checks
    .filter((check) => waitsForSecondLook(check, answers[check.key]))
    .map((check) => check.key);
  if (unanswered.length > 0 || lookAgain.length > 0) {
    return { kind: 'incomplete', unanswered, lookAgain, reasons };
  }
  return reasons.length > 0 ? { kind: 'remove from service', reasons } : { kind: 'pass' };
};

/** A verdict to which reasons are added that no check found; with any of them there is no pass. */
export const withReasons = (verdict: Verdict, more: readonly Reason[]): Verdict => {
  if (more.length === 0) return verdict;
  switch (verdict.kind) {
    case 'pass':
      return { kind: 'remove from service', reasons: [...more] };
    case 'remove from service':
    case 'incomplete':
      return { ...verdict, reasons: [...verdict.reasons, ...more] };
  }
};

/**
 * Why a device must stay out of service when its inspection is broken off: every reason on the table, and every finding
 * that still waits for a second look. When in doubt the device stays out of service.
 */
export const reasonsWhenBrokenOff = (
  procedure: Procedure,
  answers: Answers,
  facts: DeviceFacts,
  unit: LengthUnit,
): Reason[] =>
  applicableChecks(procedure, facts).flatMap((check) => {
    const answer = answers[check.key];
    return check.kind === 'condition' && answer?.kind === 'defects'
      ? answer.findings.flatMap((finding) => reasonOfFinding(check, finding, unit, 'remove'))
      : reasonsOf(check, answer, facts, unit);
  });

/** The refusal of an answer that the check does not allow, or `undefined` where it fits. */
export const faultOfAnswer = (check: Check, answer: Answer, facts: DeviceFacts): Refusal | undefined => {
  switch (check.kind) {
    case 'marking':
      return answer.kind === 'marking'
        ? undefined
        : refusal(
            'answer-not-allowed',
            { check: check.key, allowed: 'legible, illegible, missing' },
            'answer',
          );
    case 'payout-length':
      return answer.kind === 'length'
        ? undefined
        : refusal('answer-not-allowed', { check: check.key, allowed: 'length' }, 'answer');
    case 'lifeline-diameter':
      return answer.kind === 'diameters'
        ? faultOfReadings(answer, facts)
        : refusal('answer-not-allowed', { check: check.key, allowed: 'diameters' }, 'answer');
    case 'condition':
      if (answer.kind === 'good') return undefined;
      if (answer.kind !== 'defects')
        return refusal('answer-not-allowed', { check: check.key, allowed: 'good, defects' }, 'answer');
      return firstFault(answer.findings.map((finding) => faultOfFinding(check, finding, facts)));
  }
};

const firstFault = (faults: readonly (Refusal | undefined)[]): Refusal | undefined =>
  faults.find((fault) => fault !== undefined);

const faultOfFinding = (check: ConditionCheck, finding: Finding, facts: DeviceFacts): Refusal | undefined => {
  if (!check.defects.some((defect) => defect.key === finding.defect)) {
    return refusal(
      'defect-unknown',
      {
        check: check.key,
        defect: finding.defect,
        allowed: check.defects.map((defect) => defect.key).join(', '),
      },
      'answer',
    );
  }
  if (!check.positioned) return undefined;
  if (finding.positionM === undefined) return refusal('position-missing', { check: check.key }, 'answer');
  if (finding.positionM > facts.ratedLengthM) {
    return refusal(
      'position-beyond-lifeline',
      { positionM: finding.positionM, ratedM: facts.ratedLengthM },
      'answer',
    );
  }
  return undefined;
};

/** Readings that leave a part of the lifeline out count as no answer, wherever they came from. */
const isAnswered = (check: Check, answer: Answer | undefined, facts: DeviceFacts): boolean => {
  if (answer === undefined) return false;
  return (
    check.kind !== 'lifeline-diameter' ||
    (answer.kind === 'diameters' && faultOfReadings(answer, facts) === undefined)
  );
};

/** True where a defect of the answer asks for cleaning and a second look before the check counts as answered. */
const waitsForSecondLook = (check: Check, answer: Answer | undefined): boolean =>
  check.kind === 'condition' &&
  answer?.kind === 'defects' &&
  answer.findings.some((finding) => effectOf(check, finding) === 'clean-and-look-again');

const effectOf = (check: ConditionCheck, finding: Finding) =>
  check.defects.find((defect) => defect.key === finding.defect)?.effect;

const reasonsOf = (
  check: Check,
  answer: Answer | undefined,
  facts: DeviceFacts,
  unit: LengthUnit,
): Reason[] => {
  if (answer === undefined) return [];
  switch (check.kind) {
    case 'marking':
      return answer.kind === 'marking' && answer.state !== 'legible'
        ? [
            {
              key: `${check.key}.${answer.state}`,
              zone: check.zone,
              effect: 'remove',
              sentence: check.reasons[answer.state],
            },
          ]
        : [];
    case 'payout-length':
      return answer.kind === 'length' ? shortPayout(check, answer.confirmedM, facts, unit) : [];
    case 'lifeline-diameter':
      return answer.kind === 'diameters' ? reasonsOfReadings(check, answer, facts, unit) : [];
    case 'condition':
      return answer.kind === 'defects'
        ? answer.findings.flatMap((finding) => reasonOfFinding(check, finding, unit))
        : [];
  }
};

/** Shorter than rated, compared to the millimetre, is not a pass. */
const shortPayout = (
  check: PayoutCheck,
  confirmedM: number,
  facts: DeviceFacts,
  unit: LengthUnit,
): Reason[] => {
  if (Math.round(confirmedM * 1000) >= Math.round(facts.ratedLengthM * 1000)) return [];
  const sentence = fillMessage(check.reasons.short, {
    en: { confirmed: lengthText(confirmedM, unit, 'en'), rated: lengthText(facts.ratedLengthM, unit, 'en') },
    es: { confirmed: lengthText(confirmedM, unit, 'es'), rated: lengthText(facts.ratedLengthM, unit, 'es') },
  });
  return [{ key: `${check.key}.short`, zone: check.zone, effect: 'remove', sentence }];
};

/** `waiting` says what becomes of a finding that waits for a second look; without it, such a finding is no reason yet. */
const reasonOfFinding = (
  check: ConditionCheck,
  finding: Finding,
  unit: LengthUnit,
  waiting?: 'remove',
): Reason[] => {
  const defect = check.defects.find((candidate) => candidate.key === finding.defect);
  const effect = defect?.effect === 'clean-and-look-again' ? waiting : defect?.effect;
  if (defect === undefined || effect === undefined) return [];
  const positionM = finding.positionM;
  const at = (language: Language) => ({
    position: positionM === undefined ? '' : lengthText(positionM, unit, language),
  });
  const sentence = withNote(fillMessage(defect.reason, { en: at('en'), es: at('es') }), finding.note);
  return [
    {
      key: `${check.key}.${defect.key}`,
      zone: check.zone,
      effect,
      ...(positionM === undefined ? {} : { positionM }),
      sentence,
    },
  ];
};

/** The inspector's own words follow the sentence, in the language in which they were written. */
export const withNote = (sentence: Message, note: string | undefined): Message =>
  note === undefined || note === ''
    ? sentence
    : { en: `${sentence.en} ${note}`, es: `${sentence.es} ${note}` };

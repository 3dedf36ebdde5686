/**
 * An answer in the making: what the hands, the keys or the scanner have given so far to one check, before it is sent.
 *
 * One reducer for all three ways of input, so that none of them can do what the others cannot.
 */
import type { Answer, Finding } from '../../../src/domain/answer.ts';
import type { Metres } from '../../../src/domain/brand.ts';
import { type LengthUnit, parseLength } from '../../../src/domain/length.ts';
import type { LifelineFacts } from '../../../src/domain/lifeline/diameter-answer.ts';
import { type MarkingState, markingStates } from '../../../src/domain/marking.ts';
import type { Check, ConditionCheck } from '../../../src/domain/procedure.ts';
import { typedPosition } from '../../drawing/strip-scale.ts';
import { type DiameterDraft, openReadings, stepReadings } from './diameter-draft.ts';
import { typedAfter } from './typed-after.ts';

export type Draft =
  | { readonly stage: 'question' }
  | {
      readonly stage: 'defects';
      readonly findings: readonly Finding[];
      /** The defect whose place on the lifeline is being given, and the digits of it so far. */
      readonly placing: { readonly defect: string; readonly typed: string } | undefined;
      /** The finding that a note belongs to. */
      readonly noted: number | undefined;
    }
  | { readonly stage: 'length'; readonly typed: string }
  | DiameterDraft;

export type DraftInput =
  | { readonly kind: 'good' | 'defect' | 'confirm' | 'cancel' | 'point' | 'erase' }
  | { readonly kind: 'digit'; readonly digit: number }
  | { readonly kind: 'marking'; readonly state: MarkingState }
  | { readonly kind: 'choose'; readonly defect: string }
  | { readonly kind: 'place'; readonly positionM: Metres }
  | { readonly kind: 'typed'; readonly text: string }
  | { readonly kind: 'drop'; readonly finding: number }
  | { readonly kind: 'note'; readonly text: string };

/** What the person is told when an input does not fit; the sentence stands in the catalogue under this name. */
export type DraftFault =
  | 'chooseMarking'
  | 'chooseDefect'
  | 'notANumber'
  | 'beyondLifeline'
  | 'noSuchNumber'
  | 'tooLong'
  | 'diameterNotANumber'
  | 'diameterImpossible'
  | 'diameterPlaces'
  | 'diametersTooMany';

export interface DraftStep {
  readonly draft: Draft;
  /** The finished answer, to be sent. */
  readonly answer?: Answer;
  readonly fault?: DraftFault;
}

export interface DraftContext {
  readonly check: Check;
  readonly ratedLengthM: Metres;
  /** What readings of the lifeline are held against. */
  readonly facts: LifelineFacts;
  readonly unit: LengthUnit;
  /** The answer that stands on record, to start from when it is changed. */
  readonly given: Answer | undefined;
}

export const question: Draft = { stage: 'question' };
const mostFindings = 50;

/** The next state of the draft. An input that means nothing where the draft stands leaves it as it is. */
export const stepDraft = (draft: Draft, input: DraftInput, context: DraftContext): DraftStep => {
  switch (draft.stage) {
    case 'question':
      return answerQuestion(draft, input, context);
    case 'length':
      return giveLength(draft, input, context);
    case 'diameters':
      return stepReadings(draft, input, context);
    case 'defects':
      return context.check.kind === 'condition'
        ? nameDefects(draft, input, context, context.check)
        : { draft: question };
  }
};

const answerQuestion = (draft: Draft, input: DraftInput, context: DraftContext): DraftStep => {
  const { check, given } = context;
  switch (check.kind) {
    case 'marking': {
      const state = markingInput(input);
      if (state !== undefined) return { draft: question, answer: { kind: 'marking', state } };
      return input.kind === 'defect' ? { draft, fault: 'chooseMarking' } : { draft };
    }
    case 'payout-length':
      if (input.kind === 'good')
        return { draft: question, answer: { kind: 'length', confirmedM: context.ratedLengthM } };
      return input.kind === 'defect' ? { draft: { stage: 'length', typed: '' } } : { draft };
    case 'lifeline-diameter':
      return measure(draft, input, context);
    case 'condition':
      if (input.kind === 'good') return { draft: question, answer: { kind: 'good' } };
      return input.kind === 'defect' ? { draft: openDefects(check, given) } : { draft };
  }
};

/** With a minimum of the manufacturer there is nothing to answer but readings; without one, none need be taken. */
const measure = (draft: Draft, input: DraftInput, { given, facts }: DraftContext): DraftStep => {
  if (input.kind === 'defect') return { draft: openReadings(given) };
  if (input.kind !== 'good') return { draft };
  return facts.lifelineMinimumDiameterMm === undefined
    ? { draft: question, answer: { kind: 'diameters', readings: [] } }
    : { draft: openReadings(given) };
};

const markingInput = (input: DraftInput): MarkingState | undefined => {
  if (input.kind === 'good') return 'legible';
  if (input.kind === 'marking') return input.state;
  return input.kind === 'digit' ? markingStates[input.digit - 1] : undefined;
};

/** Starts from the findings on record. A check with one possible defect has it chosen already. */
const openDefects = (check: ConditionCheck, given: Answer | undefined): Draft => {
  const findings = given?.kind === 'defects' ? given.findings : [];
  const only = check.defects.length === 1 ? check.defects[0] : undefined;
  if (findings.length > 0 || only === undefined)
    return { stage: 'defects', findings, placing: undefined, noted: undefined };
  return check.positioned
    ? { stage: 'defects', findings, placing: { defect: only.key, typed: '' }, noted: undefined }
    : { stage: 'defects', findings: [{ defect: only.key }], placing: undefined, noted: 0 };
};

const giveLength = (
  draft: Extract<Draft, { stage: 'length' }>,
  input: DraftInput,
  { unit }: DraftContext,
): DraftStep => {
  switch (input.kind) {
    case 'confirm': {
      const confirmedM = parseLength(draft.typed, unit);
      if (confirmedM === undefined) return { draft, fault: 'notANumber' };
      return confirmedM > 200
        ? { draft, fault: 'tooLong' }
        : { draft: question, answer: { kind: 'length', confirmedM } };
    }
    case 'cancel':
      return { draft: question };
    default:
      return { draft: { ...draft, typed: typedAfter(draft.typed, input) } };
  }
};

const nameDefects = (
  draft: Extract<Draft, { stage: 'defects' }>,
  input: DraftInput,
  context: DraftContext,
  check: ConditionCheck,
): DraftStep => {
  const { findings, placing } = draft;
  if (input.kind === 'choose') return { draft: chooseDefect(draft, check, input.defect) };
  if (input.kind === 'drop') {
    return {
      draft: { ...draft, findings: findings.filter((_, index) => index !== input.finding), noted: undefined },
    };
  }
  if (input.kind === 'note') return { draft: withNote(draft, input.text) };
  if (placing !== undefined) return placeFinding({ ...draft, placing }, input, context);
  switch (input.kind) {
    case 'digit': {
      const defect = check.defects[input.digit - 1];
      return defect === undefined
        ? { draft, fault: 'noSuchNumber' }
        : { draft: chooseDefect(draft, check, defect.key) };
    }
    case 'confirm':
      return findings.length === 0
        ? { draft, fault: 'chooseDefect' }
        : { draft: question, answer: { kind: 'defects', findings: findings.map(tidied) } };
    case 'cancel':
      return { draft: question };
    case 'erase':
      return { draft: { ...draft, findings: findings.slice(0, -1), noted: undefined } };
    default:
      return { draft };
  }
};

/** A positioned defect asks for its place, as often as it is found; any other is chosen once, and unchosen again. */
const chooseDefect = (
  draft: Extract<Draft, { stage: 'defects' }>,
  check: ConditionCheck,
  defect: string,
): Draft => {
  if (draft.findings.length >= mostFindings) return draft;
  if (check.positioned) return { ...draft, placing: { defect, typed: '' } };
  const findings = draft.findings.filter((finding) => finding.defect !== defect);
  return findings.length < draft.findings.length
    ? { ...draft, findings, noted: undefined }
    : { ...draft, findings: [...findings, { defect }], noted: findings.length };
};

const placeFinding = (
  draft: Extract<Draft, { stage: 'defects' }> & {
    readonly placing: { readonly defect: string; readonly typed: string };
  },
  input: DraftInput,
  { ratedLengthM, unit }: DraftContext,
): DraftStep => {
  const { placing, findings } = draft;
  switch (input.kind) {
    case 'place':
      return { draft: { ...draft, placing: { ...placing, typed: typedPosition(input.positionM, unit) } } };
    case 'confirm': {
      const positionM = parseLength(placing.typed, unit);
      if (positionM === undefined) return { draft, fault: 'notANumber' };
      if (positionM > ratedLengthM) return { draft, fault: 'beyondLifeline' };
      const found = [...findings, { defect: placing.defect, positionM }];
      return { draft: { ...draft, findings: found, placing: undefined, noted: found.length - 1 } };
    }
    case 'cancel':
      return { draft: findings.length === 0 ? question : { ...draft, placing: undefined } };
    default:
      return { draft: { ...draft, placing: { ...placing, typed: typedAfter(placing.typed, input) } } };
  }
};

const withNote = (draft: Extract<Draft, { stage: 'defects' }>, note: string): Draft => ({
  ...draft,
  findings: draft.findings.map((finding, index) => (index === draft.noted ? { ...finding, note } : finding)),
});

const tidied = ({ note, ...finding }: Finding): Finding => {
  const text = note?.trim() ?? '';
  return text === '' ? finding : { ...finding, note: text };
};

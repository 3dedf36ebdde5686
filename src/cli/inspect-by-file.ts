/** A whole inspection from written answers: all of it is checked first, then it is walked and signed. */
import type { Answers } from '../domain/answer.ts';
import type { BenchId, CalendarDate } from '../domain/brand.ts';
import { incompetence } from '../domain/decide/designation.ts';
import { factsOf } from '../domain/decide/inspection.ts';
import type { DueWhat } from '../domain/due/due-date.ts';
import type { Language } from '../domain/message.ts';
import { applicableChecks } from '../domain/procedure.ts';
import { refusal } from '../domain/refusal.ts';
import { faultOfAnswer, type Reason, type Verdict, verdictOf, withReasons } from '../domain/verdict.ts';
import type { AnswerPicture } from './answer-pictures.ts';
import { Failure, failureOf } from './failure.ts';
import type { StationCall } from './job.ts';

export interface InspectionOutcome {
  readonly benchId: BenchId;
  readonly verdict: Verdict['kind'];
  readonly reasons: readonly Reason[];
  readonly signed: boolean;
  /** A tag of its own follows from it; none from the pass of a blind second inspection. */
  readonly isTagged?: boolean | undefined;
  readonly inspection?: number | undefined;
  readonly tagNumber?: number | undefined;
  readonly signedBy?: string | undefined;
  readonly signedOn?: CalendarDate | undefined;
  readonly dueOn?: CalendarDate | undefined;
  readonly dueFor?: DueWhat | undefined;
}

export interface WrittenInspection {
  readonly benchId: BenchId;
  readonly answers: Answers;
  readonly pictures: readonly AnswerPicture[];
  /** Where an inspection of the device is open, go on with it instead of refusing. */
  readonly resume: boolean;
  /** It is the blind second inspection of a device that was drawn, and whoever signs does not know the first. */
  readonly isBlind: boolean;
}

/** Says what the answers come to, and records nothing. Fails at the first answer that the procedure does not allow. */
export const judge = async (
  call: StationCall,
  { benchId, answers, pictures, resume }: WrittenInspection,
  language: Language,
): Promise<InspectionOutcome> => {
  const { device } = await call('device.show', { benchId });
  const open = resume ? device.openInspection : undefined;
  const { procedure } = await call('procedure.show', open === undefined ? {} : { inspection: open });
  const status = await call('station.status', {});
  const facts = factsOf(device.modelSheet);
  const checks = new Map(applicableChecks(procedure, facts).map((check) => [check.key, check]));
  for (const [key, answer] of Object.entries(answers)) {
    const check = checks.get(key);
    const fault =
      check === undefined ? refusal('check-unknown', { check: key }) : faultOfAnswer(check, answer, facts);
    if (fault !== undefined) throw failureOf({ ...fault, field: `answers.${key}` }, language);
  }
  for (const { check } of pictures) {
    if (!checks.has(check))
      throw failureOf(refusal('check-unknown', { check }, `pictures.${check}`), language);
  }
  const unit = status.state === 'ready' ? status.lengthUnit : 'm';
  const verdict = withReasons(verdictOf(procedure, answers, facts, unit), device.programReasons);
  const reasons = verdict.kind === 'pass' ? [] : verdict.reasons;
  if (verdict.kind !== 'incomplete') return { benchId, verdict: verdict.kind, reasons, signed: false };
  const stillOpen = [...verdict.unanswered, ...verdict.lookAgain];
  const incomplete = refusal('inspection-incomplete', { count: stillOpen.length, first: stillOpen[0] ?? '' });
  throw failureOf(incomplete, language, { benchId, verdict: verdict.kind, reasons, stillOpen });
};

/**
 * Walks and signs. The PIN is tried before the first answer, so that a wrong one leaves an inspection that was begun and
 * broken off without answers, and nothing else.
 */
export const inspectAndSign = async (
  call: StationCall,
  written: WrittenInspection,
  pin: string,
  language: Language,
): Promise<InspectionOutcome> => {
  await judge(call, written, language);
  const { benchId, answers, pictures } = written;
  await checkSigner(call, benchId, language);
  const inspection = await begin(call, written);
  await tryPin(call, inspection, pin, written.resume);
  for (const [check, answer] of Object.entries(answers))
    await call('inspection.answer', { inspection, check, answer });
  for (const picture of pictures) await call('inspection.keep-picture', { inspection, ...picture });
  const { signed, verdict, reinspection } = (await call('inspection.sign', { inspection, pin })).inspection;
  return {
    benchId,
    verdict: verdict.kind,
    reasons: verdict.kind === 'pass' ? [] : verdict.reasons,
    signed: signed !== undefined,
    isTagged: reinspection === undefined || verdict.kind !== 'pass',
    inspection,
    tagNumber: signed?.tagNumber,
    signedBy: signed?.by,
    signedOn: signed?.on,
    dueOn: signed?.dueOn,
    dueFor: signed?.dueFor,
  };
};

/** The same refusals as at the signature, before anything is recorded. */
const checkSigner = async (call: StationCall, benchId: BenchId, language: Language): Promise<void> => {
  const { device } = await call('device.show', { benchId });
  const status = await call('station.status', {});
  if (status.state !== 'ready') throw failureOf(refusal('station-not-set-up'), language);
  if (status.person === undefined) throw failureOf(refusal('sign-in-needed'), language);
  const unfit = incompetence(status.person, status.today, device.modelSheet);
  if (unfit !== undefined) throw failureOf(unfit, language);
};

const begin = async (call: StationCall, { benchId, resume, isBlind }: WrittenInspection): Promise<number> => {
  const { device } = await call('device.show', { benchId });
  if (resume && device.openInspection !== undefined) return device.openInspection;
  const begun = isBlind
    ? await call('reinspection.begin', { benchId, isUnaware: true })
    : await call('inspection.start', { benchId });
  return begun.inspection.inspection;
};

/**
 * An inspection without answers cannot be signed yet; where that is all that is wrong, the PIN is right. One that is resumed
 * with answers is left alone: it could be complete, and would be signed as it stands.
 */
const tryPin = async (
  call: StationCall,
  inspection: number,
  pin: string,
  resumed: boolean,
): Promise<void> => {
  const { answers } = (await call('inspection.show', { inspection })).inspection;
  if (Object.keys(answers).length > 0) return;
  try {
    await call('inspection.sign', { inspection, pin });
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    if (error.error.code === 'inspection-incomplete') return;
    if (!resumed) await call('inspection.break-off', { inspection, why: error.error.sentence });
    throw error;
  }
};

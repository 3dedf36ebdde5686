/** The record itself: whether what was looked at fits together, and when all of it was last verified. */
import type { RefusalCode } from '../refusal.ts';
import { daysBetweenMoments } from './days.ts';
import { type Finding, finding } from './finding.ts';
import { thresholds } from './thresholds.ts';

/** A verification that came to a result. */
export interface PastVerification {
  readonly at: string;
  readonly isSound: boolean;
  /** How many events it looked at. */
  readonly events: number;
}

export interface RecordLook {
  readonly now: string;
  readonly events: number;
  readonly checkpoints: number;
  /** How much of the record does not fit: events, hashes, checkpoints. */
  readonly faults: number;
  /** The last verification of everything, projections and pictures among it. */
  readonly lastWhole?: PastVerification | undefined;
}

export const judgeRecord = (look: RecordLook): readonly Finding[] => {
  const { now, events, checkpoints, faults, lastWhole } = look;
  if (faults > 0) return [finding('record', 'wrong', 'record-not-sound', { count: faults })];
  const quick = finding('record', 'good', 'record-fits', { events, checkpoints });
  return [quick, judgeLast(now, lastWhole)];
};

const judgeLast = (now: string, last: PastVerification | undefined): Finding => {
  if (last === undefined) return finding('record', 'not known', 'never-verified');
  const values = { on: last.at.slice(0, 10), events: last.events };
  if (!last.isSound) return finding('record', 'wrong', 'verified-not-sound', values);
  return daysBetweenMoments(last.at, now) > thresholds.verificationAttentionDays
    ? finding('record', 'attention', 'verified-long-ago', values)
    : finding('record', 'good', 'verified', values);
};

/** Why the record could not be opened at all, told as a finding. */
export const judgeClosedRecord = (code: RefusalCode): Finding => {
  switch (code) {
    case 'station-already-open':
      return finding('record', 'attention', 'record-in-use');
    case 'ledger-from-newer-version':
      return finding('record', 'wrong', 'record-newer');
    case 'ledger-damaged':
      return finding('record', 'wrong', 'record-damaged');
    default:
      return finding('record', 'wrong', 'record-closed', { code });
  }
};

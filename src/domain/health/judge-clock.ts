/** The clock of the PC, by which due dates are reckoned: against the record, against itself, and its time zone. */
import { daysBetweenMoments } from './days.ts';
import { type Finding, finding } from './finding.ts';
import { thresholds } from './thresholds.ts';

/** A jump of the wall clock against the time that really passed, in milliseconds: above 0 it went ahead. */
export interface ClockJump {
  readonly byMs: number;
  /** By the clock as it was afterwards. */
  readonly at: string;
}

export interface Clock {
  readonly now: string;
  /** When the last event was recorded; absent in an empty record. */
  readonly recordedAt?: string | undefined;
  /** The farthest jumps back and ahead since the station was opened. */
  readonly jumps: readonly ClockJump[];
  readonly zone: string;
  /** The time zone of the PC before, and when it was first seen changed. */
  readonly zoneBefore?: { readonly zone: string; readonly changedAt: string } | undefined;
  /** The difference of both from UTC now, in minutes; absent where there is no station yet. */
  readonly station?: {
    readonly zone: string;
    readonly offsetMinutes: number;
    readonly pcOffsetMinutes: number;
  };
}

export const judgeClock = (clock: Clock): readonly Finding[] => {
  const findings = [yearFault(clock), aheadFault(clock), ...jumpFaults(clock), ...zoneFaults(clock)].filter(
    (each) => each !== undefined,
  );
  return findings.length > 0
    ? findings
    : [finding('clock', 'good', 'clock-good', { now: shown(clock.now), zone: clock.zone })];
};

const yearFault = ({ now }: Clock): Finding | undefined => {
  const year = new Date(now).getUTCFullYear();
  const { firstYear, lastYear } = thresholds.clock;
  return year < firstYear || year > lastYear ? finding('clock', 'wrong', 'clock-year', { year }) : undefined;
};

const aheadFault = ({ now, recordedAt }: Clock): Finding | undefined => {
  if (recordedAt === undefined) return undefined;
  const aheadMs = Date.parse(recordedAt) - Date.parse(now);
  const { aheadAttentionMs, aheadWrongMs } = thresholds.clock;
  if (aheadMs <= aheadAttentionMs) return undefined;
  const values = { recorded: shown(recordedAt), now: shown(now) };
  return finding('clock', aheadMs > aheadWrongMs ? 'wrong' : 'attention', 'clock-behind-record', values);
};

const jumpFaults = ({ jumps }: Clock): readonly Finding[] =>
  jumps.flatMap(({ byMs, at }) => {
    if (Math.abs(byMs) < thresholds.clock.jumpMs) return [];
    const values = { minutes: Math.round(Math.abs(byMs) / 60_000), at: shown(at) };
    return byMs < 0
      ? [finding('clock', 'wrong', 'clock-set-back', values)]
      : [finding('clock', 'attention', 'clock-went-ahead', values)];
  });

const zoneFaults = ({ now, zone, zoneBefore, station }: Clock): readonly Finding[] => {
  const isLately =
    zoneBefore !== undefined &&
    daysBetweenMoments(zoneBefore.changedAt, now) <= thresholds.clock.zoneToldDays;
  return [
    ...(isLately ? [finding('clock', 'attention', 'zone-changed', { before: zoneBefore.zone, zone })] : []),
    ...(station !== undefined && station.offsetMinutes !== station.pcOffsetMinutes
      ? [finding('clock', 'attention', 'zone-differs', { station: station.zone, zone })]
      : []),
  ];
};

/** `2026-03-10 08:00 UTC`. */
const shown = (moment: string): string => `${moment.slice(0, 10)} ${moment.slice(11, 16)} UTC`;

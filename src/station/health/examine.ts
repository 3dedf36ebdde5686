/** Looks the whole station over, every subject by itself, and tells how far it is. */
import { byGravity, type Finding } from '../../domain/health/finding.ts';
import { judgeClosedRecord } from '../../domain/health/judge-record.ts';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import type { WorkControl } from '../work-jobs.ts';
import { type Look, type PlaceSources, type RecordSources, withinLimit } from './look.ts';
import { looksAtPlace } from './look-at-place.ts';
import { looksAtRecord, withoutRecord } from './look-at-record.ts';

export interface Examination {
  /** The gravest first. */
  readonly findings: readonly Finding[];
}

/** Refuses with `health-canceled` where it was ended. */
export const examine = async (
  sources: RecordSources,
  { signal, onProgress }: WorkControl,
): Promise<Examination | Refusal> => {
  const looks = [
    ...looksAtPlace.map((look) => boundTo(look, sources, signal)),
    ...looksAtRecord.map((look) => boundTo(look, sources, signal)),
  ];
  let done = 0;
  onProgress({ done, of: looks.length });
  const found = Promise.all(
    looks.map(async (look) => {
      const findings = await look();
      done += 1;
      onProgress({ done, of: looks.length });
      return findings;
    }),
  );
  const findings = await Promise.race([found, endOf(signal)]);
  return signal.aborted || findings === undefined
    ? refusal('health-canceled')
    : { findings: byGravity(findings.flat()) };
};

/** Milliseconds in which what was begun lets go of the record; a printer that does not answer is not waited for. */
const graceMs = 1_000;

const endOf = (signal: AbortSignal): Promise<undefined> =>
  new Promise((resolve) => {
    const end = (): void => void setTimeout(() => resolve(undefined), graceMs);
    signal.addEventListener('abort', end, { once: true });
  });

const boundTo =
  <Sources>(look: Look<Sources>, sources: Sources, signal: AbortSignal) =>
  (): Promise<readonly Finding[]> =>
    withinLimit(look, sources, signal);

/** Where the record is not there, or could not be opened, whatever the reason; `closed` says why, where it is there. */
export const examineWithoutRecord = async (
  sources: PlaceSources,
  closed: Refusal | undefined,
): Promise<Examination> => {
  const { signal } = new AbortController();
  const found = await Promise.all(looksAtPlace.map((look) => withinLimit(look, sources, signal)));
  const record = closed === undefined ? [] : [judgeClosedRecord(closed.code)];
  const others = closed === undefined ? [] : withoutRecord();
  return { findings: byGravity([...found.flat(), ...record, ...others]) };
};

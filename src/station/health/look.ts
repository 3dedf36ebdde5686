/** One look at one subject: what it needs, and that it never takes the others with it. */
import type { Instant } from '../../domain/brand.ts';
import { type Finding, finding, type HealthSubject } from '../../domain/health/finding.ts';
import type { Language } from '../../domain/message.ts';
import type { EvidenceStore } from '../../ledger/evidence-store.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { ClockWatch } from './clock-watch.ts';
import type { StationNotes } from './station-notes.ts';
import type { Surroundings } from './surroundings.ts';

/** What can be looked at whether or not there is a record. */
export interface PlaceSources {
  readonly folder: string;
  readonly productFolder: string;
  readonly surroundings: Surroundings | undefined;
  readonly language: Language;
  now(): Instant;
}

export interface RecordSources extends PlaceSources {
  readonly ledger: Ledger;
  readonly evidence: EvidenceStore;
  readonly notes: StationNotes;
  readonly clockWatch: ClockWatch;
}

export interface Look<Sources> {
  readonly subject: HealthSubject;
  /** After so long the others are told without it. */
  readonly limitMs: number;
  look(sources: Sources, signal: AbortSignal): Promise<readonly Finding[]>;
}

/** Never throws: what fails, and what takes too long, is a finding. A look that was ended is told to stop by the signal. */
export const withinLimit = async <Sources>(
  { subject, limitMs, look }: Look<Sources>,
  sources: Sources,
  signal: AbortSignal,
): Promise<readonly Finding[]> => {
  const ownEnd = new AbortController();
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<readonly Finding[]>((resolve) => {
    timer = setTimeout(() => {
      ownEnd.abort();
      resolve([finding(subject, 'not known', 'took-too-long', { seconds: limitMs / 1000 })]);
    }, limitMs);
  });
  const looked = look(sources, AbortSignal.any([signal, ownEnd.signal])).catch((error: unknown) => [
    finding(subject, 'not known', 'could-not-look', { code: codeOf(error) }),
  ]);
  try {
    return await Promise.race([looked, late]);
  } finally {
    clearTimeout(timer);
  }
};

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '?';

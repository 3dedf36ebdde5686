/** A report of the findings for whoever helps: nothing in it names a person, a device, a printer or a place of the PC. */
import {
  type Finding,
  type HealthState,
  healthStates,
  type WordedFinding,
  withoutPrivate,
} from './finding.ts';

export interface HealthReport {
  readonly program: 'SRL Bench';
  /** Moment in UTC. */
  readonly at: string;
  readonly counts: Readonly<Record<HealthState, number>>;
  readonly findings: readonly WordedFinding[];
}

export type WordFinding = (finding: Finding) => WordedFinding;

/** `word` says a finding in the language of whoever sends the report. */
export const healthReport = (findings: readonly Finding[], at: string, word: WordFinding): HealthReport => ({
  program: 'SRL Bench',
  at,
  counts: countsOf(findings),
  findings: findings.map((found) => word(withoutPrivate(found))),
});

export const countsOf = (findings: readonly Finding[]): Readonly<Record<HealthState, number>> => {
  const counts = Object.fromEntries(healthStates.map((state) => [state, 0])) as Record<HealthState, number>;
  for (const { state } of findings) counts[state] += 1;
  return counts;
};

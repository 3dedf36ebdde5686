/** The order of the walk: which check comes next, how far each zone is, and what is still open. */
import type { Check, Zone } from '../../../src/domain/procedure.ts';
import type { InspectionView } from '../../../src/station/views.ts';

export type CheckState = 'open' | 'good' | 'finding' | 'look again';

/** How a check stands by its latest answer. */
export const checkState = (check: Check, inspection: Pick<InspectionView, 'answers'>): CheckState => {
  const answer = inspection.answers[check.key]?.answer;
  if (answer === undefined) return 'open';
  switch (answer.kind) {
    case 'good':
      return 'good';
    case 'marking':
      return answer.state === 'legible' ? 'good' : 'finding';
    case 'length':
    case 'diameters':
      return 'good';
    case 'defects': {
      const effectOf = new Map(
        check.kind === 'condition' ? check.defects.map(({ key, effect }) => [key, effect]) : [],
      );
      const waits = answer.findings.some(({ defect }) => effectOf.get(defect) === 'clean-and-look-again');
      return waits ? 'look again' : 'finding';
    }
  }
};

export interface ZoneSegment {
  readonly zone: Zone;
  readonly first: string;
  readonly states: readonly { readonly key: string; readonly state: CheckState }[];
}

/** Neighbouring checks of one zone, in the order of the walk. */
export const zoneSegments = (
  checks: readonly Check[],
  inspection: InspectionView,
): readonly ZoneSegment[] => {
  const segments: ZoneSegment[] = [];
  for (const check of checks) {
    const state = { key: check.key, state: stateWithVerdict(check, inspection) };
    const last = segments.at(-1);
    if (last?.zone === check.zone)
      segments[segments.length - 1] = { ...last, states: [...last.states, state] };
    else segments.push({ zone: check.zone, first: check.key, states: [state] });
  }
  return segments;
};

/** As `checkState`, but a payout that was too short, or a lifeline too thin, is a finding: that is the verdict's to say. */
export const stateWithVerdict = (check: Check, inspection: InspectionView): CheckState => {
  const state = checkState(check, inspection);
  return state === 'good' && reasonsOfCheck(check.key, inspection).length > 0 ? 'finding' : state;
};

/** The reasons on the table that come from one check. */
export const reasonsOfCheck = (checkKey: string, { verdict }: Pick<InspectionView, 'verdict'>) =>
  reasonsOf({ verdict }).filter(({ key }) => key.startsWith(`${checkKey}.`));

export const reasonsOf = ({ verdict }: Pick<InspectionView, 'verdict'>) =>
  verdict.kind === 'pass' ? [] : verdict.reasons;

export type WalkPlace = { readonly at: 'check'; readonly key: string } | { readonly at: 'verdict' };

/** Where the walk goes after an answer: to the next open check, past the end to the first open one, else to the verdict. */
export const placeAfterAnswer = (answered: string, inspection: InspectionView): WalkPlace => {
  const { verdict, checks } = inspection;
  if (verdict.kind !== 'incomplete') return { at: 'verdict' };
  if (verdict.lookAgain.includes(answered)) return { at: 'check', key: answered };
  const open = new Set([...verdict.unanswered, ...verdict.lookAgain]);
  const from = checks.indexOf(answered);
  const key =
    checks.slice(from + 1).find((candidate) => open.has(candidate)) ??
    checks.find((candidate) => open.has(candidate));
  return key === undefined ? { at: 'verdict' } : { at: 'check', key };
};

/** The place one step on or back; the verdict comes after the last check, and before the first there is nothing. */
export const neighbour = (place: WalkPlace, step: -1 | 1, checks: readonly string[]): WalkPlace => {
  const index = place.at === 'verdict' ? checks.length : checks.indexOf(place.key);
  const key = checks[Math.max(0, index + step)];
  return key === undefined ? { at: 'verdict' } : { at: 'check', key };
};

/** Where a walk begins or resumes. */
export const firstPlace = ({ nextCheck, verdict }: InspectionView): WalkPlace =>
  verdict.kind === 'incomplete' && nextCheck !== undefined
    ? { at: 'check', key: nextCheck }
    : { at: 'verdict' };

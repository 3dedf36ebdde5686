/** How far inspectors agree, by the pairs of blind inspections: on the verdict, and on each check. */
import { type Agreement, cohensKappa, type SaidPair } from './kappa.ts';
import { fewDevices } from './removal-insight.ts';

/** What one inspector came to. */
export interface Judged {
  /** By what was found on the device, whatever else removes it. */
  readonly verdict: 'pass' | 'remove from service';
  /** Each check that was answered, and whether it removes the device. */
  readonly checks: ReadonlyMap<string, 'good' | 'removes'>;
}

export interface JudgedPair {
  readonly benchId: string;
  readonly first: Judged;
  readonly second: Judged;
}

/** Fewer pairs than this say little, and of a check with fewer nothing is said. As for devices; common practice, no source. */
export const fewPairs = fewDevices;

export interface InspectorAgreement {
  readonly devices: number;
  readonly verdict: Agreement;
  readonly isFew: boolean;
  /** How often which two verdicts stand beside each other. */
  readonly both: Readonly<
    Record<'pass' | 'differ, first removes' | 'differ, second removes' | 'remove', number>
  >;
  /** Of the checks that enough pairs answered, in the order in which they occur. */
  readonly checks: readonly { readonly check: string; readonly agreement: Agreement }[];
  /** Checks that some pairs answered, and too few. */
  readonly checksWithFew: number;
}

export const inspectorAgreement = (pairs: readonly JudgedPair[]): InspectorAgreement => {
  const count = (first: Judged['verdict'], second: Judged['verdict']): number =>
    pairs.filter((pair) => pair.first.verdict === first && pair.second.verdict === second).length;
  const keys = [...new Set(pairs.flatMap(({ first }) => [...first.checks.keys()]))];
  const byCheck = keys
    .map((check) => ({ check, said: pairs.flatMap((pair) => saidOf(pair, check)) }))
    .filter(({ said }) => said.length > 0);
  const enough = byCheck.filter(({ said }) => said.length >= fewPairs);
  return {
    devices: new Set(pairs.map(({ benchId }) => benchId)).size,
    verdict: cohensKappa(pairs.map(({ first, second }) => [first.verdict, second.verdict])),
    isFew: pairs.length < fewPairs,
    both: {
      pass: count('pass', 'pass'),
      'differ, first removes': count('remove from service', 'pass'),
      'differ, second removes': count('pass', 'remove from service'),
      remove: count('remove from service', 'remove from service'),
    },
    checks: enough.map(({ check, said }) => ({ check, agreement: cohensKappa(said) })),
    checksWithFew: byCheck.length - enough.length,
  };
};

const saidOf = ({ first, second }: JudgedPair, check: string): readonly SaidPair[] => {
  const one = first.checks.get(check);
  const other = second.checks.get(check);
  return one === undefined || other === undefined ? [] : [[one, other]];
};

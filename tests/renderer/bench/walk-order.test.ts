import { describe, expect, it } from 'vitest';
import {
  checkState,
  firstPlace,
  neighbour,
  placeAfterAnswer,
  stateWithVerdict,
  zoneSegments,
} from '../../../renderer/screens/bench/walk-order.ts';
import type { Reason, Verdict } from '../../../src/domain/verdict.ts';
import { checkNamed, inspectionWith, procedure } from './checks.ts';

const checks = ['housing.body', 'fasteners.all', 'lower-hook.gate'];

const incomplete = (unanswered: string[], lookAgain: string[] = []): Verdict => ({
  kind: 'incomplete',
  unanswered,
  lookAgain,
  reasons: [],
});

describe('the place after an answer', () => {
  it('is the next check that is open, past those that are answered', () => {
    const inspection = inspectionWith(checks, {}, incomplete(['lower-hook.gate']));
    expect(placeAfterAnswer('housing.body', inspection)).toEqual({ at: 'check', key: 'lower-hook.gate' });
  });

  it('is the first open check where none is left behind it', () => {
    const inspection = inspectionWith(checks, {}, incomplete(['housing.body']));
    expect(placeAfterAnswer('lower-hook.gate', inspection)).toEqual({ at: 'check', key: 'housing.body' });
  });

  it('is the same check where it waits for cleaning and a second look', () => {
    const inspection = inspectionWith(checks, {}, incomplete(['lower-hook.gate'], ['housing.body']));
    expect(placeAfterAnswer('housing.body', inspection)).toEqual({ at: 'check', key: 'housing.body' });
  });

  it('is the verdict when nothing is open any more', () => {
    expect(placeAfterAnswer('fasteners.all', inspectionWith(checks, {}, { kind: 'pass' }))).toEqual({
      at: 'verdict',
    });
  });
});

describe('a step through the walk', () => {
  it('goes from the last check to the verdict and back', () => {
    expect(neighbour({ at: 'check', key: 'lower-hook.gate' }, 1, checks)).toEqual({ at: 'verdict' });
    expect(neighbour({ at: 'verdict' }, -1, checks)).toEqual({ at: 'check', key: 'lower-hook.gate' });
  });

  it('stays at the first check', () => {
    expect(neighbour({ at: 'check', key: 'housing.body' }, -1, checks)).toEqual({
      at: 'check',
      key: 'housing.body',
    });
  });
});

describe('a walk that is opened again', () => {
  it('resumes at the first check without a final answer', () => {
    const inspection = {
      ...inspectionWith(checks, {}, incomplete(['fasteners.all'])),
      nextCheck: 'fasteners.all',
    };
    expect(firstPlace(inspection)).toEqual({ at: 'check', key: 'fasteners.all' });
  });

  it('opens at the verdict where every check is answered', () => {
    expect(firstPlace(inspectionWith(checks, {}, { kind: 'pass' }))).toEqual({ at: 'verdict' });
  });
});

describe('the state of a check', () => {
  const stateOf = (key: string, answer: Parameters<typeof inspectionWith>[1][string]) =>
    checkState(checkNamed(key), inspectionWith([key], { [key]: answer }, { kind: 'pass' }));

  it('is open without an answer', () => {
    expect(checkState(checkNamed('housing.body'), inspectionWith(checks, {}, { kind: 'pass' }))).toBe('open');
  });

  it('is a finding for marking that is illegible', () => {
    expect(stateOf('marking.model', { kind: 'marking', state: 'illegible' })).toBe('finding');
  });

  it('is to be looked at again while dirt hides the surface, also beside another defect', () => {
    const answer = { kind: 'defects' as const, findings: [{ defect: 'crack' }, { defect: 'dirt' }] };
    expect(stateOf('housing.body', answer)).toBe('look again');
  });

  it('is a finding for a payout from which a reason follows', () => {
    const key = 'payout.full-length';
    const reason: Reason = {
      key: `${key}.short`,
      zone: 'lifeline',
      effect: 'remove',
      sentence: { en: 'Short.', es: 'Corto.' },
    };
    const answers = { [key]: { kind: 'length' as const, confirmedM: 14.9 as never } };
    const inspection = inspectionWith([key], answers, { kind: 'remove from service', reasons: [reason] });
    expect(stateWithVerdict(checkNamed(key), inspection)).toBe('finding');
  });
});

describe('the zones of the progress bar', () => {
  it('hold every check once, in the order of the walk', () => {
    const keys = procedure.checks.map(({ key }) => key);
    const segments = zoneSegments(procedure.checks, inspectionWith(keys, {}, { kind: 'pass' }));
    expect(segments.flatMap(({ states }) => states.map(({ key }) => key))).toEqual(keys);
  });

  it('gather neighbouring checks of one zone', () => {
    const hooks = procedure.checks.filter(({ zone }) => zone === 'upper-hook' || zone === 'housing');
    const segments = zoneSegments(hooks, inspectionWith([], {}, { kind: 'pass' }));
    expect(segments.map(({ zone }) => zone)).toEqual(['upper-hook', 'housing']);
  });
});

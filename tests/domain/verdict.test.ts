/**
 * The verdict, line by line, against what removes a cable SRL from service. Each line names its mark: a published source,
 * "common practice, no source", or "from memory" of a published source.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/domain/answer.ts';
import { metres, millimetres } from '../../src/domain/brand.ts';
import { markingElements } from '../../src/domain/marking.ts';
import { applicableChecks, type Check, type Zone } from '../../src/domain/procedure.ts';
import { reasonsWhenBrokenOff, verdictOf } from '../../src/domain/verdict.ts';
import { goodAnswer, goodAnswers, procedure, shippedFacts } from '../support/shipped-rules.ts';

/** 50 ft in metres: 1 ft = 0.3048 m exactly (NIST SP 811). */
const fiftyFeet = 15.24;
const facts = { ...shippedFacts, ratedLengthM: fiftyFeet };
const commonPractice = 'common practice, no source';

const verdictWith = (changed: Record<string, Answer>, without: readonly string[] = []) => {
  const answers = { ...goodAnswers(fiftyFeet), ...changed };
  for (const key of without) delete answers[key];
  return verdictOf(procedure, answers, facts, 'm');
};

const defect = (kind: string, positionM?: number): Answer => ({
  kind: 'defects',
  findings: [positionM === undefined ? { defect: kind } : { defect: kind, positionM: metres(positionM) }],
});

const reasonsOf = (verdict: ReturnType<typeof verdictOf>) => (verdict.kind === 'pass' ? [] : verdict.reasons);

describe('the verdict on a device with nothing wrong', () => {
  test('is pass when every check is answered good', () => {
    expect(verdictWith({})).toEqual({ kind: 'pass' });
  });

  test('is pass without the indicator check on a model that has no load indicator', () => {
    const answers = goodAnswers(2);
    delete answers['indicator.load'];
    expect(
      verdictOf(procedure, answers, { ...facts, ratedLengthM: 2, loadIndicatorFitted: false }, 'm'),
    ).toEqual({
      kind: 'pass',
    });
  });
});

/** The markings clause of ANSI/ASSP Z359.14, from memory; and common practice, no source. */
describe('a required element of the marking', () => {
  for (const element of markingElements) {
    for (const state of ['missing', 'illegible'] as const) {
      test(`that is ${state} removes the device, whatever else is fine: ${element} (${commonPractice}; from memory)`, () => {
        const verdict = verdictWith({ [`marking.${element}`]: { kind: 'marking', state } });
        expect(verdict.kind).toBe('remove from service');
        expect(reasonsOf(verdict).map((reason) => [reason.key, reason.zone, reason.effect])).toEqual([
          [`marking.${element}.${state}`, 'marking', 'remove'],
        ]);
        expect(reasonsOf(verdict)[0]?.sentence.en).toContain(state);
      });
    }
  }

  test('has a check of its own for each of the nine elements', () => {
    const elements = procedure.checks.flatMap((check) => (check.kind === 'marking' ? [check.element] : []));
    expect(elements).toEqual([...markingElements]);
  });
});

interface Line {
  readonly check: string;
  readonly kind: string;
  readonly zone: Zone;
  readonly effect: 'remove' | 'refer-to-manufacturer';
  readonly at?: number;
  readonly mark: string;
}

const hook = (zone: 'upper-hook' | 'lower-hook'): Line[] => [
  { check: `${zone}.gate`, kind: 'does-not-open', zone, effect: 'remove', mark: commonPractice },
  { check: `${zone}.gate`, kind: 'does-not-close', zone, effect: 'remove', mark: commonPractice },
  { check: `${zone}.gate`, kind: 'does-not-lock', zone, effect: 'remove', mark: commonPractice },
  { check: `${zone}.swivel`, kind: 'does-not-turn', zone, effect: 'remove', mark: commonPractice },
  { check: `${zone}.body`, kind: 'crack', zone, effect: 'remove', mark: commonPractice },
  { check: `${zone}.body`, kind: 'distortion', zone, effect: 'remove', mark: commonPractice },
  {
    check: `${zone}.body`,
    kind: 'corrosion',
    zone,
    effect: 'refer-to-manufacturer',
    mark: `${commonPractice}: even where the hook works`,
  },
  { check: `${zone}.body`, kind: 'heat', zone, effect: 'remove', mark: commonPractice },
  { check: `${zone}.marks`, kind: 'illegible', zone, effect: 'remove', mark: commonPractice },
];

const lifeline = (check: string, kinds: readonly string[]): Line[] =>
  kinds.map((kind) => ({ check, kind, zone: 'lifeline', effect: 'remove', at: 3.2, mark: commonPractice }));

const lines: readonly Line[] = [
  ...hook('upper-hook'),
  ...hook('lower-hook'),
  {
    check: 'housing.body',
    kind: 'crack',
    zone: 'housing',
    effect: 'refer-to-manufacturer',
    mark: commonPractice,
  },
  {
    check: 'housing.body',
    kind: 'break',
    zone: 'housing',
    effect: 'refer-to-manufacturer',
    mark: commonPractice,
  },
  {
    check: 'housing.body',
    kind: 'deformation',
    zone: 'housing',
    effect: 'refer-to-manufacturer',
    mark: commonPractice,
  },
  { check: 'housing.body', kind: 'cover-missing', zone: 'housing', effect: 'remove', mark: commonPractice },
  {
    check: 'housing.body',
    kind: 'corrosion',
    zone: 'housing',
    effect: 'refer-to-manufacturer',
    mark: commonPractice,
  },
  { check: 'fasteners.all', kind: 'missing', zone: 'fasteners', effect: 'remove', mark: commonPractice },
  { check: 'fasteners.all', kind: 'loose', zone: 'fasteners', effect: 'remove', mark: commonPractice },
  {
    check: 'fasteners.all',
    kind: 'tampering',
    zone: 'fasteners',
    effect: 'refer-to-manufacturer',
    mark: commonPractice,
  },
  {
    check: 'termination.thimble',
    kind: 'out-of-place',
    zone: 'termination',
    effect: 'remove',
    mark: commonPractice,
  },
  {
    check: 'termination.thimble',
    kind: 'distorted',
    zone: 'termination',
    effect: 'remove',
    mark: commonPractice,
  },
  {
    check: 'termination.sleeves',
    kind: 'crack',
    zone: 'termination',
    effect: 'remove',
    mark: commonPractice,
  },
  { check: 'termination.sleeves', kind: 'slip', zone: 'termination', effect: 'remove', mark: commonPractice },
  {
    check: 'termination.sleeves',
    kind: 'bad-crimp',
    zone: 'termination',
    effect: 'remove',
    mark: commonPractice,
  },
  ...lifeline('lifeline.wires', ['broken-wires']),
  ...lifeline('lifeline.shape', ['crushing', 'kink', 'bend', 'twist', 'birdcage']),
  ...lifeline('lifeline.surface', [
    'corrosion',
    'heat',
    'arc-burn',
    'weld-spatter',
    'abrasion',
    'foreign-matter-stays',
  ]),
  { check: 'payout.runs-free', kind: 'binds', zone: 'lifeline', effect: 'remove', mark: commonPractice },
  { check: 'retraction.full', kind: 'not-full', zone: 'retraction', effect: 'remove', mark: commonPractice },
  ...['brake.near-housing', 'brake.midway', 'brake.near-full-payout'].flatMap((check): Line[] =>
    ['slow', 'does-not-engage', 'slips', 'does-not-release'].map((kind) => ({
      check,
      kind,
      zone: 'brake',
      effect: 'remove',
      mark: commonPractice,
    })),
  ),
  {
    check: 'indicator.load',
    kind: 'deployed',
    zone: 'indicator',
    effect: 'refer-to-manufacturer',
    mark: `${commonPractice}: treated as a fall`,
  },
  {
    check: 'history.fall-or-impact',
    kind: 'fall',
    zone: 'history',
    effect: 'refer-to-manufacturer',
    mark: '29 CFR 1910.140(c)(17), 1926.502(d)(19)',
  },
  {
    check: 'history.fall-or-impact',
    kind: 'impact',
    zone: 'history',
    effect: 'refer-to-manufacturer',
    mark: '29 CFR 1910.140(c)(17), 1926.502(d)(19)',
  },
  {
    check: 'history.repair-or-modification',
    kind: 'field-repair',
    zone: 'history',
    effect: 'refer-to-manufacturer',
    mark: commonPractice,
  },
  {
    check: 'history.repair-or-modification',
    kind: 'modification',
    zone: 'history',
    effect: 'refer-to-manufacturer',
    mark: commonPractice,
  },
  {
    check: 'overall.doubt',
    kind: 'questionable',
    zone: 'whole-device',
    effect: 'remove',
    mark: `${commonPractice}: any doubt counts as a finding`,
  },
];

describe('a defect removes the device', () => {
  for (const { check, kind, zone, effect, at, mark } of lines) {
    test(`${check}: ${kind} → ${effect} (${mark})`, () => {
      const verdict = verdictWith({ [check]: defect(kind, at) });
      expect(verdict.kind).toBe('remove from service');
      expect(reasonsOf(verdict)).toHaveLength(1);
      expect(reasonsOf(verdict)[0]).toMatchObject({ key: `${check}.${kind}`, zone, effect });
    });
  }

  test('and the list above names every such defect of the procedure', () => {
    const listed = new Set(lines.map(({ check, kind }) => `${check}.${kind}`));
    const extra = procedure.checks.flatMap((check) =>
      check.kind === 'condition'
        ? check.defects
            .filter(
              (each) => each.effect !== 'clean-and-look-again' && !listed.has(`${check.key}.${each.key}`),
            )
            .map((each) => `${check.key}.${each.key}`)
        : [],
    );
    expect(extra.sort()).toEqual([
      'housing.body.dirt-stays',
      'identity.matches-record.differs',
      'indicator.load.unclear',
      'lower-hook.body.dirt-stays',
      'lower-hook.marks.missing',
      'lower-hook.swivel.worn',
      'retraction.full.binds',
      'upper-hook.body.dirt-stays',
      'upper-hook.marks.missing',
      'upper-hook.swivel.worn',
    ]);
  });

  test(`a crushed strand removes it without any broken wire, with its place on the lifeline (${commonPractice})`, () => {
    const verdict = verdictWith({ 'lifeline.shape': defect('crushing', 3.2) });
    expect(reasonsOf(verdict)[0]?.sentence).toEqual({
      en: 'Lifeline crushed at 3.2 m from the hook.',
      es: 'Cable aplastado a 3,2 m del gancho.',
    });
  });
});

describe('full payout', () => {
  const payout = (confirmedM: number): Answer => ({ kind: 'length', confirmedM: metres(confirmedM) });

  test(`of 14.9 m out of 15.24 m (50 ft) is not a pass (${commonPractice})`, () => {
    const verdict = verdictWith({ 'payout.full-length': payout(14.9) });
    expect(verdict.kind).toBe('remove from service');
    expect(reasonsOf(verdict)[0]?.sentence.en).toBe('Does not pay out fully: 14.9 m of 15.24 m came out.');
  });

  test('of a millimetre less than rated is not a pass, of exactly the rated length it is', () => {
    expect(verdictWith({ 'payout.full-length': payout(15.239) }).kind).toBe('remove from service');
    expect(verdictWith({ 'payout.full-length': payout(15.24) }).kind).toBe('pass');
    expect(verdictWith({ 'payout.full-length': payout(50 * 0.3048) }).kind).toBe('pass');
  });

  test('is said in feet where the station works in feet', () => {
    const answers = { ...goodAnswers(fiftyFeet), 'payout.full-length': payout(14.9) };
    const verdict = verdictOf(procedure, answers, facts, 'ft');
    expect(reasonsOf(verdict)[0]?.sentence.en).toBe('Does not pay out fully: 48.88 ft of 50 ft came out.');
  });
});

describe('an inspection without every answer', () => {
  test('is incomplete for each check that is left out', () => {
    for (const check of applicableChecks(procedure, facts)) {
      expect(verdictWith({}, [check.key])).toEqual({
        kind: 'incomplete',
        unanswered: [check.key],
        lookAgain: [],
        reasons: [],
      });
    }
  });

  test('keeps the reasons that are on the table already', () => {
    const verdict = verdictWith({ 'housing.body': defect('crack') }, ['brake.midway']);
    expect(verdict.kind).toBe('incomplete');
    expect(reasonsOf(verdict).map((reason) => reason.key)).toEqual(['housing.body.crack']);
  });

  test('waits for a second look after cleaning, and is neither pass nor removal until then', () => {
    expect(verdictWith({ 'housing.body': defect('dirt') })).toEqual({
      kind: 'incomplete',
      unanswered: [],
      lookAgain: ['housing.body'],
      reasons: [],
    });
  });

  test('that is broken off keeps the device out of service for findings and for second looks that never came', () => {
    const answers = {
      ...goodAnswers(fiftyFeet),
      'housing.body': defect('dirt'),
      'lifeline.wires': defect('broken-wires', 1),
    };
    expect(reasonsWhenBrokenOff(procedure, answers, facts, 'm').map((reason) => reason.key)).toEqual([
      'housing.body.dirt',
      'lifeline.wires.broken-wires',
    ]);
    expect(reasonsWhenBrokenOff(procedure, goodAnswers(fiftyFeet), facts, 'm')).toEqual([]);
  });
});

const badAnswer = (check: Check): Answer => {
  switch (check.kind) {
    case 'marking':
      return { kind: 'marking', state: 'illegible' };
    case 'payout-length':
      return { kind: 'length', confirmedM: metres(1) };
    case 'lifeline-diameter':
      return {
        kind: 'diameters',
        readings: [2, 7, 14].map((place) => ({ positionM: metres(place), diameterMm: millimetres(4.2) })),
      };
    case 'condition':
      return defect(check.defects[0]!.key, check.positioned ? 2 : undefined);
  }
};

describe('all reasons are kept', () => {
  test('in the order of the procedure, with the positions along the lifeline in the order in which they were placed', () => {
    const verdict = verdictWith({
      'brake.midway': defect('slow'),
      'marking.dateOfManufacture': { kind: 'marking', state: 'illegible' },
      'lifeline.shape': {
        kind: 'defects',
        findings: [
          { defect: 'kink', positionM: metres(9) },
          { defect: 'crushing', positionM: metres(3.2) },
        ],
      },
    });
    expect(reasonsOf(verdict).map((reason) => reason.key)).toEqual([
      'marking.dateOfManufacture.illegible',
      'lifeline.shape.kink',
      'lifeline.shape.crushing',
      'brake.midway.slow',
    ]);
  });

  test('however many findings there are: one reason for each, never a pass (every subset of checks)', () => {
    const checks = applicableChecks(procedure, facts);
    fc.assert(
      fc.property(fc.subarray([...checks], { minLength: 1 }), (faulty) => {
        const changed = Object.fromEntries(faulty.map((check) => [check.key, badAnswer(check)]));
        const verdict = verdictWith(changed);
        expect(verdict.kind).toBe('remove from service');
        expect(reasonsOf(verdict).map((reason) => reason.key.split('.').slice(0, 2).join('.'))).toEqual(
          faulty.map((check) => check.key),
        );
      }),
    );
  });

  test('a good answer to each check alone never makes a pass', () => {
    for (const check of applicableChecks(procedure, facts)) {
      const verdict = verdictOf(procedure, { [check.key]: goodAnswer(check, fiftyFeet) }, facts, 'm');
      expect(verdict.kind).toBe('incomplete');
    }
  });
});

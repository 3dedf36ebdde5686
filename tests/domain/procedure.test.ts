/** The procedure that is shipped, against how a cable SRL is inspected (common practice, no source). */
import { describe, expect, test } from 'vitest';
import { applicableChecks, procedureSchema } from '../../src/domain/procedure.ts';
import { procedure, program } from '../support/shipped-rules.ts';

const keys = procedure.checks.map(({ key }) => key);
const firstOf = (zone: string) => procedure.checks.findIndex((check) => check.zone === zone);

describe('the procedure', () => {
  test('goes from identification over the device from top to bottom to payout, retraction and brake', () => {
    const order = [
      'marking',
      'history',
      'upper-hook',
      'housing',
      'fasteners',
      'lower-hook',
      'termination',
      'lifeline',
      'retraction',
      'brake',
    ];
    const places = order.map(firstOf);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
  });

  test('tries the brake near the housing, midway and near full payout', () => {
    expect(keys.filter((key) => key.startsWith('brake.'))).toEqual([
      'brake.near-housing',
      'brake.midway',
      'brake.near-full-payout',
    ]);
  });

  test('asks for the length that came out before the lifeline is felt over all of it', () => {
    expect(keys.indexOf('payout.full-length')).toBeLessThan(keys.indexOf('lifeline.wires'));
  });

  test('takes the place along the lifeline of every finding on it, and of nothing else', () => {
    const positioned = procedure.checks.flatMap((check) =>
      check.kind === 'condition' && check.positioned ? [check] : [],
    );
    expect(positioned.map(({ key }) => key)).toEqual([
      'lifeline.wires',
      'lifeline.shape',
      'lifeline.surface',
    ]);
    for (const { defects } of positioned)
      for (const { reason } of defects)
        expect([reason.en, reason.es].every((text) => text.includes('{position}'))).toBe(true);
    const others = procedure.checks.flatMap((check) =>
      check.kind === 'condition' && !check.positioned ? check.defects : [],
    );
    for (const { reason } of others) expect(reason.en + reason.es).not.toContain('{');
  });

  test('warns of broken wires wherever a hand touches the lifeline or its termination', () => {
    for (const check of procedure.checks) {
      if (check.key.startsWith('lifeline.') || check.key === 'termination.thimble')
        expect(check.caution?.en).toMatch(/gloves/i);
    }
    expect(procedure.cautions.map(({ en }) => en).join(' ')).toMatch(
      /manufacturer’s instructions and local codes come first/,
    );
  });

  test('asks for the load indicator only where the model has one', () => {
    const without = applicableChecks(procedure, {
      ratedLengthM: 2,
      loadIndicatorFitted: false,
      lifelineDiameterMm: 4.8,
    }).map(({ key }) => key);
    expect(keys.filter((key) => !without.includes(key))).toEqual(['indicator.load']);
  });

  test('names where each check comes from', () => {
    for (const { source } of procedure.checks) expect(source.citation.length).toBeGreaterThan(10);
  });

  test('is not accepted with the same key twice', () => {
    const twice = { ...procedure, checks: [...procedure.checks, procedure.checks[0]] };
    expect(procedureSchema.safeParse(twice).success).toBe(false);
  });
});

describe('the program', () => {
  test('asks for evidence and a new inspection before a removed device returns', () => {
    expect(program.beforeReturn.map(({ en }) => en)).toEqual([
      'The manufacturer’s written evidence for every reason above',
      'A new documented inspection by a competent person',
    ]);
  });
});

/** Who is this: nothing guessed acts without two people who looked at the device. */
import { describe, expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { metres } from '../../src/domain/brand.ts';
import type { Observation } from '../../src/domain/identity/observation.ts';
import type { TestStation } from '../support/station-fixture.ts';
import { demo, demoStation } from '../support/station-fixture.ts';

/** `Q25A30037` of the invented depot, with two characters that cannot be read. */
const observation: Observation = { serial: 'Q25A3?03?', lengthM: metres(10), housingColour: 'orange' };

const opened = async (station: TestStation, seen: Observation = observation) => {
  const { identityCase } = await station.expectOutput('identity.open', { observation: seen });
  const { identity } = await station.expectOutput('identity.show', { identityCase });
  return { identityCase, candidate: identity.ranking.candidates[0]!.benchId };
};

const proposed = async (station: TestStation) => {
  const open = await opened(station);
  await station.expectOutput('identity.propose', { ...open, pin: demo.pin });
  return open;
};

const signIn = (station: TestStation, badge: string) => station.expectOutput('session.sign-in', { badge });
const deviceOf = async (station: TestStation, benchId: BenchId) =>
  (await station.expectOutput('device.show', { benchId })).device;
const confirmation = (open: { identityCase: number; candidate: BenchId }) => ({
  ...open,
  lookedAtDevice: true as const,
  pin: demo.pin,
});

describe('a case of "who is this?"', () => {
  test('names the device that the facts fit, with the weight of each, and none of these beside', async () => {
    const station = await demoStation();
    const { identityCase } = await opened(station);
    const { identity } = await station.expectOutput('identity.show', { identityCase });
    const [first] = identity.ranking.candidates;
    expect(first?.device.serial).toBe('Q25A30037');
    expect(first?.evidence.map(({ field }) => field)).toEqual(['lengthM', 'housingColour', 'serial']);
    expect(first!.probability).toBeGreaterThan(identity.ranking.noneProbability);
    expect(identity).toMatchObject({ openedBy: 'Teo Arandal', state: 'open' });
    expect(identity.keptAt).toBe('Quarantine cage, under lock');
  });

  test('ends, by proposal and a second person’s PIN, with the device out of service and its identity presumed', async () => {
    const station = await demoStation();
    const open = await proposed(station);
    const before = await deviceOf(station, open.candidate);
    await signIn(station, demo.attendant);
    await station.expectOutput('identity.confirm', confirmation(open));
    const device = await deviceOf(station, open.candidate);
    expect(device.standing).toBe('quarantined');
    expect(device.presumedIdentity).toMatchObject({
      identityCase: open.identityCase,
      proposedBy: 'Teo Arandal',
      confirmedBy: 'Bram Kestrin',
    });
    expect(device.reasons.at(-1)?.sentence.en).toContain('unreadable');
    expect(device.currentTag).toMatchObject({
      kind: 'quarantine',
      tagNumber: (before.currentTag?.tagNumber ?? 0) + 1,
    });
    const { identity } = await station.expectOutput('identity.show', open);
    expect(identity).toMatchObject({ state: 'taken', closed: { by: 'Bram Kestrin' } });
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
    await signIn(station, demo.administrator);
    await station.expectOutput('ledger.rebuild', {});
    expect((await station.expectOutput('identity.show', open)).identity).toEqual(identity);
  });

  test('proposing does not touch the device that is proposed', async () => {
    const station = await demoStation();
    const open = await opened(station);
    const before = await deviceOf(station, open.candidate);
    await station.expectOutput('identity.propose', { ...open, pin: demo.pin });
    expect(await deviceOf(station, open.candidate)).toEqual(before);
  });

  test('says of a candidate that it was inspected or scanned since, and how the register has it', async () => {
    const station = await demoStation();
    const { candidate, identityCase } = await opened(station);
    const shown = async () =>
      (await station.expectOutput('identity.show', { identityCase })).identity.ranking.candidates[0]!;
    expect(await shown()).toMatchObject({ device: { standing: 'in service' } });
    expect((await shown()).scannedSince).toBeUndefined();
    await station.expectOutput('device.remove', { benchId: candidate, ground: 'fall' });
    const { symbols } = await station.expectOutput('tag.issue', { benchId: candidate, kind: 'quarantine' });
    const text = symbols.find(({ symbology }) => /qr/i.test(symbology))!.text;
    await station.expectOutput('tag.prove', { text });
    expect(await shown()).toMatchObject({
      device: { standing: 'quarantined' },
      scannedSince: '2026-03-10',
    });
  });

  test('is open again where the second person disagrees, and another may be proposed', async () => {
    const station = await demoStation();
    const open = await proposed(station);
    await signIn(station, demo.attendant);
    await station.expectOutput('identity.disagree', {
      identityCase: open.identityCase,
      why: 'The housing is newer.',
      pin: demo.pin,
    });
    const { identity } = await station.expectOutput('identity.show', open);
    expect(identity.state).toBe('open');
    expect(identity.disagreements).toMatchObject([{ by: 'Bram Kestrin', why: 'The housing is newer.' }]);
    expect((await deviceOf(station, open.candidate)).standing).toBe('in service');
    await signIn(station, demo.inspector);
    const other = identity.ranking.candidates[1]!.benchId;
    await station.expectOutput('identity.propose', { ...open, candidate: other, pin: demo.pin });
  });

  test('closes with none of these, without touching any device, and is told to the next ranking', async () => {
    const station = await demoStation();
    const { identityCase, candidate } = await opened(station, { hookType: 'carabiner' });
    const before = await station.expectOutput('device.list', {});
    const first = await station.expectOutput('identity.search', { observation });
    await station.expectOutput('identity.leave-unidentified', { identityCase, keptAt: 'Shelf 4, cage' });
    expect(await station.expectOutput('device.list', {})).toEqual(before);
    expect((await deviceOf(station, candidate)).reasons).toEqual([]);
    const { identity } = await station.expectOutput('identity.show', { identityCase });
    expect(identity).toMatchObject({ state: 'unidentified', keptAt: 'Shelf 4, cage' });
    expect((await station.expectOutput('identity.list', {})).cases).toEqual([]);
    const next = await station.expectOutput('identity.search', { observation });
    expect(next.noneProbability).toBeGreaterThan(first.noneProbability);
  });
});

describe('nothing guessed acts', () => {
  test('by a badge alone: a proposal wants the PIN of who proposes', async () => {
    const station = await demoStation();
    const open = await opened(station);
    expect(await station.expectError('identity.propose', { ...open, pin: '000000' })).toMatchObject({
      code: 'pin-wrong',
    });
    const { identity } = await station.expectOutput('identity.show', { identityCase: open.identityCase });
    expect(identity.state).toBe('open');
    expect(identity.proposal).toBeUndefined();
  });

  test.each([
    ['identity.open', { observation }],
    ['identity.propose', { identityCase: 1, candidate: 'GJQ81T5WX2' as BenchId, pin: demo.pin }],
    ['identity.confirm', confirmation({ identityCase: 1, candidate: 'GJQ81T5WX2' as BenchId })],
    ['identity.disagree', { identityCase: 1, pin: demo.pin }],
    ['identity.leave-unidentified', { identityCase: 1 }],
    ['identity.search', { observation }],
    ['identity.show', { identityCase: 1 }],
    ['device.relabel', { benchId: 'GJQ81T5WX2' as BenchId, marking: [], reprintBecause: 'lost' as const }],
  ] as const)('%s refuses where nobody is signed in', async (name, input) => {
    const station = await demoStation();
    await station.expectOutput('session.sign-out', {});
    expect((await station.expectError(name, input as never)).code).toBe('sign-in-needed');
  });

  test.each([
    ['an attendant', demo.attendant],
    ['an inspector whose training has run out', demo.expiredInspector],
    ['a user', demo.user],
  ])('%s opens and proposes nothing', async (_who, badge) => {
    const station = await demoStation();
    const open = await opened(station);
    await signIn(station, badge);
    for (const error of [
      await station.expectError('identity.open', { observation }),
      await station.expectError('identity.propose', { ...open, pin: demo.pin }),
      await station.expectError('identity.leave-unidentified', open),
    ]) {
      expect(error.code).toBe('identity-competent-person-needed');
    }
  });

  test('the person who proposed does not confirm, and neither does one person with two sessions', async () => {
    const station = await demoStation();
    const open = await proposed(station);
    const other = station.callAs('another window');
    await other('session.sign-in', { badge: demo.inspector });
    for (const result of [
      await station.call('identity.confirm', confirmation(open)),
      await other('identity.confirm', confirmation(open)),
      await other('identity.disagree', { identityCase: open.identityCase, pin: demo.pin }),
    ]) {
      expect(result).toMatchObject({ ok: false, error: { code: 'identity-second-person' } });
    }
    expect((await deviceOf(station, open.candidate)).standing).toBe('in service');
  });

  test('a badge alone confirms nothing: the PIN must be right', async () => {
    const station = await demoStation();
    const open = await proposed(station);
    await signIn(station, demo.attendant);
    for (const pin of ['', '999111']) {
      const error = await station.expectError('identity.confirm', { ...confirmation(open), pin });
      expect(error.code).toBe('pin-wrong');
    }
    expect(
      (
        await station.expectError('identity.confirm', {
          ...confirmation(open),
          lookedAtDevice: false as never,
        })
      ).code,
    ).toBe('input-invalid');
    expect((await deviceOf(station, open.candidate)).presumedIdentity).toBeUndefined();
  });

  test.each([
    ['a user', demo.user],
    ['an inspector whose training has run out', demo.expiredInspector],
    ['an administrator', demo.administrator],
  ])('%s is no second person', async (_who, badge) => {
    const station = await demoStation();
    const open = await proposed(station);
    await signIn(station, badge);
    const error = await station.expectError('identity.confirm', confirmation(open));
    expect(error.code).toBe('identity-second-not-entitled');
  });

  test('a device that is no candidate is not proposed, and one that was not proposed is not confirmed', async () => {
    const station = await demoStation();
    const open = await opened(station);
    const stranger = 'MM68GV91MM' as BenchId;
    expect(
      (await station.expectError('identity.propose', { ...open, candidate: stranger, pin: demo.pin })).code,
    ).toBe('identity-not-a-candidate');
    await signIn(station, demo.attendant);
    expect((await station.expectError('identity.confirm', confirmation(open))).code).toBe(
      'identity-not-proposed',
    );
    await signIn(station, demo.inspector);
    await station.expectOutput('identity.propose', { ...open, pin: demo.pin });
    await signIn(station, demo.attendant);
    const error = await station.expectError('identity.confirm', {
      ...confirmation(open),
      candidate: stranger,
    });
    expect(error.code).toBe('identity-not-a-candidate');
  });

  test('a closed case takes nothing more', async () => {
    const station = await demoStation();
    const open = await proposed(station);
    await signIn(station, demo.attendant);
    await station.expectOutput('identity.confirm', confirmation(open));
    const again = await station.expectError('identity.confirm', confirmation(open));
    expect(again.code).toBe('identity-case-not-open');
    await signIn(station, demo.inspector);
    for (const error of [
      await station.expectError('identity.propose', { ...open, pin: demo.pin }),
      await station.expectError('identity.leave-unidentified', open),
    ]) {
      expect(error.code).toBe('identity-case-not-open');
    }
  });

  test('a case that there is not, and one with nothing seen, are refused', async () => {
    const station = await demoStation();
    expect((await station.expectError('identity.show', { identityCase: 7 })).code).toBe(
      'identity-case-unknown',
    );
    expect((await station.expectError('identity.open', { observation: {} })).code).toBe(
      'identity-nothing-seen',
    );
  });
});

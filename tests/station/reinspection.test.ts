/** Blind second inspections through the contract: the draw, what is hidden meanwhile, and what the signature does. */
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/domain/answer.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import type { InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import { demo, type TestStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { stationWithDevice } from './sample-device.ts';

const crack: Record<string, Answer> = {
  'housing.body': { kind: 'defects', findings: [{ defect: 'crack' }] },
};

/** Wren Castellan, a competent person too, at another window. */
const secondInspector = async ({ callAs }: TestStation) => {
  const call = callAs('second');
  const expectOutput = async <Name extends OperationName>(
    name: Name,
    input: InputOf<Name>,
  ): Promise<OutputOf<Name>> => {
    const result = await call(name, input);
    if (!result.ok) throw new Error(`${name} was refused: ${result.error.sentence}`);
    return result.output;
  };
  const code = async <Name extends OperationName>(name: Name, input: InputOf<Name>) => {
    const result = await call(name, input);
    return result.ok ? 'done' : result.error.code;
  };
  await expectOutput('session.sign-in', { badge: demo.regularUser });
  return { expectOutput, code };
};

/** A device that Teo Arandal inspected, drawn for a second inspection, however many others are drawn before it. */
const drawnDevice = async (findings: Record<string, Answer> = {}) => {
  const station = await stationWithDevice();
  const walked = await walk(station, station.benchId, findings);
  await station.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
  for (let isDrawn = false; !isDrawn; )
    isDrawn = (await station.expectOutput('reinspection.draw', { count: 50 })).drawn.includes(
      station.benchId,
    );
  return { ...station, first: walked.inspection, second: await secondInspector(station) };
};

const walkBlind = async (
  { expectOutput }: Pick<TestStation, 'expectOutput'>,
  benchId: BenchId,
  findings: Record<string, Answer> = {},
) => {
  let { inspection } = await expectOutput('reinspection.begin', { benchId, isUnaware: true });
  for (const key of inspection.checks) {
    const check = procedure.checks.find((each) => each.key === key)!;
    const answer = findings[key] ?? goodAnswer(check, inspection.device.ratedLengthM);
    ({ inspection } = await expectOutput('inspection.answer', {
      inspection: inspection.inspection,
      check: key,
      answer,
    }));
  }
  return inspection;
};

describe('what the first inspection found', () => {
  test('is hidden from whoever may make the second, wherever the station would tell it', async () => {
    const { benchId, first, second, card } = await drawnDevice(crack);
    const shown = (await second.expectOutput('device.show', { benchId })).device;
    expect(shown).toMatchObject({ isBlind: true, reasons: [], inspections: [], standing: 'quarantined' });
    expect(JSON.stringify(shown)).not.toContain('housing.body');
    for (const [name, input] of [
      ['inspection.show', { inspection: first }],
      ['inspection.pictures', { inspection: first }],
      ['held.show', { benchId }],
    ] as const)
      expect([name, await second.code(name, input)]).toEqual([name, 'reinspection-blind']);
    const { held } = await second.expectOutput('held.list', { limit: 500 });
    expect(held.find(({ device }) => device.benchId === benchId)?.reasons).toEqual([]);
    const { inspections } = await second.expectOutput('inspection.list', { benchId });
    expect(inspections).toEqual([]);
    const seen = await second.expectOutput('lifeline.show', { benchId });
    expect(seen.inspections).toEqual([]);
    const amendable = await second.expectOutput('record.amendable', { benchId });
    expect(amendable.inspections).toEqual([]);
    expect(await reported(second, { kind: 'inspection', inspection: first })).toBe('reinspection-blind');
    expect(await reported(second, { kind: 'device', benchId })).toBe('reinspection-blind');
    // The first inspector sees all of it.
    expect(await card()).toMatchObject({ isBlind: false, reasons: [{ key: 'housing.body.crack' }] });
  });

  test('is shown to whoever asks for it, and they cannot make the second inspection then', async () => {
    const { benchId, second } = await drawnDevice(crack);
    await second.expectOutput('reinspection.see', { benchId });
    expect((await second.expectOutput('device.show', { benchId })).device).toMatchObject({
      isBlind: false,
      reasons: [{ key: 'housing.body.crack' }],
    });
    expect(await second.code('reinspection.begin', { benchId, isUnaware: true })).toBe(
      'reinspection-known-to',
    );
  });

  test('is shown with the second, once that is signed', async () => {
    const { benchId, first, second, expectOutput } = await drawnDevice(crack);
    const walked = await walkBlind(second, benchId);
    expect(walked.reinspection?.first).toBeUndefined();
    expect(await second.code('inspection.show', { inspection: first })).toBe('reinspection-blind');
    const { inspection } = await second.expectOutput('inspection.sign', {
      inspection: walked.inspection,
      pin: demo.pin,
    });
    expect(inspection.reinspection?.first).toMatchObject({
      inspection: first,
      by: 'Teo Arandal',
      verdict: { kind: 'remove from service' },
    });
    const { signed, pairs } = await expectOutput('reinspection.list', {});
    expect(pairs).toBe(1);
    expect(signed).toMatchObject([
      {
        benchId,
        first: { inspection: first, verdict: 'remove from service' },
        second: { by: 'Wren Castellan', verdict: 'pass' },
      },
    ]);
  });
});

const reported = async (
  { expectOutput }: Awaited<ReturnType<typeof secondInspector>>,
  of: InputOf<'report.make'>['of'],
): Promise<string> => {
  const { job } = await expectOutput('report.make', { of, format: 'pdf', language: 'en', paper: 'a4' });
  for (;;) {
    const status = await expectOutput('report.status', { job });
    if (status.state !== 'working') return status.state === 'refused' ? status.code : status.state;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

describe('the second inspection', () => {
  test('that passes leaves a removed device out of service, with its tag and without a check-out', async () => {
    const { benchId, second, card, expectError } = await drawnDevice(crack);
    const before = await card();
    const walked = await walkBlind(second, benchId);
    await second.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
    const after = await card();
    expect(after.standing).toBe('quarantined');
    expect(after.currentTag).toEqual(before.currentTag);
    expect(after.reasons).toEqual(before.reasons);
    expect(await expectError('inspection.start', { benchId })).toMatchObject({
      code: 'device-out-of-service',
    });
    expect(await expectError('tag.preview', { benchId, kind: 'status' })).toMatchObject({
      code: 'tag-kind-refused',
    });
  });

  test('that finds something removes a device in service, and the record verifies after a restart', async () => {
    const { benchId, second, card, reopen } = await drawnDevice();
    const walked = await walkBlind(second, benchId, crack);
    await second.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
    expect(await card()).toMatchObject({ standing: 'quarantined', currentTag: { kind: 'quarantine' } });
    const again = await reopen();
    await again.expectOutput('session.sign-in', { badge: demo.inspector });
    expect(await again.expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
  });

  test('is not made by the first inspector, nor without the word that the result is not known', async () => {
    const { benchId, expectError } = await drawnDevice();
    expect(await expectError('reinspection.begin', { benchId, isUnaware: true })).toMatchObject({
      code: 'reinspection-known-to',
      sentence:
        'Teo Arandal knows what the first inspection found. Another competent person must make the blind second one.',
    });
    expect(
      await expectError('reinspection.begin', {
        benchId,
        isUnaware: false,
      } as unknown as InputOf<'reinspection.begin'>),
    ).toMatchObject({ code: 'input-invalid' });
  });
});

test('a program says within how many days, and the draw keeps to it', async () => {
  const station = await stationWithDevice();
  const walked = await walk(station, station.benchId);
  await station.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
  const usual = await station.expectOutput('reinspection.list', {});
  expect(usual).toMatchObject({ withinDays: 14, isDaysByProgram: false });
  expect(usual.drawable).toBeGreaterThan(0);
  const admin = station.callAs('office');
  await admin('session.sign-in', { badge: demo.administrator });
  const shown = await admin('program.show', {});
  if (!shown.ok) throw new Error(shown.error.sentence);
  const { version: _version, ...settings } = shown.output.program;
  const adopted = await admin('program.adopt', {
    program: { ...settings, reinspectionDays: 3 },
    effectiveFrom: '2026-03-10',
    pin: demo.pin,
  } as InputOf<'program.adopt'>);
  expect(adopted.ok).toBe(true);
  station.clock.advance({ days: 4 });
  expect(await station.expectOutput('reinspection.list', {})).toMatchObject({
    withinDays: 3,
    isDaysByProgram: true,
    drawable: 0,
  });
  expect(await station.expectError('reinspection.draw', { count: 1 })).toMatchObject({
    code: 'reinspection-none-to-draw',
  });
});

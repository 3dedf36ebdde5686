/** What the inspections of a device saw along its lifeline, through the contract. */
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/domain/answer.ts';
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { metres, millimetres } from '../../src/domain/brand.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { sampleDevice } from './sample-device.ts';

/** The 30 m model of the invented depot, nominal 5 mm, whose model sheet gives a minimum of 4.6 mm. */
const deviceWithMinimum = async () => {
  const station = await demoStation();
  const { benchId } = await station.expectOutput('device.register', {
    ...sampleDevice('TMR-TEST-1'),
    modelSheetId: 'M005',
  });
  return { ...station, benchId };
};

const readings = (...diameters: readonly number[]): Answer => ({
  kind: 'diameters',
  readings: diameters.map((diameterMm, index) => ({
    positionM: metres([2, 15, 28][index]!),
    diameterMm: millimetres(diameterMm),
  })),
});

describe('the lifeline of a device', () => {
  test('has its readings and findings by place, each inspection apart, and a trend from the third one on', async () => {
    const { expectOutput, benchId, clock, ...station } = await deviceWithMinimum();
    for (const least of [4.95, 4.9, 4.8]) {
      const { inspection } = await walk({ expectOutput, ...station }, benchId, {
        'lifeline.diameter': readings(5, least, 4.98),
      });
      await expectOutput('inspection.sign', { inspection, pin: demo.pin });
      const { trend } = await expectOutput('lifeline.show', { benchId });
      expect(trend.kind).toBe(least === 4.8 ? 'trend' : 'too few');
      clock.advance({ days: 30 });
    }
    const shown = await expectOutput('lifeline.show', { benchId });
    expect(shown).toMatchObject({ ratedLengthM: 30, lifelineDiameterMm: 5, lifelineMinimumDiameterMm: 4.6 });
    expect(shown.inspections.map((each) => each.readings.map(({ diameterMm }) => diameterMm))).toEqual([
      [5, 4.8, 4.98],
      [5, 4.9, 4.98],
      [5, 4.95, 4.98],
    ]);
    expect(shown.trend.points.map(({ diameterMm }) => diameterMm)).toEqual([4.95, 4.9, 4.8]);
  });

  test('takes a thin one out of service, whatever else is good, and shows where', async () => {
    const { expectOutput, benchId, ...station } = await deviceWithMinimum();
    const { inspection } = await walk({ expectOutput, ...station }, benchId, {
      'lifeline.diameter': readings(5, 4.59, 4.98),
    });
    const signed = await expectOutput('inspection.sign', { inspection, pin: demo.pin });
    expect(signed.inspection.verdict).toMatchObject({
      kind: 'remove from service',
      reasons: [{ key: 'lifeline.diameter.below-minimum', positionM: 15 }],
    });
    expect((await expectOutput('device.show', { benchId })).device.standing).toBe('quarantined');
  });

  test('is not passed while a third of it was not measured, and a reading that cannot be is asked again', async () => {
    const { expectOutput, expectError, benchId } = await deviceWithMinimum();
    const { inspection } = await expectOutput('inspection.start', { benchId });
    const answer = (given: Answer) =>
      expectError('inspection.answer', {
        inspection: inspection.inspection,
        check: 'lifeline.diameter',
        answer: given,
      });
    expect(await answer(readings(5, 4.9))).toMatchObject({ code: 'diameter-places', field: 'answer' });
    expect(await answer(readings(5, 49, 4.9))).toMatchObject({ code: 'diameter-impossible' });
    expect(await answer(readings(5, 0, 4.9))).toMatchObject({ code: 'diameter-impossible' });
    expect((await expectOutput('lifeline.show', { benchId })).inspections[0]).toMatchObject({
      state: 'open',
      readings: [],
    });
  });

  test('of the invented depot shows a removal with findings, readings below the minimum, and pictures', async () => {
    const { expectOutput } = await demoStation();
    const { devices } = await expectOutput('device.list', { search: 'TMR-2024-877', limit: 1 });
    const { benchId } = devices[0]!;
    const { inspections, trend } = await expectOutput('lifeline.show', { benchId });
    expect(trend.kind).toBe('trend');
    expect(inspections[0]!.findings.map(({ defect }) => defect)).toEqual([
      'broken-wires',
      'crushing',
      'kink',
    ]);
    const { pictures } = await expectOutput('inspection.pictures', {
      inspection: inspections[0]!.inspection,
    });
    expect(pictures.map(({ check, state }) => [check, state])).toEqual([
      ['lifeline.wires', 'kept'],
      ['lifeline.shape', 'kept'],
    ]);
    expect(await expectOutput('ledger.verify', {})).toMatchObject({ sound: true, notes: [] });
  });

  test('is refused of a device that is not registered', async () => {
    const { expectError } = await demoStation();
    const benchId = benchIdFrom([1, 2, 3, 4, 5, 6]);
    expect(await expectError('lifeline.show', { benchId })).toMatchObject({ code: 'device-unknown' });
  });
});

describe("the manufacturer's minimum", () => {
  test('is entered on a model sheet that is there already, and open inspections are held against it', async () => {
    const { expectOutput, ...station } = await demoStation();
    const { benchId } = await expectOutput('device.register', sampleDevice('Q26C49002'));
    const { inspection } = await walk({ expectOutput, ...station }, benchId, {
      'lifeline.diameter': { kind: 'diameters', readings: [] },
    });
    expect((await expectOutput('inspection.show', { inspection })).inspection.verdict.kind).toBe('pass');
    const sheet = { modelSheetId: 'M004', lifelineMinimumDiameterMm: millimetres(4.3) };
    expect(await expectOutput('model-sheet.set-minimum-diameter', sheet)).toEqual({ changed: true });
    expect(await expectOutput('model-sheet.set-minimum-diameter', sheet)).toEqual({ changed: false });
    const shown = (await expectOutput('inspection.show', { inspection })).inspection;
    expect(shown.lifelineMinimumDiameterMm).toBe(4.3);
    expect(shown.verdict).toMatchObject({ kind: 'incomplete', unanswered: ['lifeline.diameter'] });
  });

  test('is not above the nominal diameter, nor nothing, nor of a sheet that is not there', async () => {
    const { expectError } = await demoStation();
    for (const [modelSheetId, minimum, code] of [
      ['M004', 4.9, 'minimum-diameter-above-nominal'],
      ['M004', 0, 'input-invalid'],
      ['M999', 4.3, 'model-sheet-unknown'],
    ] as const)
      expect(
        await expectError('model-sheet.set-minimum-diameter', {
          modelSheetId,
          lifelineMinimumDiameterMm: millimetres(minimum),
        }),
      ).toMatchObject({ code });
  });
});

/** The documented inspection through the contract, from the scan of a new device to its tag. */
import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { metres } from '../../src/domain/brand.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { sampleDevice, stationWithDevice } from './sample-device.ts';

describe('an inspection with nothing found', () => {
  test('puts a new device in service, with a due date and a status tag, once it is signed', async () => {
    const { expectOutput, benchId, card, ...station } = await stationWithDevice();
    expect(await card()).toMatchObject({
      standing: 'new',
      dueState: 'never inspected',
      nextAction: 'start inspection',
    });
    const walked = await walk({ expectOutput }, benchId);
    expect(walked.verdict).toEqual({ kind: 'pass' });
    expect(await card()).toMatchObject({
      standing: 'new',
      nextAction: 'resume inspection',
    });
    const { inspection } = await expectOutput('inspection.sign', {
      inspection: walked.inspection,
      pin: demo.pin,
    });
    // EN 365:2004 asks for a periodic examination at least every 12 months.
    expect(inspection.signed).toEqual({
      by: 'Teo Arandal',
      on: '2026-03-10',
      dueOn: '2027-03-10',
      dueFor: 'documented inspection',
      tagNumber: 1,
    });
    expect(await card()).toMatchObject({
      standing: 'in service',
      dueState: 'current',
      dueOn: '2027-03-10',
      currentTag: { kind: 'status', tagNumber: 1, issuedOn: '2026-03-10' },
    });
    expect(await station.expectError('tag.issue', { benchId, kind: 'quarantine' })).toMatchObject({
      code: 'tag-kind-refused',
    });
  });

  test('is due again after the shorter interval of the manufacturer, where the model sheet states one', async () => {
    const station = await demoStation();
    const { benchId } = await station.expectOutput('device.register', {
      ...sampleDevice('TMR-2026-901'),
      modelSheetId: 'M005',
    });
    const walked = await walk(station, benchId);
    const { inspection } = await station.expectOutput('inspection.sign', {
      inspection: walked.inspection,
      pin: demo.pin,
    });
    expect(inspection.signed?.dueOn).toBe('2026-09-10');
  });
});

describe('an inspection with findings', () => {
  test('keeps all three reasons in order, removes the device, and gives the quarantine tag', async () => {
    const { expectOutput, expectError, benchId, card } = await stationWithDevice();
    const walked = await walk({ expectOutput }, benchId, {
      'marking.dateOfManufacture': { kind: 'marking', state: 'illegible' },
      'lifeline.shape': {
        kind: 'defects',
        findings: [{ defect: 'crushing', positionM: metres(3.2) }],
      },
      'brake.near-full-payout': {
        kind: 'defects',
        findings: [{ defect: 'slow' }],
      },
    });
    const sentences = [
      'Date of manufacture illegible on the manufacturer’s marking.',
      'Lifeline crushed at 3.2 m from the hook.',
      'Brake slow to engage near full payout.',
    ];
    expect(
      walked.verdict.kind === 'pass' ? [] : walked.verdict.reasons.map((reason) => reason.sentence.en),
    ).toEqual(sentences);
    await expectOutput('inspection.sign', {
      inspection: walked.inspection,
      pin: demo.pin,
    });
    const device = await card();
    expect(device).toMatchObject({
      standing: 'quarantined',
      nextAction: 'keep out of service',
      currentTag: { kind: 'quarantine', tagNumber: 1 },
    });
    expect(device.dueOn).toBeUndefined();
    expect(device.reasons.map((reason) => reason.sentence.en)).toEqual(sentences);
    expect(await expectError('tag.preview', { benchId, kind: 'status' })).toMatchObject({
      code: 'tag-kind-refused',
    });
    const tag = await expectOutput('tag.preview', {
      benchId,
      kind: 'quarantine',
    });
    expect(
      tag.content.kind === 'quarantine' && tag.content.reasons.map((reason) => reason.sentence.en),
    ).toEqual(sentences);
  });

  test("cannot be started on a device that is out of service: it needs the manufacturer's evidence first", async () => {
    const { expectOutput, expectError, benchId } = await stationWithDevice();
    await expectOutput('device.remove', { benchId, ground: 'fall' });
    expect(await expectError('inspection.start', { benchId })).toMatchObject({
      code: 'device-out-of-service',
    });
  });

  test('can be corrected before the signature, and the record keeps both answers', async () => {
    const { expectOutput, benchId } = await stationWithDevice();
    const walked = await walk({ expectOutput }, benchId, {
      'housing.body': { kind: 'defects', findings: [{ defect: 'dirt' }] },
    });
    expect(walked.verdict).toMatchObject({
      kind: 'incomplete',
      lookAgain: ['housing.body'],
    });
    expect(walked.nextCheck).toBe('housing.body');
    const { inspection } = await expectOutput('inspection.answer', {
      inspection: walked.inspection,
      check: 'housing.body',
      answer: { kind: 'good' },
    });
    expect(inspection.verdict).toEqual({ kind: 'pass' });
    const { path } = await expectOutput('ledger.export', {});
    const answers = (await readFile(path, 'utf8'))
      .split('\n')
      .filter(
        (line) => line.includes('"housing.body"') && line.includes(`"inspection":${walked.inspection},`),
      );
    expect(answers).toHaveLength(2);
  });

  test('that is broken off keeps the device out of service with what was found', async () => {
    const { expectOutput, benchId, card } = await stationWithDevice();
    const { inspection } = await expectOutput('inspection.start', { benchId });
    await expectOutput('inspection.answer', {
      inspection: inspection.inspection,
      check: 'housing.body',
      answer: { kind: 'defects', findings: [{ defect: 'crack' }] },
    });
    expect(
      await expectOutput('inspection.break-off', {
        inspection: inspection.inspection,
        why: 'End of shift.',
      }),
    ).toEqual({ removed: true });
    expect(await card()).toMatchObject({
      standing: 'quarantined',
      reasons: [{ key: 'housing.body.crack' }],
    });
  });

  test('is kept among the reasons when the device is taken out of service during the walk', async () => {
    const { expectOutput, expectError, benchId, card } = await stationWithDevice();
    const { inspection } = await expectOutput('inspection.start', { benchId });
    await expectOutput('inspection.answer', {
      inspection: inspection.inspection,
      check: 'fasteners.all',
      answer: { kind: 'defects', findings: [{ defect: 'missing' }] },
    });
    await expectOutput('device.remove', {
      benchId,
      ground: 'damage',
      note: 'Dropped from the bench.',
    });
    expect((await card()).reasons.map((reason) => reason.sentence.en)).toEqual([
      'Damage seen: Dropped from the bench.',
      'Fastener missing.',
    ]);
    expect(
      await expectError('inspection.sign', {
        inspection: inspection.inspection,
        pin: demo.pin,
      }),
    ).toMatchObject({ code: 'inspection-not-open' });
  });
});

describe('an inspection without a finding that is broken off', () => {
  test('leaves the device as it was, never in service by itself', async () => {
    const { expectOutput, benchId, card } = await stationWithDevice();
    const { inspection } = await expectOutput('inspection.start', { benchId });
    expect(
      await expectOutput('inspection.break-off', {
        inspection: inspection.inspection,
        why: 'Wrong device.',
      }),
    ).toEqual({ removed: false });
    expect(await card()).toMatchObject({
      standing: 'new',
      nextAction: 'start inspection',
    });
  });
});

describe('a started inspection', () => {
  test('stands after a restart at the answer where it stood', async () => {
    const first = await stationWithDevice();
    const { inspection } = await first.expectOutput('inspection.start', {
      benchId: first.benchId,
    });
    const answered = inspection.checks.slice(0, 3);
    for (const check of answered) {
      await first.expectOutput('inspection.answer', {
        inspection: inspection.inspection,
        check,
        answer: { kind: 'marking', state: 'legible' },
      });
    }
    const again = await first.reopen();
    await again.expectOutput('session.sign-in', { badge: demo.inspector });
    const resumed = (
      await again.expectOutput('inspection.show', {
        inspection: inspection.inspection,
      })
    ).inspection;
    expect(Object.keys(resumed.answers).sort()).toEqual([...answered].sort());
    expect(resumed.nextCheck).toBe(inspection.checks[3]);
    expect(await again.expectError('inspection.start', { benchId: first.benchId })).toMatchObject({
      code: 'inspection-already-open',
    });
  });
});

describe('an answer that the check does not take', () => {
  test('is refused with what it takes, and nothing is recorded', async () => {
    const { expectOutput, expectError, benchId } = await stationWithDevice();
    const { inspection } = await expectOutput('inspection.start', { benchId });
    const number = inspection.inspection;
    const before = (await expectOutput('ledger.verify', {})).head;
    const refusals = [
      await expectError('inspection.answer', {
        inspection: number,
        check: 'marking.colour',
        answer: { kind: 'good' },
      }),
      await expectError('inspection.answer', {
        inspection: number,
        check: 'marking.model',
        answer: { kind: 'good' },
      }),
      await expectError('inspection.answer', {
        inspection: number,
        check: 'housing.body',
        answer: { kind: 'defects', findings: [{ defect: 'purple' }] },
      }),
      await expectError('inspection.answer', {
        inspection: number,
        check: 'lifeline.wires',
        answer: { kind: 'defects', findings: [{ defect: 'broken-wires' }] },
      }),
      await expectError('inspection.answer', {
        inspection: number,
        check: 'lifeline.wires',
        answer: {
          kind: 'defects',
          findings: [{ defect: 'broken-wires', positionM: metres(15.3) }],
        },
      }),
      await expectError('inspection.answer', {
        inspection: 4000,
        check: 'housing.body',
        answer: { kind: 'good' },
      }),
      await expectError('inspection.answer', {
        inspection: number,
        check: 'housing.body',
        answer: { kind: 'defects', findings: [] },
      }),
    ];
    expect(refusals.map((error) => error.code)).toEqual([
      'check-unknown',
      'answer-not-allowed',
      'defect-unknown',
      'position-missing',
      'position-beyond-lifeline',
      'inspection-unknown',
      'input-invalid',
    ]);
    expect((await expectOutput('ledger.verify', {})).head).toEqual(before);
  });
});

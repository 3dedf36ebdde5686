/** What a text means that was weighed on a worn tag and not read: a question to a person at most (invariant 9). */
import { expect, test } from 'vitest';
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { demo } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { stationWithDevice } from './sample-device.ts';

const source = 'worn tag';

test('a worn tag’s bench ID is a suggestion, and never opens the device that has it', async () => {
  const { expectOutput, benchId } = await stationWithDevice();
  expect(await expectOutput('scan.interpret', { text: benchId })).toMatchObject({ meaning: 'device' });
  expect(await expectOutput('scan.interpret', { text: benchId, source })).toMatchObject({
    meaning: 'suggestion',
    text: benchId,
    devices: [{ because: 'worn tag', device: { benchId, serial: 'Q26C49001' } }],
  });
});

test('nor does the whole text of a tag, which a scan of it would open', async () => {
  const { expectOutput, benchId } = await stationWithDevice();
  const walked = await walk({ expectOutput }, benchId);
  await expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
  const { symbols } = await expectOutput('tag.issue', { benchId, kind: 'status' });
  const { text } = symbols.find(({ symbology }) => symbology === 'QR Code')!;
  expect(await expectOutput('scan.interpret', { text })).toMatchObject({ meaning: 'device', by: 'tag' });
  expect(await expectOutput('scan.interpret', { text, source })).toMatchObject({
    meaning: 'suggestion',
    devices: [{ because: 'worn tag', device: { benchId } }],
  });
});

test('badge, command symbol, bound code and serial number act on nothing from a worn tag', async () => {
  const { expectOutput } = await stationWithDevice();
  for (const text of [demo.attendant, 'XCGOOD', 'QM15Q26C49001', 'Q26C49001'])
    expect(await expectOutput('scan.interpret', { text, source })).toEqual({ meaning: 'unknown', text });
});

test('a bench ID that no device has is named as not registered', async () => {
  const { expectOutput } = await stationWithDevice();
  const text = benchIdFrom([1, 2, 3, 4, 5, 6]);
  expect(await expectOutput('scan.interpret', { text, source })).toEqual({
    meaning: 'bench ID not registered',
    benchId: text,
  });
});

test('a source that says typed repairs as `typed` does, and one that says scanned does not', async () => {
  const { expectOutput, benchId } = await stationWithDevice();
  const torn = `${benchId.slice(0, 3)}????${benchId.slice(7)}`;
  expect(await expectOutput('scan.interpret', { text: torn, source: 'typed' })).toMatchObject({
    devices: [{ because: 'repaired bench ID', device: { benchId } }],
  });
  expect(await expectOutput('scan.interpret', { text: torn, source: 'scanned' })).toMatchObject({
    meaning: 'unknown',
  });
});

test('every bench ID of the register is given, page after page, each once, to somebody who is signed in', async () => {
  const { expectOutput, callAs } = await stationWithDevice();
  const { total } = await expectOutput('device.list', { limit: 1 });
  const { devices } = await expectOutput('device.list', { limit: 500 });
  const found: string[] = [];
  for (let after: (typeof devices)[number]['benchId'] | undefined; ; ) {
    const page = await expectOutput('device.bench-ids', {
      limit: 7,
      ...(after === undefined ? {} : { after }),
    });
    found.push(...page.benchIds);
    expect(page.benchIds.length).toBe(page.isLast ? total % 7 || 7 : 7);
    if (page.isLast) break;
    after = page.benchIds.at(-1);
  }
  expect(found).toEqual(devices.map(({ benchId }) => benchId).toSorted());
  expect(await callAs('a window with nobody')('device.bench-ids', {})).toMatchObject({
    error: { code: 'sign-in-needed' },
  });
});

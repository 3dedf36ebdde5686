/** What a scanned tag is worth: current, superseded, void, altered, or not ours; and how a printed tag is proved. */
import { describe, expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { demo, type TestStation, testStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { stationWithDevice } from './sample-device.ts';

const pass = async (station: Pick<TestStation, 'expectOutput'>, benchId: BenchId): Promise<void> => {
  const walked = await walk(station, benchId);
  await station.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
};

const qrText = async (
  { expectOutput }: Pick<TestStation, 'expectOutput'>,
  benchId: BenchId,
  kind: 'status' | 'quarantine',
) => {
  const { symbols } = await expectOutput('tag.issue', { benchId, kind });
  return symbols.find(({ symbology }) => symbology === 'QR Code')!.text;
};

const tagged = async () => {
  const station = await stationWithDevice();
  await pass(station, station.benchId);
  return { ...station, qr: await qrText(station, station.benchId, 'status') };
};

describe('a scanned tag', () => {
  test('is current while it is the one that belongs on the device', async () => {
    const { expectOutput, qr } = await tagged();
    expect(await expectOutput('scan.interpret', { text: qr })).toMatchObject({
      meaning: 'device',
      by: 'tag',
      tag: { state: 'current', tag: { tagNumber: 1, printed: 1 } },
    });
  });

  test('is superseded, and says by which, after a new inspection', async () => {
    const station = await tagged();
    await pass(station, station.benchId);
    expect(await station.expectOutput('scan.interpret', { text: station.qr })).toMatchObject({
      tag: { state: 'superseded', tag: { tagNumber: 1, because: 'new inspection' }, by: { tagNumber: 2 } },
    });
  });

  test('is void, and says why and since when, once the device is removed from service', async () => {
    const { expectOutput, qr, benchId } = await tagged();
    await expectOutput('device.remove', { benchId, ground: 'impact' });
    expect(await expectOutput('scan.interpret', { text: qr })).toMatchObject({
      device: { standing: 'quarantined' },
      tag: {
        state: 'void',
        since: '2026-03-10',
        tag: { because: 'removed from service' },
        by: { kind: 'quarantine', tagNumber: 2 },
      },
    });
  });

  test('is altered when any one character of it is another one', async () => {
    const { expectOutput, qr } = await tagged();
    const worth = new Set<string>();
    for (let index = 0; index < qr.length; index += 1) {
      for (const character of ['0', '8', 'B', 'X', ' ']) {
        if (qr[index] === character) continue;
        const text = qr.slice(0, index) + character + qr.slice(index + 1);
        if (text.trim() === qr) continue;
        const scan = await expectOutput('scan.interpret', { text });
        worth.add(scan.meaning === 'worthless tag' ? scan.state : scan.meaning);
      }
    }
    // An altered station mark cannot be told from another station's.
    expect(worth).toEqual(new Set(['altered', 'not ours']));
  });

  test('of another station is not ours', async () => {
    const { qr } = await tagged();
    const other = await testStation();
    await other.expectOutput('station.setup', {
      name: 'Cold Ridge depot',
      timeZone: 'America/Denver',
      lengthUnit: 'ft',
      administrator: { name: 'Mara Quill', badge: 'CR20011', pin: '602214' },
    });
    expect(await other.expectOutput('scan.interpret', { text: qr })).toEqual({
      meaning: 'worthless tag',
      state: 'not ours',
    });
  });

  test('reads the same after a restart: the key is kept', async () => {
    const { reopen, qr } = await tagged();
    const again = await reopen();
    expect(await again.expectOutput('scan.interpret', { text: qr })).toMatchObject({
      tag: { state: 'current' },
    });
  });
});

describe('the tag of a signed inspection', () => {
  test('is listed as not scanned before it is printed', async () => {
    const station = await stationWithDevice();
    await pass(station, station.benchId);
    const { devices } = await station.expectOutput('device.list', { unprovedTag: true });
    expect(devices.map(({ benchId }) => benchId)).toContain(station.benchId);
  });
});

describe('a printed tag', () => {
  test('counts as unproved until it is scanned, then as applied', async () => {
    const { expectOutput, qr, card } = await tagged();
    const unproved = async () => {
      const status = await expectOutput('station.status', {});
      return status.state === 'ready' ? status.counts.unprovedTags : undefined;
    };
    // One tag of the invented depot waits for its scan as well.
    expect(await unproved()).toBe(2);
    expect((await expectOutput('device.list', { unprovedTag: true })).total).toBe(2);
    expect(await expectOutput('tag.prove', { text: qr })).toEqual({ tagNumber: 1 });
    expect((await card()).currentTag).toMatchObject({ tagNumber: 1, provedOn: '2026-03-10' });
    expect(await unproved()).toBe(1);
    expect(await expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
  });

  test('is proved by a scanner that puts a symbology identifier before it', async () => {
    const { expectOutput, qr } = await tagged();
    expect(await expectOutput('tag.prove', { text: `]Q1${qr}` })).toEqual({ tagNumber: 1 });
  });

  test('is proved only by the words of the tag that belongs there', async () => {
    const { expectOutput, expectError, qr, benchId } = await tagged();
    expect(await expectError('tag.prove', { text: benchId })).toMatchObject({ code: 'tag-not-current' });
    await expectOutput('device.remove', { benchId, ground: 'fall' });
    expect(await expectError('tag.prove', { text: qr })).toMatchObject({ code: 'tag-not-current' });
  });

  test('is to be scanned again once it is printed again: the new print proves nothing by itself', async () => {
    const { expectOutput, benchId, qr, card } = await tagged();
    await expectOutput('tag.prove', { text: qr });
    await expectOutput('tag.issue', { benchId, kind: 'status', reprintBecause: 'damaged' });
    expect((await card()).currentTag?.provedOn).toBeUndefined();
  });

  test('is printed once more only with the reason, and the prints are counted', async () => {
    const { expectOutput, expectError, benchId, card } = await tagged();
    expect(await expectError('tag.issue', { benchId, kind: 'status' })).toMatchObject({
      code: 'reprint-needs-reason',
      field: 'reprintBecause',
    });
    await expectOutput('tag.issue', { benchId, kind: 'status', reprintBecause: 'lost' });
    expect((await card()).currentTag).toMatchObject({ tagNumber: 1, printed: 2 });
  });
});

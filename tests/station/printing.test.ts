/** Printing through the contract on a real IPP Everywhere printer: what it spooled, what it refuses, and how it goes on. */
import { readdir, readFile } from 'node:fs/promises';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import type { OutputOf } from '../../src/station/contract.ts';
import { requireIppEverywherePrinter, startIppEverywherePrinter } from '../printing/debian-printers.ts';
import { demo, type TestStation, temporaryFolder } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { stationWithDevice } from './sample-device.ts';

const stock = { widthMm: 100, heightMm: 50 };

/** A label printer of 100 × 50 mm in the configuration form of ippeveprinter. */
const labels = `
ATTR keyword media-supported custom_100x50mm_100x50mm
ATTR keyword media-ready custom_100x50mm_100x50mm
ATTR keyword media-default custom_100x50mm_100x50mm
ATTR collection media-size-supported {
  MEMBER integer x-dimension 10000
  MEMBER integer y-dimension 5000
}
`;

const inspected = async () => {
  const station = await stationWithDevice();
  const { inspection } = await walk(station, station.benchId);
  await station.expectOutput('inspection.sign', { inspection, pin: demo.pin });
  const save = async (settings: object): Promise<string> => {
    await station.expectOutput('session.sign-in', { badge: demo.administrator });
    const saved = await station.expectOutput('printer.save', {
      settings: { stock, ...settings } as never,
      tagKinds: ['status'],
    });
    await station.expectOutput('session.sign-in', { badge: demo.inspector });
    return saved.printerId;
  };
  return { ...station, save };
};

type Ended = Exclude<OutputOf<'print.status'>, { state: 'printing' }>;

/** Prints the status tag and waits for the end of the job. */
const printed = async (
  { expectOutput, benchId }: Pick<TestStation, 'expectOutput'> & Awaited<ReturnType<typeof inspected>>,
  printerId: string,
): Promise<Ended> => {
  const { job } = await expectOutput('tag.print', { benchId, kind: 'status', printerId });
  for (;;) {
    const status = await expectOutput('print.status', { job });
    if (status.state !== 'printing') return status;
    await wait(50);
  }
};

describe.runIf(requireIppEverywherePrinter())('a tag sent to a network printer', () => {
  test('is spooled there as it stands, to the byte, and waits for its scan', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['application/pdf'], attributes: labels });
    const station = await inspected();
    const printerId = await station.save({ kind: 'ipp', name: 'Bench printer', address: printer.address });
    expect(await printed(station, printerId)).toMatchObject({ state: 'printed', confirmed: true });
    const { benchId } = station;
    const [spooled] = await printer.spooled();
    const preview = await station.expectOutput('tag.preview', {
      benchId,
      kind: 'status',
      ink: 'monochrome',
      stock,
    });
    expect(spooled?.toString('base64')).toBe(preview.pdfBase64);
    expect((await station.card()).currentTag).toMatchObject({ printed: 1 });
    expect((await station.card()).currentTag?.provedOn).toBeUndefined();
  });

  test('that takes neither format is refused in a sentence, and the tag is not given out', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['image/jpeg'], attributes: labels });
    const station = await inspected();
    const printerId = await station.save({ kind: 'ipp', name: 'Photo printer', address: printer.address });
    expect(await printed(station, printerId)).toMatchObject({
      state: 'refused',
      code: 'printer-format-refused',
    });
    expect((await station.card()).currentTag).toMatchObject({ printed: 0 });
  });

  test('that has gone away is named, the tag is not given out, and the next try prints it', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['application/pdf'], attributes: labels });
    const station = await inspected();
    const printerId = await station.save({ kind: 'ipp', name: 'Bench printer', address: printer.address });
    await printer.kill();
    const gone = await printed(station, printerId);
    expect(gone).toMatchObject({ state: 'refused', code: 'printer-unreachable' });
    expect(gone.state === 'refused' && gone.sentence).toContain('Bench printer');
    const { devices } = await station.expectOutput('device.list', { unprovedTag: true });
    expect(devices.map(({ benchId }) => benchId)).toContain(station.benchId);
    expect((await station.card()).currentTag).toMatchObject({ printed: 0 });
    await startIppEverywherePrinter({ formats: ['application/pdf'], attributes: labels, port: printer.port });
    expect(await printed(station, printerId)).toMatchObject({ state: 'printed' });
    expect((await station.card()).currentTag).toMatchObject({ printed: 1 });
  });

  test('is taken back while the printer still works on it', async () => {
    const printer = await startIppEverywherePrinter({
      formats: ['application/pdf'],
      attributes: labels,
      command: 'sleep 20',
    });
    const { expectOutput, benchId, save, card } = await inspected();
    const printerId = await save({ kind: 'ipp', name: 'Slow printer', address: printer.address });
    const { job } = await expectOutput('tag.print', { benchId, kind: 'status', printerId });
    await wait(1_500);
    await expectOutput('print.cancel', { job });
    for (let status = await expectOutput('print.status', { job }); status.state === 'printing'; ) {
      await wait(50);
      status = await expectOutput('print.status', { job });
    }
    expect(await expectOutput('print.status', { job })).toMatchObject({
      state: 'refused',
      code: 'printer-job-canceled',
    });
    expect((await card()).currentTag).toMatchObject({ printed: 0 });
  });
});

describe('a printer of the station', () => {
  test('is saved and removed by an administrator alone, under a name of its own', async () => {
    const { expectOutput, expectError, save } = await inspected();
    const folder = await temporaryFolder();
    const printerId = await save({ kind: 'folder', name: 'Tray', folder });
    expect(await expectError('printer.remove', { printerId })).toMatchObject({ code: 'role-needed' });
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const twin = { kind: 'folder' as const, name: 'TRAY', folder, stock };
    expect(await expectError('printer.save', { settings: twin, tagKinds: [] })).toMatchObject({
      code: 'printer-name-taken',
    });
    expect(
      await expectError('printer.save', { printerId: 'none', settings: twin, tagKinds: [] }),
    ).toMatchObject({ code: 'printer-not-known' });
    await expectOutput('printer.remove', { printerId });
    expect(await expectOutput('printer.list', {})).toEqual({ printers: [] });
    expect(await expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
  });

  test('prints the calibration pattern, and what is read off it becomes its offset', async () => {
    const { expectOutput, expectError, save } = await inspected();
    const folder = await temporaryFolder();
    const printerId = await save({ kind: 'folder', name: 'Tray', folder });
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const { job } = await expectOutput('printer.test', { printerId });
    while ((await expectOutput('print.status', { job })).state === 'printing') await wait(20);
    const [pattern] = (await readdir(folder)).filter((name) => name.endsWith('.pdf'));
    expect((await readFile(`${folder}/${pattern}`)).subarray(0, 5).toString()).toBe('%PDF-');
    // The cross stands in the middle of 100 × 50 mm; it came out 1.5 mm too far right and 0.5 mm too high.
    const offset = await expectOutput('printer.calibrate', {
      printerId,
      reading: { by: 'cross', fromLeftMm: 51.5, fromTopMm: 24.5 },
    });
    expect(offset.xMm).toBeCloseTo(-1.5, 6);
    expect(offset.yMm).toBeCloseTo(0.5, 6);
    const [printer] = (await expectOutput('printer.list', {})).printers;
    expect(printer?.settings.offset).toEqual(offset);
    const far = { by: 'cross' as const, fromLeftMm: 90, fromTopMm: 24.5 };
    expect(await expectError('printer.calibrate', { printerId, reading: far })).toMatchObject({
      code: 'offset-too-large',
    });
  });

  test('prints on what is loaded: a flag with its fold, a hole kept free, a red header that is there already', async () => {
    const { expectOutput, expectError, benchId } = await inspected();
    const flag = {
      form: { shape: 'flag' as const, fold: 'upright' as const, sides: 'both' as const, clearMm: 6 },
    };
    const both = { widthMm: 206, heightMm: 50 };
    const folded = await expectOutput('tag.preview', { benchId, kind: 'status', stock: both, face: flag });
    expect(folded).toMatchObject({ widthMm: 206, heightMm: 50 });
    const hole = { hole: { xMm: 50, yMm: 8, diameterMm: 6 }, preprintedHeaderMm: 30 };
    expect(await expectError('tag.preview', { benchId, kind: 'status', face: hole })).toMatchObject({
      code: 'input-invalid',
    });
    await expectOutput('device.remove', { benchId, ground: 'fall' });
    const danger = await expectOutput('tag.preview', { benchId, kind: 'quarantine', face: hole });
    expect(danger).toMatchObject({ widthMm: 100, heightMm: 150 });
  });
});

describe('the label of a bin', () => {
  test('says where held devices are kept, in both languages, with the code of the place', async () => {
    const { expectOutput } = await inspected();
    const label = await expectOutput('bin-label.show', { code: 'CAGE2' });
    const read = await expectOutput('picture.read', { pictureBase64: label.pngBase64 });
    expect(new Set(read.symbols.map(({ text }) => text))).toEqual(new Set(['.CAGE2']));
    expect(read.symbols.map(({ kind }) => kind)).toContain('place');
  });

  test('is told by its scan from a device, a badge and a maker’s serial number, and is bound to no device', async () => {
    const { expectOutput, expectError, benchId } = await inspected();
    for (const text of ['.CAGE2', '.cage2', ']C0.CAGE2'])
      expect(await expectOutput('scan.interpret', { text })).toEqual({ meaning: 'place', code: 'CAGE2' });
    expect((await expectOutput('scan.interpret', { text: 'CAGE2' })).meaning).toBe('unknown');
    expect(
      await expectError('device.bind-code', { benchId, otherCode: { code: '.CAGE2', kind: 'other' } }),
    ).toMatchObject({ code: 'code-is-ours' });
  });
});

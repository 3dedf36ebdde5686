import { execFileSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { DotDensity, JobProgress, PrintJob } from '../../src/printing/destination.ts';
import { thermalSettingsSchema } from '../../src/printing/destination-settings.ts';
import { LabelConnection } from '../../src/printing/thermal/label-connection.ts';
import { crc16, runLength } from '../../src/printing/thermal/label-language.ts';
import { ThermalDestination } from '../../src/printing/thermal/thermal-destination.ts';
import { requireTool } from '../support/debian-tools.ts';
import { benchId } from '../tags/sample-tags.ts';
import { freePort, requireCups, startCups, testFolder } from './debian-printers.ts';
import { hostStatus, startLabelPrinter } from './label-printer.ts';
import { dotsJob, stock, tagJob } from './sample-job.ts';

/** Its module for `import` points at a source map that it does not bring. */
const { ready } = createRequire(import.meta.url)('zpl-renderer-js') as typeof import('zpl-renderer-js');

const destination = (port: number, changes: object = {}): ThermalDestination =>
  new ThermalDestination(
    thermalSettingsSchema.parse({
      kind: 'thermal',
      name: 'Labels',
      stock,
      connection: { by: 'network', host: '127.0.0.1', port },
      ...changes,
    }),
    { statusMs: 200 },
  );

const soon = { pollMs: 10 };
const idle = () => hostStatus();

/** The renderer takes whole dots for a millimetre; what counts is that the page has as many dots as the job. */
const dotsPerMm = 8;

/** The label drawn by zebrash, an independent renderer of the language, in grey. */
const renderLabel = async (
  label: string,
  job: PrintJob,
): Promise<{ png: Buffer; dots: Buffer; width: number }> => {
  const { api } = await ready;
  const side = (mm: number) => Math.round((mm * job.dpi) / 25.4) / dotsPerMm;
  const picture = await api.zplToBase64Async(label, side(job.widthMm), side(job.heightMm), dotsPerMm);
  const png = Buffer.from(picture, 'base64');
  const { data, info } = await sharp(png)
    .flatten({ background: '#fff' })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { png, dots: data, width: info.width };
};

describe('a label printer on the network', () => {
  const cases: [DotDensity, 'run-length' | 'z64'][] = [
    [203, 'run-length'],
    [203, 'z64'],
    [300, 'run-length'],
    [300, 'z64'],
  ];

  test.each(cases)('at %i dpi prints every dot of the job, packed as %s', async (dpi, compression) => {
    const printer = await startLabelPrinter({ answer: idle });
    const job = await dotsJob(dpi);
    const outcome = await destination(printer.port, { dpi, compression }).print(job, soon);
    expect(outcome).toEqual({ printed: true, format: 'label graphics', confirmed: true });
    const { dots, width } = await renderLabel(printer.received(), job);
    const jobWidth = Math.round((job.widthMm * dpi) / 25.4);
    expect([width, dots.length]).toEqual([jobWidth, job.dots.length]);
    const wrong = job.dots.findIndex((dot, at) => {
      const x = at % jobWidth;
      const drawn = dots[Math.floor(at / jobWidth) * width + x]!;
      return drawn < 128 !== dot < 128;
    });
    expect(wrong).toBe(-1);
  });

  test.runIf(requireTool('zbarimg'))('prints a tag from which zbar reads the bench ID', async () => {
    const printer = await startLabelPrinter({ answer: idle });
    const job = await tagJob(203);
    await destination(printer.port, { dpi: 203 }).print(job, soon);
    const { png } = await renderLabel(printer.received(), job);
    const file = join(await testFolder(), 'label.png');
    await writeFile(file, png);
    const read = execFileSync('zbarimg', ['--quiet', '--raw', '-Sdisable', '-Scode128.enable', file], {
      encoding: 'utf8',
    });
    expect(read.trim()).toBe(benchId);
  });

  test('gets a page beyond 99,999 bytes as bands that each stay within it', async () => {
    const size = { widthMm: 100, heightMm: 150 };
    const printer = await startLabelPrinter({ answer: idle });
    const job = await dotsJob(300, size);
    await destination(printer.port, { stock: size }).print(job, soon);
    const fields = [...printer.received().matchAll(/\^FO0,(\d+)\^GFA,(\d+),(\d+),(\d+),/g)].map((field) =>
      field.slice(1).map(Number),
    );
    // 1181 dots are 148 bytes a row; 1772 rows are 262,256 bytes: three bands.
    expect(fields.map(([, bytes]) => bytes)).toHaveLength(3);
    expect(fields.reduce((sum, [, bytes]) => sum + bytes!, 0)).toBe(148 * 1_772);
    for (const [, bytes, total, perRow] of fields) {
      // "ZPL II Programming Guide", ^GF: 1 to 99,999.
      expect(bytes).toBeLessThanOrEqual(99_999);
      expect([total, perRow]).toEqual([bytes, 148]);
    }
    const { dots, width } = await renderLabel(printer.received(), job);
    const row = (source: Uint8Array, y: number, stride: number) =>
      [...source.subarray(y * stride + 30, y * stride + 1_150)].map((dot) => dot < 128);
    for (const y of [674, 675, 676, 1_350, 1_351, 1_700]) {
      expect(row(dots, y, width)).toEqual(row(job.dots, y, 1_181));
    }
  });

  test('is told darkness, speed, size and copies in its own commands', async () => {
    const printer = await startLabelPrinter({ answer: idle });
    const settings = { darkness: 7, speedInchesPerSecond: 3 };
    await destination(printer.port, settings).print({ ...(await tagJob(300)), copies: 2 }, soon);
    const label = printer.received();
    // Commands: "ZPL II Programming Guide". 100 mm and 50 mm at 300 dpi are 1181 and 591 dots.
    for (const command of ['~SD07', '^PR3', '^PW1181', '^LL591', '^PQ2']) expect(label).toContain(command);
    expect(label.indexOf('~SD07')).toBeLessThan(label.indexOf('^XA'));
  });

  test('keeps its own darkness and speed where none is set', async () => {
    const printer = await startLabelPrinter({ answer: idle });
    await destination(printer.port).print(await tagJob(300), soon);
    expect(printer.received()).not.toMatch(/~SD|\^PR|\^MD/);
  });

  test('has the offset baked into the dots, and refuses one that would cut ink off', async () => {
    const printer = await startLabelPrinter({ answer: idle });
    const job = await dotsJob(300);
    // 1 mm at 300 dpi is 11.8 dots, and the job keeps 24 dots free on every side.
    await destination(printer.port, { offset: { xMm: 1, yMm: -1 } }).print(job, soon);
    const { dots, width } = await renderLabel(printer.received(), job);
    const inked = (x: number, y: number) => dots[y * width + x]! < 128;
    const wrong = job.dots.findIndex((dot, at) => {
      const [x, y] = [at % 1_181, Math.floor(at / 1_181)];
      return y >= 12 && x < 1_160 && inked(x + 12, y - 12) !== dot < 128;
    });
    expect(wrong).toBe(-1);
    expect(await destination(printer.port, { offset: { xMm: 3, yMm: 0 } }).print(job, soon)).toMatchObject({
      refused: true,
      code: 'printer-offset-clips',
    });
  });
});

describe('what a label printer says of itself', () => {
  const problems = [
    ['paperOut', 'printer-media-empty', 'media-empty'],
    ['headUp', 'printer-cover-open', 'cover-open'],
    ['ribbonOut', 'printer-supply-empty', 'marker-supply-empty'],
    ['pause', 'printer-paused', 'paused'],
  ] as const;

  test.each(problems)('with %s it is sent nothing, and the refusal is %s', async (flag, code, keyword) => {
    const printer = await startLabelPrinter({ answer: () => hostStatus({ [flag]: 1 }) });
    const labels = destination(printer.port);
    expect(await labels.check()).toMatchObject({
      condition: 'stopped',
      reasons: [keyword],
      problem: { code },
    });
    expect(await labels.print(await tagJob(300), soon)).toMatchObject({ refused: true, code });
    expect(printer.received()).toBe('');
  });

  test('out of stock during the job is told, waited for, and the job goes on when it is loaded', async () => {
    const printer = await startLabelPrinter({
      answer: (request) =>
        [hostStatus(), hostStatus({ formats: 1 }), hostStatus({ paperOut: 1 }), hostStatus({ remaining: 1 })][
          request
        ] ?? hostStatus(),
    });
    const told: JobProgress[] = [];
    const outcome = await destination(printer.port).print(await tagJob(300), {
      ...soon,
      onState: (progress) => told.push(progress),
    });
    expect(outcome).toMatchObject({ printed: true, confirmed: true });
    expect(told.map(({ state, problem }) => [state, problem?.code])).toEqual([
      ['processing', undefined],
      ['processing-stopped', 'printer-media-empty'],
      ['processing', undefined],
      ['completed', undefined],
    ]);
  });

  test('out of stock for longer than patience lasts, it is told to forget the job', async () => {
    const printer = await startLabelPrinter({
      answer: (request) => (request === 0 ? hostStatus() : hostStatus({ paperOut: 1 })),
    });
    const outcome = await destination(printer.port).print(await tagJob(300), { ...soon, patienceMs: 30 });
    expect(outcome).toMatchObject({ refused: true, code: 'printer-media-empty' });
    await vi.waitFor(() => expect(printer.received()).toMatch(/\^XZ~JA$/));
  });

  test('canceled from here, it is told to forget the job', async () => {
    const printer = await startLabelPrinter({
      answer: (request) => (request === 0 ? hostStatus() : hostStatus({ formats: 1 })),
    });
    const cancel = new AbortController();
    const outcome = await destination(printer.port).print(await tagJob(300), {
      ...soon,
      signal: cancel.signal,
      onState: () => cancel.abort(),
    });
    expect(outcome).toMatchObject({ refused: true, code: 'printer-job-canceled' });
    await vi.waitFor(() => expect(printer.received()).toMatch(/\^XZ~JA$/));
  });

  test('silent, its state is unknown and the print is handed over without being confirmed', async () => {
    const printer = await startLabelPrinter();
    const labels = destination(printer.port);
    expect(await labels.check()).toEqual({ condition: 'unknown', reasons: [] });
    expect(await labels.print(await tagJob(300), soon)).toEqual({
      printed: true,
      format: 'label graphics',
      confirmed: false,
    });
    await vi.waitFor(() => expect(printer.received()).toMatch(/\^XZ$/));
  });

  test('gone in the middle of the job, it is said to be gone, and the next try prints', async () => {
    const broken = await startLabelPrinter({ answer: idle, breakAfter: 2_000 });
    const job = await dotsJob(300);
    expect(await destination(broken.port).print(job, soon)).toMatchObject({ code: 'printer-went-away' });
    const whole = await startLabelPrinter({ answer: idle });
    expect(await destination(whole.port).print(job, soon)).toMatchObject({ printed: true, confirmed: true });
  });

  test('with a full buffer, it is not waited for beyond patience or a cancel', async () => {
    const printer = await startLabelPrinter({ readsNothing: true });
    const more = '0'.repeat(64 * 1024 * 1024);
    const first = await LabelConnection.open('127.0.0.1', printer.port);
    expect(await first!.send(more, 50)).toBe(false);
    const second = await LabelConnection.open('127.0.0.1', printer.port);
    const cancel = new AbortController();
    const sent = second!.send(more, 600_000, cancel.signal);
    cancel.abort();
    expect(await sent).toBe(false);
  });

  test('not there, it is unreachable under its address', async () => {
    const port = await freePort();
    const { problem } = await destination(port).check();
    expect(problem).toMatchObject({
      code: 'printer-unreachable',
      values: { printer: 'Labels', address: `127.0.0.1:${port}` },
    });
  });
});

describe('through a raw queue', () => {
  afterEach(() => vi.unstubAllEnvs());

  test.runIf(requireCups())('the label arrives as it is', async () => {
    const printer = await startLabelPrinter();
    const cups = await startCups();
    cups.addQueue('labels', `socket://127.0.0.1:${printer.port}`);
    vi.stubEnv('CUPS_SERVER', cups.server);
    const job = await dotsJob(300);
    const connection = { by: 'queue', queue: 'labels' };
    const outcome = await destination(0, { connection }).print(job, soon);
    expect(outcome).toMatchObject({ printed: true, confirmed: true, jobId: 'labels-1' });
    const direct = await startLabelPrinter({ answer: idle });
    await destination(direct.port).print(job, soon);
    expect(printer.received()).toBe(direct.received());
  });

  test('Windows is told to use the network', async () => {
    const connection = { by: 'queue', queue: 'labels' };
    const settings = thermalSettingsSchema.parse({ kind: 'thermal', name: 'Labels', stock, connection });
    const labels = new ThermalDestination(settings, {}, 'win32');
    expect((await labels.check()).problem?.code).toBe('printer-raw-queue-unsupported');
  });
});

describe('the packing of graphics', () => {
  test('counts as the guide’s examples do', () => {
    // "ZPL II Programming Guide", "Alternative Data Compression Scheme": M6 is seven sixes, hB is forty Bs, vMB is 327 Bs.
    const hex = (text: string) => Buffer.from(text.length % 2 === 0 ? text : `${text}1`, 'hex');
    expect(runLength(hex('6666666'), 4)).toBe('M61');
    expect(runLength(hex('B'.repeat(40)), 20)).toBe('hB');
    expect(runLength(hex('B'.repeat(327)), 164)).toBe('vMB1');
  });

  test('repeats a row by a colon, and ends rows of zeros by a comma and of ones by an exclamation mark', () => {
    // Same source.
    expect(runLength(Buffer.from('ab000000ab000000ffffffff00000000', 'hex'), 4)).toBe('AB,:!,');
  });

  test('carries the checksum of CCITT', () => {
    // Check value of CRC-16/XMODEM, "Catalogue of parametrised CRC algorithms": 0x31C3 for "123456789".
    expect(crc16('123456789')).toBe(0x31c3);
  });
});

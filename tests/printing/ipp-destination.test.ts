import { createServer as createHttp } from 'node:http';
import { createServer as createTcp } from 'node:net';
import { describe, expect, onTestFinished, test } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { JobProgress } from '../../src/printing/destination.ts';
import { ippSettingsSchema } from '../../src/printing/destination-settings.ts';
import { IppDestination } from '../../src/printing/ipp/ipp-destination.ts';
import { requireTool } from '../support/debian-tools.ts';
import {
  freePort,
  requireCups,
  requireIppEverywherePrinter,
  startCups,
  startIppEverywherePrinter,
} from './debian-printers.ts';
import { dotsOfPwg, rasterToPdf } from './read-pwg.ts';
import { dotsJob, stock, tagJob } from './sample-job.ts';

const destination = (address: string, changes: object = {}): IppDestination =>
  new IppDestination(ippSettingsSchema.parse({ kind: 'ipp', name: 'Desk', stock, address, ...changes }));

const soon = { pollMs: 20 };

/** US Letter, which ippeveprinter has loaded (printed by `ippeveprinter` as `na_letter_8.5x11in`). */
const letter = { widthMm: 215.9, heightMm: 279.4 };

/** A printer of labels in the configuration form of ippeveprinter: 100 × 50 mm, and rolls up to 108 × 991 mm. */
const labelPrinter = `
ATTR collection media-size-supported {
  MEMBER integer x-dimension 10000
  MEMBER integer y-dimension 5000
},{
  MEMBER rangeOfInteger x-dimension 2500-10800
  MEMBER rangeOfInteger y-dimension 600-99100
}
ATTR keyword media-supported custom_100x50mm_100x50mm,custom_min_25x6mm,custom_max_108x991mm
ATTR keyword media-ready custom_100x50mm_100x50mm
ATTR keyword media-default custom_100x50mm_100x50mm
ATTR keyword media-col-supported media-size
ATTR rangeOfInteger copies-supported 1-9
ATTR resolution pwg-raster-document-resolution-supported 300dpi
ATTR keyword pwg-raster-document-type-supported black_1,sgray_8
ATTR keyword print-color-mode-supported monochrome
ATTR textWithoutLanguage printer-make-and-model "Bench label printer"
`;

describe.runIf(requireIppEverywherePrinter())('an IPP Everywhere printer', () => {
  test('spools the document of the job to the byte, and the job is followed to its end', async () => {
    const printer = await startIppEverywherePrinter({
      formats: ['application/pdf'],
      attributes: labelPrinter,
    });
    const job = await tagJob(300);
    const states: JobProgress[] = [];
    const outcome = await destination(printer.address).print(job, {
      ...soon,
      onState: (progress) => states.push(progress),
    });
    expect(outcome).toEqual({ printed: true, format: 'application/pdf', confirmed: true, jobId: '1' });
    expect(states.at(-1)!.state).toBe('completed');
    const [spooled] = await printer.spooled();
    expect(Buffer.compare(spooled!, Buffer.from(job.pdf))).toBe(0);
  });

  test('is found by its host and port alone, and says how it is', async () => {
    const printer = await startIppEverywherePrinter({
      formats: ['application/pdf'],
      attributes: labelPrinter,
    });
    expect(await destination(`localhost:${printer.port}`).check()).toEqual({
      condition: 'idle',
      reasons: [],
      makeAndModel: 'Bench label printer',
    });
  });

  test.runIf(requireTool(rasterToPdf))('that takes no PDF gets PWG Raster with the same dots', async () => {
    const printer = await startIppEverywherePrinter({
      formats: ['image/pwg-raster'],
      attributes: labelPrinter,
    });
    const job = await dotsJob(300);
    const outcome = await destination(printer.address).print(job, soon);
    expect(outcome).toMatchObject({ printed: true, format: 'image/pwg-raster', confirmed: true });
    const [spooled] = await printer.spooled();
    expect(Buffer.compare((await dotsOfPwg(spooled!)).samples, Buffer.from(job.dots))).toBe(0);
  });

  test('that takes neither PDF nor PWG Raster is not sent anything, and the sentence says what it takes', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['image/jpeg'], attributes: labelPrinter });
    expect(await destination(printer.address).print(await tagJob(300), soon)).toEqual({
      refused: true,
      code: 'printer-format-refused',
      values: { printer: 'Desk', takes: 'image/jpeg' },
    });
    expect(await printer.spooled()).toEqual([]);
  });

  test('that has not the dots of the job for PWG Raster refuses it and says which it has', async () => {
    const printer = await startIppEverywherePrinter({
      formats: ['image/pwg-raster'],
      attributes: labelPrinter,
    });
    const outcome = await destination(printer.address, { dpi: 203 }).print(await tagJob(203), soon);
    expect(outcome).toMatchObject({ code: 'printer-resolution-refused', values: { dpi: 203, takes: '300' } });
  });

  test('that cannot take the stock refuses it and says what it takes', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['application/pdf'] });
    const outcome = await destination(printer.address).print(await tagJob(300), soon);
    expect(outcome).toMatchObject({ code: 'printer-size-refused', values: { stock: '100 × 50 mm' } });
    expect(outcome).toMatchObject({ values: { takes: expect.stringContaining('216 × 279 mm') } });
  });

  test('takes a stock within its range of sizes', async () => {
    const size = { widthMm: 80, heightMm: 120 };
    const printer = await startIppEverywherePrinter({
      formats: ['application/pdf'],
      attributes: labelPrinter,
    });
    const settings = { stock: size, loadedStock: 'any' };
    const outcome = await destination(printer.address, settings).print(await dotsJob(300, size), soon);
    expect(outcome).toMatchObject({ printed: true });
  });

  test('with other stock loaded refuses the job, unless it does not know what is loaded', async () => {
    const size = { widthMm: 80, heightMm: 120 };
    const printer = await startIppEverywherePrinter({
      formats: ['application/pdf'],
      attributes: labelPrinter,
    });
    const outcome = await destination(printer.address, { stock: size }).print(await dotsJob(300, size), soon);
    expect(outcome).toMatchObject({
      code: 'printer-stock-not-loaded',
      values: { stock: '80 × 120 mm', loaded: '100 × 50 mm' },
    });
  });

  test('without stock is waited for, and the job comes out when a person loads it', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['application/pdf'] });
    await printer.load({ size: 'na_letter_8.5x11in', sheets: 0 });
    const job = await dotsJob(300, letter);
    const problems: (string | undefined)[] = [];
    const outcome = await destination(printer.address, { stock: letter, loadedStock: 'any' }).print(job, {
      ...soon,
      onState: (progress) => {
        problems.push(progress.problem?.code);
        if (progress.problem !== undefined) void printer.load({ size: 'na_letter_8.5x11in', sheets: 250 });
      },
    });
    expect(outcome).toMatchObject({ printed: true, confirmed: true });
    expect(problems).toContain('printer-media-empty');
    expect(problems.at(-1)).toBeUndefined();
  });

  test('without stock, when patience ends, the job is taken back and a second one prints after loading', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['application/pdf'] });
    await printer.load({ size: 'na_letter_8.5x11in', sheets: 0 });
    const desk = destination(printer.address, { stock: letter, loadedStock: 'any' });
    const job = await dotsJob(300, letter);
    expect(await desk.print(job, { ...soon, patienceMs: 60 })).toMatchObject({
      refused: true,
      code: 'printer-media-empty',
      values: { printer: 'Desk', stock: '215.9 × 279.4 mm' },
    });
    await printer.load({ size: 'na_letter_8.5x11in', sheets: 250 });
    // The printer notices within a second that the first job is canceled; until then it is busy.
    let second = await desk.print(job, soon);
    while (isRefusal(second) && second.code === 'printer-busy') second = await desk.print(job, soon);
    expect(second).toMatchObject({ printed: true, confirmed: true });
    expect(await printer.spooled()).toHaveLength(2);
  });

  test('holds a job that is canceled from here, and says so', async () => {
    const printer = await startIppEverywherePrinter({ formats: ['application/pdf'] });
    await printer.load({ size: 'na_letter_8.5x11in', sheets: 0 });
    const cancel = new AbortController();
    const outcome = await destination(printer.address, { stock: letter, loadedStock: 'any' }).print(
      await dotsJob(300, letter),
      { ...soon, signal: cancel.signal, onState: () => cancel.abort() },
    );
    expect(outcome).toMatchObject({ refused: true, code: 'printer-job-canceled' });
  });

  test('whose printing fails has the job fail in words', async () => {
    const printer = await startIppEverywherePrinter({
      formats: ['application/pdf'],
      attributes: labelPrinter,
      command: 'echo "ERROR: The print head gave way." >&2; exit 1',
    });
    const outcome = await destination(printer.address).print(await tagJob(300), soon);
    expect(outcome).toMatchObject({ refused: true, code: 'printer-job-failed' });
  });

  test('that goes away during the job is said to be gone, and the next try prints', async () => {
    const port = await freePort();
    const setup = { formats: ['application/pdf'], attributes: labelPrinter, port };
    const printer = await startIppEverywherePrinter({ ...setup, command: 'exec sleep 600' });
    const desk = destination(printer.address);
    const job = await tagJob(300);
    const outcome = await desk.print(job, { ...soon, onState: () => void printer.kill() });
    expect(outcome).toEqual({ refused: true, code: 'printer-went-away', values: { printer: 'Desk' } });
    await printer.kill();
    expect(await desk.print(job, soon)).toMatchObject({ refused: true, code: 'printer-unreachable' });
    const again = await startIppEverywherePrinter(setup);
    expect(await desk.print(job, soon)).toMatchObject({ printed: true });
    expect(await again.spooled()).toHaveLength(1);
  });

  test('over TLS is trusted by the fingerprint that a person compared, and by no other', async () => {
    const printer = await startIppEverywherePrinter({
      formats: ['application/pdf'],
      attributes: labelPrinter,
    });
    const secure = printer.address.replace('ipp:', 'ipps:');
    const { problem } = await destination(secure).check();
    expect(problem?.code).toBe('printer-certificate-unknown');
    const certificateSha256 = String(problem?.values.fingerprint);
    expect(certificateSha256).toMatch(/^([0-9A-F]{2}:){31}[0-9A-F]{2}$/);
    expect(await destination(secure, { certificateSha256 }).print(await tagJob(300), soon)).toMatchObject({
      printed: true,
    });
    const other = await destination(secure, { certificateSha256: 'AB'.repeat(32) }).print(
      await tagJob(300),
      soon,
    );
    expect(other).toMatchObject({ refused: true, code: 'printer-certificate-changed' });
    expect(await printer.spooled()).toHaveLength(1);
  });
});

describe.runIf(requireCups())('a queue of CUPS spoken to in IPP', () => {
  /** CUPS knows sizes only by a driver; these queues have none and list no sizes. */
  const raw = { loadedStock: 'any', format: 'pdf' };

  test('that is stopped is sent nothing, and prints once it is started', async () => {
    const cups = await startCups();
    const port = await freePort();
    const arrived = await captureTcp(port);
    cups.addQueue('bench', `socket://127.0.0.1:${port}`);
    const desk = destination(`ipp://${cups.server}/printers/bench`, raw);
    const job = await tagJob(300);
    cups.run('cupsdisable', 'bench');
    expect(await desk.print(job, soon)).toMatchObject({ refused: true, code: 'printer-paused' });
    expect(cups.run('lpstat', '-W', 'all', '-o', 'bench')).toBe('');
    cups.run('cupsenable', 'bench');
    expect(await desk.print(job, soon)).toMatchObject({ printed: true, confirmed: true });
    expect(Buffer.compare(arrived(), Buffer.from(job.pdf))).toBe(0);
  });

  test('that takes no jobs says so', async () => {
    const cups = await startCups();
    cups.addQueue('bench', 'socket://127.0.0.1:9');
    cups.run('cupsreject', 'bench');
    const outcome = await destination(`ipp://${cups.server}/printers/bench`, raw).print(
      await tagJob(300),
      soon,
    );
    expect(outcome).toMatchObject({ refused: true, code: 'printer-not-accepting' });
  });
});

describe('an address', () => {
  test('where nobody listens is unreachable', async () => {
    const port = await freePort();
    const { problem } = await destination(`localhost:${port}`).check();
    expect(problem).toEqual({
      refused: true,
      code: 'printer-unreachable',
      values: { printer: 'Desk', address: `localhost:${port}` },
    });
  });

  test('where a web page answers is no IPP printer', async () => {
    const server = createHttp((_, response) => response.end('<html></html>'));
    await new Promise<void>((resolve) => server.listen(0, resolve));
    onTestFinished(() => void server.close());
    const address = server.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    const { problem } = await destination(`http://localhost:${port}/printer`).check();
    expect(problem?.code).toBe('printer-not-ipp');
  });

  test('that is none is refused', async () => {
    expect((await destination('gopher://x').check()).problem?.code).toBe('printer-not-ipp');
  });

  test('of a printer that wants a sign-in says so', async () => {
    const server = createHttp((_, response) => response.writeHead(401).end());
    await new Promise<void>((resolve) => server.listen(0, resolve));
    onTestFinished(() => void server.close());
    const address = server.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    const outcome = await destination(`localhost:${port}`).print(await tagJob(300), soon);
    expect(isRefusal(outcome) && outcome.code).toBe('printer-needs-sign-in');
  });
});

describe('a job', () => {
  test('made for other stock or other dots is refused before the printer is asked', async () => {
    const desk = destination('printer.invalid');
    expect(await desk.print({ ...(await tagJob(300)), heightMm: 150 })).toMatchObject({
      code: 'printer-stock-mismatch',
      values: { size: '100 × 150 mm', stock: '100 × 50 mm' },
    });
    expect(await desk.print(await tagJob(203))).toMatchObject({ code: 'printer-dpi-mismatch' });
  });
});

const captureTcp = async (port: number): Promise<() => Buffer> => {
  const chunks: Buffer[] = [];
  const server = createTcp((socket) => {
    socket.on('data', (chunk) => chunks.push(chunk));
    socket.on('error', () => undefined);
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  onTestFinished(() => void server.close());
  return () => Buffer.concat(chunks);
};

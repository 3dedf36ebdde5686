import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { JobProgress } from '../../src/printing/destination.ts';
import { queueSettingsSchema } from '../../src/printing/destination-settings.ts';
import { CupsDestination } from '../../src/printing/queue/cups-destination.ts';
import { openQueue } from '../../src/printing/queue/open-queue.ts';
import { WindowsDestination, type WindowsPrinting } from '../../src/printing/queue/windows-destination.ts';
import { freePort, requireCups, startCups, testFolder } from './debian-printers.ts';
import { stock, tagJob } from './sample-job.ts';

const settings = (changes: object = {}) =>
  queueSettingsSchema.parse({ kind: 'queue', name: 'Desk', stock, queue: 'bench', ...changes });

const soon = { pollMs: 20 };

afterEach(() => vi.unstubAllEnvs());

/** A printer on loopback as the `socket` backend of CUPS knows it. */
const rawPrinter = async (): Promise<{ device: string; received: () => Buffer }> => {
  const chunks: Buffer[] = [];
  const server = createServer((socket) => {
    socket.on('data', (chunk) => chunks.push(chunk));
    socket.on('error', () => undefined);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => void server.close());
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  return { device: `socket://127.0.0.1:${port}`, received: () => Buffer.concat(chunks) };
};

const cupsServer = async () => {
  const cups = await startCups();
  vi.stubEnv('CUPS_SERVER', cups.server);
  return cups;
};

describe.runIf(requireCups())('a queue of CUPS', () => {
  test('takes the document to the byte, and the job is followed to its end', async () => {
    const cups = await cupsServer();
    const printer = await rawPrinter();
    cups.addQueue('bench', printer.device);
    const job = await tagJob(300);
    const states: JobProgress[] = [];
    const outcome = await new CupsDestination(settings()).print(job, {
      ...soon,
      onState: (progress) => states.push(progress),
    });
    expect(outcome).toEqual({ printed: true, format: 'application/pdf', confirmed: true, jobId: 'bench-1' });
    expect(states.at(-1)).toEqual({ state: 'completed', jobId: 'bench-1' });
    expect(Buffer.compare(printer.received(), Buffer.from(job.pdf))).toBe(0);
  });

  test('that is stopped is sent nothing, and prints when it is started again', async () => {
    const cups = await cupsServer();
    const printer = await rawPrinter();
    cups.addQueue('bench', printer.device);
    cups.run('cupsdisable', 'bench');
    const desk = new CupsDestination(settings());
    expect(await desk.check()).toMatchObject({ condition: 'stopped', problem: { code: 'printer-paused' } });
    expect(await desk.print(await tagJob(300), soon)).toMatchObject({
      refused: true,
      code: 'printer-paused',
    });
    expect(cups.run('lpstat', '-W', 'all', '-o', 'bench')).toBe('');
    cups.run('cupsenable', 'bench');
    expect(await desk.print(await tagJob(300), soon)).toMatchObject({ printed: true });
  });

  test('that takes no jobs says so', async () => {
    const cups = await cupsServer();
    cups.addQueue('bench', 'socket://127.0.0.1:9');
    cups.run('cupsreject', 'bench');
    const outcome = await new CupsDestination(settings()).print(await tagJob(300), soon);
    expect(outcome).toMatchObject({ refused: true, code: 'printer-not-accepting' });
  });

  test('whose printer cannot be reached tells so while it tries, and the job is taken back from here', async () => {
    const cups = await cupsServer();
    cups.addQueue('bench', `socket://127.0.0.1:${await freePort()}`);
    const cancel = new AbortController();
    const outcome = await new CupsDestination(settings()).print(await tagJob(300), {
      ...soon,
      signal: cancel.signal,
      onState: ({ problem }) => {
        if (problem?.code === 'printer-unreachable') cancel.abort();
      },
    });
    expect(outcome).toMatchObject({ refused: true, code: 'printer-job-canceled' });
    expect(cups.run('lpstat', '-W', 'not-completed', '-o', 'bench')).toBe('');
  });

  test('in which somebody cancels the job says so', async () => {
    const cups = await cupsServer();
    cups.addQueue('bench', `socket://127.0.0.1:${await freePort()}`);
    const outcome = await new CupsDestination(settings()).print(await tagJob(300), {
      ...soon,
      onState: ({ jobId, state }) => {
        if (state !== 'canceled') cups.run('cancel', String(jobId));
      },
    });
    expect(outcome).toMatchObject({ refused: true, code: 'printer-job-canceled-there' });
  });

  test('that goes away during the job is said to be gone', async () => {
    const cups = await cupsServer();
    cups.addQueue('bench', `socket://127.0.0.1:${await freePort()}`);
    const outcome = await new CupsDestination(settings()).print(await tagJob(300), {
      ...soon,
      onState: () => void cups.kill(),
    });
    expect(outcome).toMatchObject({ refused: true, code: 'printer-went-away' });
  });

  test('that does not exist is refused with the names of those that do', async () => {
    const cups = await cupsServer();
    cups.addQueue('front', 'socket://127.0.0.1:9');
    const { problem } = await new CupsDestination(settings()).check();
    expect(problem).toMatchObject({
      code: 'printer-queue-unknown',
      values: { queue: 'bench', known: 'front' },
    });
  });
});

/** Programs of CUPS as scripts that say what they are told and write down what they were asked. */
const scriptedPrograms = async (
  scripts: Readonly<Record<string, string>>,
): Promise<() => Promise<string>> => {
  const folder = await testFolder();
  const programs = join(folder, 'programs');
  await mkdir(programs);
  const journal = join(folder, 'journal');
  await writeFile(journal, '');
  for (const [name, script] of Object.entries(scripts)) {
    const path = join(programs, name);
    await writeFile(
      path,
      `#!/bin/sh\nprintf '%s' "${name}" >> '${journal}'\nprintf ' [%s]' "$@" >> '${journal}'\necho >> '${journal}'\n${script}\n`,
    );
    await chmod(path, 0o755);
  }
  vi.stubEnv('PATH', `${programs}:/usr/bin:/bin`);
  return () => readFile(journal, 'utf8');
};

/** Output as CUPS 2.4.2 of Debian 12 prints it, shortened to the lines that count. */
const idleQueue = `
case "$*" in
  *-p*) printf 'printer bench is idle.  enabled since Tue Nov 24 23:31:22 2026\\n\\tDescription: Bench desk\\n\\tAlerts: %s\\n' "\${ALERTS:-none}" ;;
  *-a*) echo 'bench accepting requests since Tue Nov 24 23:31:22 2026' ;;
  *not-completed*) ;;
  *completed*) printf 'bench-7                 root              1024   Tue Nov 24 23:31:22 2026\\n\\tStatus: %s\\n\\tAlerts: %s\\n\\tqueued for bench\\n' "$JOB_STATUS" "$JOB_ALERTS" ;;
esac`;
const takesJob = `echo 'request id is bench-7 (1 file(s))'`;

describe('the programs of CUPS', () => {
  test('are asked for media of the size of the stock, unscaled, in one colour', async () => {
    const journal = await scriptedPrograms({ lp: takesJob, lpstat: idleQueue });
    vi.stubEnv('JOB_ALERTS', 'job-completed-successfully');
    const outcome = await new CupsDestination(settings()).print(
      { ...(await tagJob(300)), title: '-o raw; $(id)', copies: 3 },
      soon,
    );
    expect(outcome).toMatchObject({ printed: true, jobId: 'bench-7' });
    const lp = (await journal()).split('\n').find((line) => line.startsWith('lp '));
    // lp(1): -d destination, -t title, -n copies, -o option; media=Custom.WIDTHxLENGTHmm.
    expect(lp).toContain(
      'lp [-d] [bench] [-t] [-o raw; $(id)] [-n] [3] [-o] [media=Custom.100x50mm] [-o] [print-scaling=none] [-o] [print-color-mode=monochrome] [--] [',
    );
  });

  test('that list the job as aborted have it fail with the printer’s own words', async () => {
    await scriptedPrograms({ lp: takesJob, lpstat: idleQueue });
    vi.stubEnv('JOB_ALERTS', 'aborted-by-system');
    vi.stubEnv('JOB_STATUS', 'Filter failed');
    expect(await new CupsDestination(settings()).print(await tagJob(300), soon)).toEqual({
      refused: true,
      code: 'printer-job-failed',
      values: { printer: 'Desk', reasons: 'Filter failed' },
    });
  });

  test('that report a jam have it said in words', async () => {
    await scriptedPrograms({ lpstat: idleQueue });
    vi.stubEnv('ALERTS', 'media-jam-error toner-low-warning');
    const { problem, makeAndModel } = await new CupsDestination(settings()).check();
    expect([problem?.code, makeAndModel]).toEqual(['printer-media-jam', 'Bench desk']);
  });

  test('that refuse the job are quoted', async () => {
    await scriptedPrograms({ lp: `echo 'lp: Unsupported document-format' >&2; exit 1`, lpstat: idleQueue });
    expect(await new CupsDestination(settings()).print(await tagJob(300), soon)).toMatchObject({
      refused: true,
      code: 'printer-queue-failed',
      values: { reasons: 'lp: Unsupported document-format' },
    });
  });

  test('that are missing are named', async () => {
    vi.stubEnv('PATH', await testFolder());
    const { problem } = await new CupsDestination(settings()).check();
    expect(problem).toMatchObject({
      code: 'printer-queue-program-missing',
      values: { program: 'lpstat', printer: 'Desk' },
    });
  });
});

describe('a queue of Windows', () => {
  const windows = (changes: Partial<WindowsPrinting> = {}) => {
    const printed: { path: string; options: object; content: Buffer }[] = [];
    const library: WindowsPrinting = {
      getPrinters: async () => [{ deviceId: 'bench', name: 'bench' }],
      print: async (path, options) => {
        printed.push({ path, options, content: await readFile(path) });
      },
      ...changes,
    };
    return { desk: new WindowsDestination(settings(), async () => library), printed };
  };

  test('is handed the document unscaled, and nothing is claimed about its end', async () => {
    const { desk, printed } = windows();
    const job = { ...(await tagJob(300)), copies: 2 };
    expect(await desk.print(job)).toEqual({ printed: true, format: 'application/pdf', confirmed: false });
    const options = { printer: 'bench', copies: 2, scale: 'noscale', monochrome: true, silent: true };
    expect(printed[0]).toMatchObject({ options });
    expect(Buffer.compare(printed[0]!.content, Buffer.from(job.pdf))).toBe(0);
    await expect(readFile(printed[0]!.path)).rejects.toThrow('ENOENT');
  });

  test('that does not exist is refused with the names of those that do', async () => {
    const { desk } = windows({ getPrinters: async () => [{ deviceId: 'x', name: 'Front office' }] });
    expect((await desk.check()).problem).toMatchObject({
      code: 'printer-queue-unknown',
      values: { queue: 'bench', known: 'Front office' },
    });
  });

  test('that fails is quoted', async () => {
    const { desk } = windows({ print: () => Promise.reject(new Error('The spooler is not running.')) });
    expect(await desk.print(await tagJob(300))).toMatchObject({
      code: 'printer-queue-failed',
      values: { reasons: 'The spooler is not running.' },
    });
  });

  test.runIf(process.platform !== 'win32')('is not looked for on another system', async () => {
    const { problem } = await openQueue(settings(), 'win32').check();
    expect(problem?.code).toBe('printer-queue-failed');
  });
});

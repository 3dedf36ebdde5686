/** `npm start` as a process of its own, with stand-ins for the browser and for Electron's runtime that write down what they are told. */
import { type ChildProcess, spawn } from 'node:child_process';
import { chmod, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { productFolder } from '../../src/host/product-folder.ts';
import { temporaryFolder } from './small-page.ts';

const slow = 60_000;
const addressPattern = /^http:\/\/127\.0\.0\.1:\d+\/enter\?key=[\w-]{43}$/;

let folder: string;
let children: ChildProcess[];

interface Launched {
  readonly child: ChildProcess;
  lines(): readonly string[];
  readonly ended: Promise<number | null>;
}

/** No display, no browser and no Electron, but for what the test gives. */
const launch = (args: readonly string[], environment: NodeJS.ProcessEnv = {}): Launched => {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', 'src/host/launch.ts', '--data', join(folder, 'data'), '--language', 'en', ...args],
    {
      cwd: productFolder,
      env: {
        PATH: process.env.PATH,
        HOME: folder,
        XDG_CACHE_HOME: join(folder, 'cache'),
        ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'no-electron'),
        ...environment,
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  children.push(child);
  const output: Buffer[] = [];
  child.stdout.on('data', (chunk: Buffer) => output.push(chunk));
  child.stderr.on('data', (chunk: Buffer) => output.push(chunk));
  return {
    child,
    lines: () => Buffer.concat(output).toString().split('\n').slice(0, -1),
    ended: new Promise((resolve) => child.once('close', resolve)),
  };
};

/** A program that runs the given lines of JavaScript. */
const program = async (name: string, script: string): Promise<string> => {
  const path = join(folder, name);
  await mkdir(join(path, '..'), { recursive: true });
  await writeFile(path, `#!${process.execPath}\n${script}\n`);
  await chmod(path, 0o755);
  return path;
};

const writesArguments = `require('node:fs').writeFileSync(__filename + '.args', process.argv.slice(2).join('\\n'));`;
const staysOpen = 'setInterval(() => {}, 1000);';

const waitForLines = (launched: Launched, count: number) =>
  vi.waitFor(() => expect(launched.lines().length).toBeGreaterThanOrEqual(count), {
    timeout: slow,
    interval: 100,
  });

beforeEach(async () => {
  folder = await temporaryFolder();
  children = [];
});

afterEach(async () => {
  for (const child of children) if (child.exitCode === null) child.kill('SIGKILL');
  await rm(folder, { recursive: true, force: true, maxRetries: 3 });
});

describe.skipIf(process.platform === 'win32')('npm start', () => {
  test(
    'with --headless-check comes in by its own address, says so in one line, and ends well',
    async () => {
      const launched = launch(['--headless-check']);
      expect(await launched.ended, launched.lines().join('\n')).toBe(0);
      expect(launched.lines()).toHaveLength(1);
      expect(launched.lines()[0]).toMatch(
        /answers at http:\/\/127\.0\.0\.1:\d+: page \d+ characters, station empty\.$/,
      );
    },
    slow,
  );

  test(
    'without a display gives an address that lets one window in and then the next, until Ctrl-C',
    async () => {
      const launched = launch([]);
      await waitForLines(launched, 2);
      const [said = '', address = ''] = launched.lines();
      expect(said).toContain('Open this address');
      expect(address).toMatch(addressPattern);
      expect((await fetch(address, { redirect: 'manual' })).status).toBe(303);
      await waitForLines(launched, 3);
      expect(launched.lines()[2]).toMatch(addressPattern);
      expect(launched.lines()[2]).not.toBe(address);
      launched.child.kill('SIGINT');
      expect(await launched.ended).toBe(0);
    },
    slow,
  );

  test(
    'on a folder that is open already says so and ends with 1',
    async () => {
      const first = launch([]);
      await waitForLines(first, 2);
      const second = launch([]);
      expect(await second.ended).toBe(1);
      expect(second.lines()).toHaveLength(1);
      expect(second.lines()[0]).toContain(join(folder, 'data'));
    },
    slow,
  );

  test(
    'on a folder that is open already ends the browser that it began, and leaves the port of the other as it is kept',
    async () => {
      const first = launch([]);
      await waitForLines(first, 2);
      const kept = async (): Promise<string> => {
        const [window = ''] = await readdir(join(folder, 'cache', 'srl-bench'));
        return readFile(join(folder, 'cache', 'srl-bench', window, 'port'), 'utf8');
      };
      const port = await kept();
      const browser = await program(
        'browser',
        `require('node:fs').writeFileSync(__filename + '.pid', String(process.pid)); ${staysOpen}`,
      );
      const second = launch([], { DISPLAY: ':none', SRL_BENCH_BROWSER: browser });
      expect(await second.ended).toBe(1);
      expect(second.lines()).toEqual([expect.stringContaining(join(folder, 'data'))]);
      const pid = Number(await readFile(`${browser}.pid`, 'utf8'));
      expect(() => process.kill(pid, 0)).toThrow('ESRCH');
      expect(await kept()).toBe(port);
    },
    slow,
  );

  test(
    'opens a browser as an app window, keeps its address the same, and ends when the window is closed',
    async () => {
      const browser = await program('browser', `${writesArguments} setTimeout(() => {}, 1500);`);
      const environment = { DISPLAY: ':none', SRL_BENCH_BROWSER: browser };
      const ports: string[] = [];
      for (let start = 0; start < 2; start += 1) {
        const launched = launch([], environment);
        expect(await launched.ended).toBe(0);
        const [said = '', address = ''] = launched.lines();
        expect(said).toContain(browser);
        expect(address).toMatch(addressPattern);
        const args = (await readFile(`${browser}.args`, 'utf8')).split('\n');
        const shown = args.find((arg) => arg.startsWith('--app='))?.slice('--app='.length) ?? '';
        expect(shown).toMatch(addressPattern);
        expect(shown).not.toBe(address);
        expect(args.find((arg) => arg.startsWith('--user-data-dir='))).toContain(join(folder, 'cache'));
        ports.push(new URL(shown).port);
      }
      expect(ports[0]).toBe(ports[1]);
    },
    slow,
  );

  test(
    'at Ctrl-C ends the browser too',
    async () => {
      const browser = await program(
        'browser',
        `${writesArguments} ${staysOpen} require('node:fs').writeFileSync(__filename + '.pid', String(process.pid));`,
      );
      const launched = launch([], { DISPLAY: ':none', SRL_BENCH_BROWSER: browser });
      await waitForLines(launched, 2);
      const pid = Number(await vi.waitFor(() => readFile(`${browser}.pid`, 'utf8'), { timeout: 10_000 }));
      expect(process.kill(pid, 0)).toBe(true);
      launched.child.kill('SIGINT');
      expect(await launched.ended).toBe(0);
      expect(() => process.kill(pid, 0)).toThrow('ESRCH');
    },
    slow,
  );

  test(
    'prefers Electron where its runtime is, hands its windows on to it, and ends with them',
    async () => {
      const runtime = await program(
        'electron/electron',
        `${writesArguments} process.send({ open: true }); setTimeout(() => process.exit(0), 300);`,
      );
      const launched = launch(['--kiosk', '--desk'], {
        DISPLAY: ':none',
        ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'electron'),
      });
      expect(await launched.ended, launched.lines().join('\n')).toBe(0);
      expect(launched.lines()).toEqual([expect.stringContaining('in its own window')]);
      const args = (await readFile(`${runtime}.args`, 'utf8')).split('\n');
      expect(args).toContain(join(productFolder, 'dist', 'electron', 'main.js'));
      const data = join(folder, 'data');
      expect(args.slice(-7)).toEqual(['--report', '--data', data, '--language', 'en', '--kiosk', '--desk']);
    },
    slow,
  );

  test(
    'hands on the sentence with which the shell refused to open',
    async () => {
      await program(
        'electron/electron',
        `process.send({ refused: 'Close the other one first.' }, () => process.exit(1));`,
      );
      const launched = launch([], {
        DISPLAY: ':none',
        ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'electron'),
      });
      expect(await launched.ended).toBe(1);
      expect(launched.lines()).toEqual(['Close the other one first.']);
    },
    slow,
  );

  test(
    'takes the browser where Electron is there but does not run',
    async () => {
      await program('electron/electron', 'process.exit(127);');
      const browser = await program('browser', staysOpen);
      const environment = {
        DISPLAY: ':none',
        ELECTRON_OVERRIDE_DIST_PATH: join(folder, 'electron'),
        SRL_BENCH_BROWSER: browser,
      };
      const launched = launch([], environment);
      await waitForLines(launched, 2);
      expect(launched.lines()[0]).toContain(browser);
      launched.child.kill('SIGTERM');
      expect(await launched.ended).toBe(0);
    },
    slow,
  );

  test(
    'gives the address where the browser cannot be started',
    async () => {
      const browser = join(folder, 'broken');
      await writeFile(browser, '#!/nowhere/interpreter\n');
      await chmod(browser, 0o755);
      const launched = launch([], { DISPLAY: ':none', SRL_BENCH_BROWSER: browser });
      await waitForLines(launched, 2);
      expect(launched.lines()[0]).toContain('Open this address');
      launched.child.kill('SIGINT');
      expect(await launched.ended).toBe(0);
    },
    slow,
  );

  test(
    'ends with 2 and its usage for an option that it does not know',
    async () => {
      const launched = launch(['--fullscreen']);
      expect(await launched.ended).toBe(2);
      expect(launched.lines()).toEqual([expect.stringContaining('npm start --')]);
    },
    slow,
  );
});

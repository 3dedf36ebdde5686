/** Real print servers as Debian packages them, each private to a test: an IPP Everywhere printer, and a CUPS scheduler. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { requireTool } from '../support/debian-tools.ts';

/** `ippeveprinter` announces itself through avahi, which needs the system bus of D-Bus. */
const avahiIsUp = (): boolean => {
  try {
    execFileSync('avahi-daemon', ['--check'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

/** On the bus that is there, else on one of its own; a bus that ended may have left its socket behind. */
const startAvahi = (): boolean => {
  const bus = () => {
    mkdirSync('/run/dbus', { recursive: true });
    execFileSync('dbus-daemon', ['--system', '--fork', '--nopidfile'], { stdio: 'ignore' });
  };
  const avahi = () =>
    execFileSync('avahi-daemon', ['--daemonize', '--no-drop-root', '--no-chroot'], { stdio: 'ignore' });
  for (const start of [avahi, bus, avahi]) {
    if (avahiIsUp()) return true;
    try {
      start();
    } catch {
      // The next step is the remedy.
    }
  }
  return avahiIsUp();
};

/** True where `ippeveprinter` can run; where it cannot, throws when `CI` is `true`. */
export const requireIppEverywherePrinter = (): boolean => {
  if (!['ippeveprinter', 'dbus-daemon', 'avahi-daemon'].map(requireTool).every(Boolean)) return false;
  if (startAvahi()) return true;
  const sentence = 'avahi-daemon does not start: the tests with ippeveprinter do not run.';
  if (process.env.CI === 'true') throw new Error(sentence);
  console.warn(sentence);
  return false;
};

export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });

export const testFolder = async (): Promise<string> => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-printing-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
};

const stop = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) {
      resolve();
      return;
    }
    child.once('exit', () => resolve());
    child.kill('SIGKILL');
  });

const until = async (condition: () => boolean | Promise<boolean>, child: ChildProcess): Promise<void> => {
  while (!(await condition())) {
    if (child.exitCode !== null) throw new Error(`The server ended with ${child.exitCode}.`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
};

const answers = async (url: string): Promise<boolean> => {
  try {
    await fetch(url);
    return true;
  } catch {
    return false;
  }
};

export interface IppEverywherePrinter {
  readonly address: string;
  readonly port: number;
  /** The documents that the printer kept, in the order of the jobs. */
  spooled(): Promise<Buffer[]>;
  /** Opens its page for media, as a person at the printer would set what is loaded. */
  load(main: { readonly size: string; readonly sheets: number }): Promise<void>;
  /** Ends it at once, in whatever it is doing. */
  kill(): Promise<void>;
}

export interface PrinterSetup {
  readonly formats: readonly string[];
  /** A shell script that prints the file in `$1`, at once and without a trace where it is absent; what it writes to its standard error as `STATE: …` is the printer's state. */
  readonly command?: string;
  readonly port?: number;
  /** Lines of `printer-…` attributes in the form of ippeveprinter’s configuration file. */
  readonly attributes?: string;
}

export const startIppEverywherePrinter = async (setup: PrinterSetup): Promise<IppEverywherePrinter> => {
  const folder = await testFolder();
  const spool = join(folder, 'spool');
  mkdirSync(spool);
  const port = setup.port ?? (await freePort());
  const options = ['-k', '-d', spool, '-p', String(port), '-n', 'localhost', '-r', 'off'];
  const command = join(folder, 'command');
  await writeFile(command, `#!/bin/sh\n${setup.command ?? 'exit 0'}\n`);
  await chmod(command, 0o755);
  options.push('-c', command);
  if (setup.attributes === undefined) {
    options.push('-f', setup.formats.join(','));
  } else {
    const formats = ['application/octet-stream', ...setup.formats].join(',');
    const file = join(folder, 'printer.conf');
    await writeFile(file, `${setup.attributes}ATTR mimeMediaType document-format-supported ${formats}\n`);
    options.push('-a', file);
  }
  const child = spawn('ippeveprinter', [...options, `Bench ${port}`], { stdio: 'ignore' });
  onTestFinished(() => stop(child));
  await until(() => answers(`http://localhost:${port}/`), child);
  return {
    address: `ipp://localhost:${port}/ipp/print`,
    port,
    spooled: async () => {
      const names = (await readdir(spool))
        .filter((name) => /\.(pdf|pwg)$/.test(name))
        .sort((a, b) => Number.parseInt(a, 10) - Number.parseInt(b, 10));
      return Promise.all(names.map((name) => readFile(join(spool, name))));
    },
    load: async ({ size, sheets }) => {
      const main = { size1: size, type1: 'labels', level1: String(sheets) };
      const bypass = { size3: 'na_number-10_4.125x9.5in', type3: 'envelope', level3: '25' };
      const form = { ...main, ...bypass };
      await fetch(`http://localhost:${port}/media?${new URLSearchParams(form)}`);
    },
    kill: () => stop(child),
  };
};

/** True where a private CUPS scheduler can run: it needs root for its backends. */
export const requireCups = (): boolean =>
  ['cupsd', 'lpadmin', 'lp', '/usr/lib/cups/backend/socket'].map(requireTool).every(Boolean) &&
  process.getuid?.() === 0;

export interface CupsServer {
  /** For `CUPS_SERVER`. */
  readonly server: string;
  /** A queue that hands the bytes as they are to this device. */
  addQueue(name: string, device: string, ...options: string[]): void;
  run(program: string, ...args: string[]): string;
  kill(): Promise<void>;
}

export const startCups = async (): Promise<CupsServer> => {
  const folder = await testFolder();
  const port = await freePort();
  await chmod(folder, 0o755);
  const places = ['root', 'spool', 'cache', 'state', 'log'] as const;
  for (const place of places) mkdirSync(join(folder, place));
  const everybody = 'Order allow,deny\nAllow all';
  await writeFile(
    join(folder, 'cupsd.conf'),
    [
      `Listen 127.0.0.1:${port}`,
      'Browsing Off',
      'DefaultAuthType None',
      'WebInterface No',
      `<Location />\n${everybody}\n</Location>`,
      `<Location /admin>\n${everybody}\n</Location>`,
      `<Policy default>\n<Limit All>\n${everybody}\n</Limit>\n</Policy>`,
      '',
    ].join('\n'),
  );
  await writeFile(
    join(folder, 'cups-files.conf'),
    [
      `ServerRoot ${folder}/root`,
      `RequestRoot ${folder}/spool`,
      `CacheDir ${folder}/cache`,
      `StateDir ${folder}/state`,
      `TempDir ${folder}/state`,
      `ErrorLog ${folder}/log/error`,
      `AccessLog ${folder}/log/access`,
      'User lp',
      'Group lp',
      'SystemGroup root',
      '',
    ].join('\n'),
  );
  const child = spawn(
    'cupsd',
    ['-f', '-c', join(folder, 'cupsd.conf'), '-s', join(folder, 'cups-files.conf')],
    { stdio: 'ignore' },
  );
  onTestFinished(() => stop(child));
  await until(() => answers(`http://127.0.0.1:${port}/`), child);
  const server = `127.0.0.1:${port}`;
  const run = (program: string, ...args: string[]) =>
    execFileSync(program, args, {
      encoding: 'utf8',
      env: { ...process.env, CUPS_SERVER: server },
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  return {
    server,
    run,
    addQueue: (name, device, ...options) => {
      run('lpadmin', '-p', name, '-E', '-v', device, '-m', 'raw', ...options);
    },
    kill: () => stop(child),
  };
};

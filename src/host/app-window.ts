/** The station's page in a window of its own, in a browser that keeps nothing of ours among the person's own things. */
import { type ChildProcess, spawn } from 'node:child_process';
import { access, mkdir, mkdtemp, readlink, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hasGraphicsDevice, isRootOnLinux } from './display.ts';

export interface AppWindow {
  /** Resolves when the window is closed, with false where the program could not be started at all. */
  readonly closed: Promise<boolean>;
  /** Resolves when every process of it has ended. */
  close(): Promise<void>;
}

/** `profile` is a folder for the browser's own files; another one is used where a browser that was left over holds it. */
export const openAppWindow = async (
  browser: string,
  address: string,
  profile: string,
): Promise<AppWindow> => {
  const free = !(await isHeld(profile));
  const folder = free ? profile : await mkdtemp(join(tmpdir(), 'srl-bench-window-'));
  await mkdir(folder, { recursive: true });
  const child = spawn(browser, await switchesFor(address, folder), {
    stdio: 'ignore',
    detached: process.platform !== 'win32',
  });
  const ended = new Promise<boolean>((resolve) => {
    child.once('error', () => resolve(false));
    child.once('exit', () => resolve(true));
  });
  const closed = ended.then(async (started) => {
    if (!free) await rm(folder, { recursive: true, force: true }).catch(() => undefined);
    return started;
  });
  return {
    closed,
    close: async () => {
      signalFamily(child, 'SIGTERM');
      const lastResort = setTimeout(() => signalFamily(child, 'SIGKILL'), patienceMs);
      await closed;
      clearTimeout(lastResort);
    },
  };
};

/** How long a browser may take to put its files in order. */
const patienceMs = 4000;

/** While it runs, a browser holds its profile: on Linux and macOS by a link that names its process, on Windows by a file. */
const isHeld = async (profile: string): Promise<boolean> => {
  if (process.platform === 'win32') {
    return access(join(profile, 'lockfile')).then(
      () => true,
      () => false,
    );
  }
  const holder = await readlink(join(profile, 'SingletonLock')).catch(() => '');
  const pid = Number(/-(\d+)$/.exec(holder)?.[1] ?? 0);
  return pid > 0 && isRunning(pid);
};

const isRunning = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

/**
 * Source of the switches and features: the lists in Chromium's `chrome/common/chrome_switches.cc`, `content/public/common/
 * content_features.cc` and their companions (from memory). There is one page, of this PC: no process is kept for a second one,
 * and on Linux, where the network has no sandbox of its own to lose, none for the network (0.15 s of the start).
 */
const switchesFor = async (address: string, profile: string): Promise<readonly string[]> => [
  `--app=${address}`,
  `--user-data-dir=${profile}`,
  '--window-size=1366,768',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-breakpad',
  '--disable-client-side-phishing-detection',
  '--disable-component-extensions-with-background-pages',
  '--disable-component-update',
  '--disable-default-apps',
  '--disable-domain-reliability',
  '--disable-extensions',
  '--disable-sync',
  '--no-pings',
  '--disable-features=Translate,SpareRendererForSitePerProcess',
  ...(process.platform === 'linux' ? ['--enable-features=NetworkServiceInProcess2'] : []),
  '--password-store=basic',
  ...((await hasGraphicsDevice()) ? [] : ['--disable-gpu']),
  ...(isRootOnLinux() ? ['--no-sandbox', '--test-type', '--disable-dev-shm-usage'] : []),
];

/** A browser is many processes; on POSIX they share the group of the first. */
const signalFamily = (child: ChildProcess, signal: NodeJS.Signals): void => {
  if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  try {
    if (process.platform === 'win32') child.kill(signal);
    else process.kill(-child.pid, signal);
  } catch {
    child.kill(signal);
  }
};

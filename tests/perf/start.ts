/**
 * From the start of the launcher's process to the scan field being ready in its window: with the invented depot, and with
 * 100,000 devices. Page and bundles are built and the browser's files are there, as on any day but the first.
 */
import { once } from 'node:events';
import { mkdtemp, open, readdir, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openAppWindow } from '../../src/host/app-window.ts';
import { type Benchmark, type Figure, timesOf } from './measurement.ts';
import { loadDemo, registerFolder } from './register-folder.ts';
import { openDisplay } from './start/display.ts';
import {
  debuggedBrowser,
  forgetPort,
  launchWindow,
  makeReadyToStart,
  readyIn,
} from './start/launched-window.ts';

export const peer = 'the same browser with a page of one line, on the same display';

const starts = 7;
const devices = 100_000;

export const benchmark: Benchmark = async () => {
  await makeReadyToStart();
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-start-'));
  const display = await openDisplay();
  try {
    const demo = join(folder, 'demo');
    await loadDemo(demo);
    const large = await registerFolder(devices, 1);
    for (const written of [demo, large.folder]) await bringToDisk(written);
    const bare = await bareStarts(folder, display.name);
    return [
      { name: 'browser alone with a page of one line, median', value: bare, unit: 'ms' },
      ...(await startsOver('the demo', demo, folder, display.name, 2000)),
      ...(await startsOver('100,000 devices', large.folder, folder, display.name, 3000)),
    ];
  } finally {
    await display.close();
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  }
};

/** The system would write what was just made half a minute later, in the midst of what is timed. */
const bringToDisk = async (folder: string): Promise<void> => {
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = await open(join(entry.parentPath, entry.name), 'r+');
    await file.sync();
    await file.close();
  }
};

/** One start more than counts goes before them: it makes the files of the browser. */
const startsOver = async (
  what: string,
  data: string,
  folder: string,
  display: string,
  budget: number,
): Promise<readonly Figure[]> => {
  const around = await mkdtemp(join(folder, 'around-'));
  const times: number[] = [];
  for (let start = 0; start <= starts; start += 1) {
    const window = await launchWindow({ data, around, display });
    await window.close();
    if (start > 0) times.push(window.readyMs);
  }
  const { medianMs, longestMs, noise } = timesOf(times);
  const name = `window ready with ${what}`;
  return [
    { name: `${name}, median`, value: medianMs, unit: 'ms', budget, noise },
    { name: `${name}, longest of ${starts}`, value: longestMs, unit: 'ms', budget },
  ];
};

/** What a window costs of which nothing is ours. */
const bareStarts = async (folder: string, display: string): Promise<number> => {
  const around = await mkdtemp(join(folder, 'around-'));
  const profile = join(around, 'profile');
  const browser = await debuggedBrowser(around);
  const page = "<!doctype html><title>.</title><p>.</p><script>performance.mark('scan-field')</script>";
  const server = createServer((_request, response) => response.end(page)).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  const own = process.env.DISPLAY;
  process.env.DISPLAY = display;
  const times: number[] = [];
  try {
    for (let start = 0; start <= starts; start += 1) {
      await forgetPort(profile);
      const startedAt = Date.now();
      const window = await openAppWindow(browser, `http://127.0.0.1:${port}`, profile);
      const { readyAt } = await readyIn(profile);
      await window.close();
      if (start > 0) times.push(readyAt - startedAt);
    }
  } finally {
    if (own === undefined) delete process.env.DISPLAY;
    else process.env.DISPLAY = own;
    server.close();
  }
  return timesOf(times).medianMs;
};

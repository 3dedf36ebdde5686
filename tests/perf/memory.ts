/** What a station and its window hold when they have started and a few screens were looked at: the demo, and 100,000 devices. */
import { execFileSync } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Benchmark, Figure } from './measurement.ts';
import { loadDemo, registerFolder } from './register-folder.ts';
import { openDisplay } from './start/display.ts';
import { launchWindow, makeReadyToStart } from './start/launched-window.ts';

export const peer = 'Node by itself, which does nothing; the page has none';

const screens = ['#/register', '#/', '#/register', '#/'];
/** Long enough for a screen to come, with all that it asks the station for. */
const lookMs = 1500;

export const benchmark: Benchmark = async () => {
  await makeReadyToStart();
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-memory-'));
  const display = await openDisplay();
  try {
    const demo = join(folder, 'demo');
    await loadDemo(demo);
    const large = await registerFolder(100_000, 1);
    return [
      { name: 'Node by itself', value: bareNodeMb(), unit: 'MB' },
      ...(await heldWith('the demo', demo, folder, display.name)),
      ...(await heldWith('100,000 devices', large.folder, folder, display.name)),
    ];
  } finally {
    await display.close();
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  }
};

const heldWith = async (
  what: string,
  data: string,
  folder: string,
  display: string,
): Promise<readonly Figure[]> => {
  const around = await mkdtemp(join(folder, 'around-'));
  const { page, pid, close } = await launchWindow({ data, around, display });
  try {
    for (const hash of screens) {
      await page.evaluate((next) => {
        window.location.hash = next;
      }, hash);
      await page.waitForTimeout(lookMs);
    }
    return [
      { name: `station with ${what}, most`, value: await mostMb(pid), unit: 'MB', budget: 250 },
      { name: `page with ${what}, scripts`, value: await pageHeapMb(page), unit: 'MB' },
    ];
  } finally {
    await close();
  }
};

/** The high-water mark of resident memory (`VmHWM`, proc(5)); in thousands of kilobytes, as `desk` gives it. */
const mostMb = async (pid: number): Promise<number> => {
  const status = await readFile(`/proc/${pid}/status`, 'utf8');
  return Number(/^VmHWM:\s+(\d+)/m.exec(status)?.[1] ?? 0) / 1000;
};

const pageHeapMb = async (page: Page): Promise<number> => {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  return usedSize / 1e6;
};

const bareNodeMb = (): number => {
  const kilobytes = execFileSync(process.execPath, ['-p', 'process.resourceUsage().maxRSS'], {
    encoding: 'utf8',
  });
  return Number(kilobytes) / 1000;
};

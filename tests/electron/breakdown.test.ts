/** What a person finds after a breakdown, a hang, a sleep and an end in the middle of the work, with pages that really break down. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openStation } from '../../src/station/station.ts';
import { WedgeScanner } from '../e2e/wedge-scanner.ts';
import { hasBrowser } from '../support/browser.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import { demo, demoFolderOfToday } from '../support/station-fixture.ts';
import { administrator, ask, launchForShell, ShellRun, setUp, soon } from './shell-run.ts';
import * as standIn from './stand-in/electron.ts';
import type { StandIn } from './stand-in/state.ts';

vi.setConfig({ testTimeout: 120_000 });

let browser: Browser;
let run: ShellRun;
let electron: StandIn;

beforeAll(async () => {
  if (hasBrowser()) browser = await launchForShell();
}, 120_000);

afterAll(() => browser?.close());

interface Walked {
  readonly inspection: number;
  readonly answers: Readonly<Record<string, unknown>>;
  readonly next: string;
}

/** An inspection with so many answers on its screen, or with all of them. */
const walkTo = async (page: Page, count?: number): Promise<Walked> => {
  await ask(page, 'session.sign-in', { badge: demo.inspector });
  const { devices } = await ask(page, 'device.list', { standing: ['new'], limit: 1 });
  let { inspection } = await ask(page, 'inspection.start', { benchId: devices[0]!.benchId });
  for (const key of inspection.checks.slice(0, count)) {
    const check = procedure.checks.find((each) => each.key === key)!;
    const answer = goodAnswer(check, inspection.device.ratedLengthM);
    ({ inspection } = await ask(page, 'inspection.answer', {
      inspection: inspection.inspection,
      check: key,
      answer,
    }));
  }
  await page.evaluate((number) => {
    window.location.hash = `#/bench/${number}`;
  }, inspection.inspection);
  return {
    inspection: inspection.inspection,
    answers: inspection.answers,
    next: inspection.checks[count ?? 0] ?? '',
  };
};

const criterionOf = (page: Page, key: string): Locator =>
  page.getByText(procedure.checks.find((check) => check.key === key)!.criterion.en).first();

const crash = async (): Promise<Page> => {
  const before = run.bench.webContents.page;
  run.bench.webContents.forcefullyCrashRenderer();
  return newPage(before);
};

const newPage = async (before: Page): Promise<Page> => {
  await soon(() => {
    expect(run.bench.webContents.page).not.toBe(before);
    expect(run.bench.webContents.isGone).toBe(false);
  });
  const { page } = run.bench.webContents;
  await page.waitForFunction(() => (document.getElementById('root')?.textContent ?? '').length > 20);
  return page;
};

const logText = (): Promise<string> => readFile(join(run.folder, 'faults.log'), 'utf8').catch(() => '');

const openWithAdministrator = async (): Promise<Page> => {
  const page = await run.open();
  await setUp(page);
  await ask(page, 'session.sign-in', { badge: administrator.badge });
  return page;
};

describe.runIf(hasBrowser())('the shell', () => {
  beforeEach(async () => {
    run = await ShellRun.prepare(browser);
    ({ electron } = run);
  });

  const openDemo = async (): Promise<Page> => {
    await run.close();
    run = await ShellRun.prepare(browser, await demoFolderOfToday());
    ({ electron } = run);
    return run.open();
  };

  afterEach(() => run.close());

  test('goes on with a walk after its page broke down: same place, every answer, and a fresh badge scan', async () => {
    const first = await openDemo();
    const walked = await walkTo(first, 7);
    await criterionOf(first, walked.next).waitFor();
    const page = await crash();
    expect(page.url()).toMatch(new RegExp(`#/bench/${walked.inspection}$`));
    expect(await ask(page, 'station.status', {})).not.toHaveProperty('person');
    await page.getByText('The window broke down and was loaded anew.').waitFor();
    const refused = await page.evaluate(
      (inspection) => window.srlBench?.call('inspection.show', { inspection }, 'en'),
      walked.inspection,
    );
    expect(refused).toMatchObject({ ok: false, error: { code: 'sign-in-needed' } });

    await new WedgeScanner(page, await page.context().newCDPSession(page)).type(demo.inspector);
    await criterionOf(page, walked.next).waitFor();
    expect(await page.getByText('The window broke down and was loaded anew.').count()).toBe(0);
    const { inspection } = await ask(page, 'inspection.show', { inspection: walked.inspection });
    expect(inspection.answers).toEqual(walked.answers);
    await soon(async () => {
      const log = await logText();
      expect(log).toMatch(/ window-gone crashed \d+\n/);
      expect(log).toMatch(/ window-loaded-anew\n/);
      expect(log).not.toContain(demo.inspector);
    });
  });

  test('loads a page anew that hangs, when a person says so', async () => {
    const page = await openWithAdministrator();
    page
      .evaluate(() => {
        for (;;);
      })
      .catch(() => undefined);
    run.bench.emit('unresponsive');
    run.bench.emit('unresponsive');
    await soon(() => expect(electron.boxes).toHaveLength(1));
    electron.openBox?.choose('Load anew');
    const again = await newPage(page);
    expect(await ask(again, 'station.status', {})).not.toHaveProperty('person');
  });

  test('stops loading a page anew that breaks down again and again, and says what to do', async () => {
    await run.open();
    for (let time = 0; time < 3; time += 1) await crash();
    run.bench.webContents.forcefullyCrashRenderer();
    await soon(() => expect(electron.openBox?.options.message).toBe('The window keeps breaking down.'));
    expect(run.bench.webContents.isGone).toBe(true);
    electron.openBox?.choose('Try once more');
    await soon(() => expect(run.bench.webContents.isGone).toBe(false));
  });

  test('answers a signature that was begun before it ends, and nothing that is begun after', async () => {
    const page = await openDemo();
    const walked = await walkTo(page);
    const answers = new Map<unknown, unknown>();
    const carry = electron.handlers.get('station:call')!;
    electron.handlers.set('station:call', async (event, request: { readonly operation: string }) => {
      const answer: unknown = await carry(event, request);
      answers.set(request.operation, answer);
      return answer;
    });
    /** The cross is pressed while the signature is on its way. */
    electron.handlers.set('test:close', () => run.bench.close());
    /** The page goes with the window, perhaps before it has every answer. */
    page
      .evaluate(
        async ([inspection, pin]) => {
          const call = (operation: string, input: unknown) => window.srlBench?.call(operation, input, 'en');
          const { standInInvoke } = window as unknown as { standInInvoke(name: string): Promise<unknown> };
          const signing = call('inspection.sign', { inspection, pin });
          await standInInvoke('test:close');
          await Promise.all([signing, call('session.sign-out', {})]);
        },
        [walked.inspection, demo.pin] as const,
      )
      .catch(() => undefined);
    expect(await standIn.exited()).toBe(0);
    const { inspection } = walked;
    expect(answers.get('inspection.sign')).toMatchObject({
      ok: true,
      output: { inspection: { inspection } },
    });
    expect(answers.get('session.sign-out')).toMatchObject({ ok: false, error: { code: 'shell-ending' } });

    const again = await openStation({ folder: run.folder });
    if (isRefusal(again)) throw new Error(again.code);
    await again.call({
      session: 's',
      operation: 'session.sign-in',
      input: { badge: demo.inspector },
      language: 'en',
    });
    const kept = await again.call({
      session: 's',
      operation: 'inspection.show',
      input: { inspection: walked.inspection },
      language: 'en',
    });
    expect(kept).toMatchObject({ ok: true, output: { inspection: { state: 'signed' } } });
    await again.close();
  });
});

describe.runIf(hasBrowser())('an open shell', () => {
  let page: Page;

  /** One for all of them; the last one ends it. */
  beforeAll(async () => {
    run = await ShellRun.prepare(browser);
    ({ electron } = run);
    page = await openWithAdministrator();
  }, 120_000);

  afterAll(() => run?.close());

  test('keeps who is signed in when the page is only loaded anew', async () => {
    await page.reload();
    expect(await ask(page, 'station.status', {})).toMatchObject({ person: { name: administrator.name } });
  });

  test('takes the question away when a page that hung answers again', async () => {
    run.bench.emit('unresponsive');
    await soon(() => expect(electron.openBox).toBeDefined());
    run.bench.emit('responsive');
    expect(electron.openBox).toBeUndefined();
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(run.bench.webContents.page).toBe(page);
  });

  test('asks for everything on the screen anew when the PC wakes up, and says that it runs on its battery', async () => {
    await page.reload();
    await page.getByText(administrator.name).first().waitFor();
    const asked = await page.evaluate(() => {
      const operations: string[] = [];
      const told = window as unknown as {
        standInInvoke(channel: string, request: unknown): Promise<unknown>;
      };
      const invoke = told.standInInvoke;
      told.standInInvoke = (channel, request) => {
        operations.push(JSON.stringify(request));
        return invoke(channel, request);
      };
      (window as unknown as { operations: string[] }).operations = operations;
      return operations.length;
    });
    expect(asked).toBe(0);
    const asksForStatus = (): Promise<boolean> =>
      page.evaluate(() =>
        (window as unknown as { operations: string[] }).operations.some((each) =>
          each.includes('station.status'),
        ),
      );
    expect(await asksForStatus()).toBe(false);
    /** A page that has only just come up may not listen yet. */
    await soon(async () => {
      standIn.powerMonitor.emit('resume');
      expect(await asksForStatus()).toBe(true);
    });
    standIn.powerMonitor.emit('on-battery');
    await page.getByText('This PC runs on its battery.').waitFor();
    standIn.powerMonitor.emit('on-ac');
    await page.getByText('This PC runs on its battery.').waitFor({ state: 'detached' });
  });

  test('does nothing for anybody after the PC slept until a badge is scanned', async () => {
    standIn.powerMonitor.emit('suspend');
    const refused = await page.evaluate(() => window.srlBench?.call('device.list', {}, 'en'));
    expect(refused).toMatchObject({ ok: false, error: { code: 'session-locked' } });
    standIn.powerMonitor.emit('resume');
    await ask(page, 'session.sign-in', { badge: administrator.badge });
    await ask(page, 'device.list', {});
  });

  test('ends in order at SIGTERM and gives the data folder free', async () => {
    process.emit('SIGTERM');
    expect(await standIn.exited()).toBe(0);
    const again = await openStation({ folder: run.folder });
    if (isRefusal(again)) throw new Error(again.code);
    await again.close();
  });
});

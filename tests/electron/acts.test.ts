/** What the page asks of the shell, what the menu does, and what is kept of the windows, over pages of a real Chromium. */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { windowFolder } from '../../src/host/data-folder.ts';
import { hasBrowser } from '../support/browser.ts';
import { administrator, ask, launchForShell, ShellRun, setUp, soon } from './shell-run.ts';
import * as standIn from './stand-in/electron.ts';
import { itemsIn, type StandIn } from './stand-in/state.ts';

vi.setConfig({ testTimeout: 60_000 });

let browser: Browser;
let run: ShellRun;
let electron: StandIn;

const pdfBase64 = Buffer.from('%PDF-1.7 a').toString('base64');

beforeAll(async () => {
  if (hasBrowser()) browser = await launchForShell();
}, 120_000);

afterAll(() => browser?.close());

describe.runIf(hasBrowser())('an open shell', () => {
  let page: Page;

  /** One for all of them; the last one ends it. */
  beforeAll(async () => {
    run = await ShellRun.prepare(browser);
    ({ electron } = run);
    page = await run.open();
  }, 120_000);

  afterAll(() => run?.close());

  test('refuses an act that it does not know, and any act of a frame inside the page', async () => {
    const refused = { ok: false, why: 'refused' };
    for (const act of [{ act: 'run' }, { act: 'speak', language: 'xx' }, { act: 'look', more: 1 }, null, 7])
      expect(await page.evaluate((asked) => window.srlBench?.act(asked as never), act)).toEqual(refused);
    await page.evaluate(() => document.body.append(document.createElement('iframe')));
    const inner = await soon(() => {
      const frame = page.frames()[1];
      if (frame === undefined) throw new Error('no frame yet');
      return frame;
    });
    const answer = await inner.evaluate(() =>
      (window as unknown as { standInInvoke(...args: unknown[]): Promise<unknown> }).standInInvoke(
        'shell:act',
        {
          act: 'open-desk',
        },
      ),
    );
    expect(answer).toEqual(refused);
    expect(electron.windows).toHaveLength(1);
  });

  test('prints the page through the dialog of the system, and takes no closed dialog for a print', async () => {
    const print = () => page.evaluate(() => window.srlBench?.act({ act: 'print-page' }));
    const outcomes = [
      [true, '', { ok: true }],
      [false, 'Print job canceled', { ok: false, why: 'canceled' }],
      [false, 'Invalid printer settings', { ok: false, why: 'failed' }],
    ] as const;
    for (const [index, [success, reason, answer]] of outcomes.entries()) {
      const printed = print();
      await soon(() => expect(electron.prints).toHaveLength(index + 1));
      expect(electron.prints[index]?.options?.silent).toBe(false);
      electron.prints[index]?.answer(success, reason);
      expect(await printed).toEqual(answer);
    }
  });

  test('opens an address outside only where it is on the list, and after a person said so', async () => {
    const listed = 'https://www.osha.gov/laws-regs/regulations/standardnumber/1910/1910.140';
    const asked: string[] = [];
    run.bench.webContents.on('stand-in-asked-to-open', (action: string) => asked.push(action));
    for (const address of [
      `${listed}?a=1`,
      listed.replace('https:', 'http:'),
      'https://www.osha.gov/',
      'https://elsewhere.invalid/',
    ])
      await page.evaluate((to) => void window.open(to), address);
    await soon(() => expect(asked).toHaveLength(4));
    expect(electron.boxes).toEqual([]);
    const entry = '29 CFR 1910.140, personal fall protection systems …';
    electron.choose(entry);
    await soon(() => expect(electron.openBox?.options.detail).toContain(listed));
    electron.openBox?.choose('Stay here');
    electron.choose(entry);
    await soon(() => expect(electron.boxes).toHaveLength(2));
    expect(electron.openedAddresses).toEqual([]);
    electron.openBox?.choose('Open');
    await soon(() => expect(electron.openedAddresses).toEqual([listed]));
  });

  test('has its menu in the language that the page speaks, and changes it with the page', async () => {
    const labels = () => electron.menu.map(({ label }) => label);
    await soon(() => expect(labels()).toContain('File'));
    await page.getByRole('button', { name: 'Español' }).click();
    await soon(() => expect(labels()).toEqual(['Archivo', 'Edición', 'Ver', 'Ventana', 'Ayuda']));
    expect(
      itemsIn(electron.menu).some(
        ({ label }) => label === 'Ocupar la pantalla (se sale con Ctrl+Shift+F11) …',
      ),
    ).toBe(true);
    await page.getByRole('button', { name: 'English' }).click();
    await soon(() => expect(labels()).toContain('File'));
  });

  test('opens the desk in a window of its own, in which nobody is signed in, once', async () => {
    await setUp(page);
    await ask(page, 'session.sign-in', { badge: administrator.badge });
    electron.choose('Desk in a window of its own');
    await soon(() => expect(electron.windows[1]?.isShown).toBe(true));
    const desk = electron.windows[1]!.webContents.page;
    expect(desk.url()).toMatch(/#\/desk$/);
    expect(await ask(desk, 'station.status', {})).not.toHaveProperty('person');
    await ask(desk, 'session.sign-out', {});
    expect(await ask(page, 'station.status', {})).toMatchObject({ person: { name: administrator.name } });
    await page.evaluate(() => window.srlBench?.act({ act: 'open-desk' }));
    expect(electron.windows).toHaveLength(2);
    expect(electron.windows[1]?.focusCount).toBe(1);
    await electron.windows[1]?.close();
    expect(electron.exitCode).toBeUndefined();
  });

  test('opens the desk from a second start that asks for it', async () => {
    standIn.app.emit('second-instance', {}, ['--desk']);
    await soon(() => expect(electron.windows[1]?.isShown).toBe(true));
    await electron.windows[1]?.close();
  });

  test('has the PC show a PDF of the page, and refuses what is none and names that are paths', async () => {
    const act = (fileName: string, content: string) =>
      page.evaluate(
        ([name, bytes]) => window.srlBench?.act({ act: 'open-pdf', fileName: name!, pdfBase64: bytes! }),
        [fileName, content],
      );
    expect(await act('command-sheet.pdf', pdfBase64)).toEqual({ ok: true });
    const [path] = electron.openedPaths;
    expect(await readFile(path!, 'utf8')).toBe('%PDF-1.7 a');
    expect(path!.startsWith(windowFolder(run.folder))).toBe(true);
    const refused = { ok: false, why: 'refused' };
    for (const name of ['../a.pdf', 'a/b.pdf', 'a.exe', 'a.pdf.exe', '.pdf', 'C:\\a.pdf', 'a\u0000.pdf'])
      expect(await act(name, pdfBase64), name).toEqual(refused);
    expect(await act('a.pdf', Buffer.from('MZ').toString('base64'))).toEqual(refused);
    expect(electron.openedPaths).toHaveLength(1);
    await run.bench.close();
    await standIn.exited();
    await expect(readFile(path!)).rejects.toThrow('ENOENT');
  });
});

describe.runIf(hasBrowser())('a shell', () => {
  beforeEach(async () => {
    run = await ShellRun.prepare(browser);
    ({ electron } = run);
  });

  afterEach(() => run.close());

  test('fills the screen with --kiosk, stays open when its cross is pressed, and is left by its keys alone', async () => {
    await run.open('--kiosk');
    await soon(() => expect(run.bench.isKiosk).toBe(true));
    expect(run.bench.hasMenuBar).toBe(false);
    expect(await run.bench.close()).toBe(false);
    await soon(() => expect(electron.openBox?.options.detail).toContain('Ctrl+Shift+F11'));
    electron.openBox?.choose('OK');
    standIn.app.quit();
    await soon(() => expect(electron.boxes).toHaveLength(2));
    electron.openBox?.choose('OK');
    expect(electron.exitCode).toBeUndefined();
    run.bench.minimise();
    expect(run.bench.isMinimized()).toBe(false);
    const strike = (control: boolean, shift: boolean) =>
      run.bench.webContents.emit(
        'before-input-event',
        { preventDefault: () => undefined },
        { type: 'keyDown', key: 'F11', control, shift, alt: false, meta: false, isAutoRepeat: false },
      );
    strike(true, false);
    strike(false, true);
    strike(false, false);
    expect(run.bench.isKiosk).toBe(true);
    strike(true, true);
    expect(run.bench.isKiosk).toBe(false);
    expect(run.bench.hasMenuBar).toBe(true);
    expect(await run.bench.close()).toBe(true);
    expect(await standIn.exited()).toBe(0);
  });

  test('comes up where it was, and where it can be seen when that display is gone', async () => {
    const file = join(windowFolder(run.folder), 'windows.json');
    electron.displays = [
      { x: 0, y: 0, width: 1920, height: 1040 },
      { x: 1920, y: 0, width: 1280, height: 984 },
    ];
    await run.open();
    const moved = { x: 1940, y: 20, width: 1200, height: 800 };
    run.bench.moveTo(moved);
    await soon(async () =>
      expect(JSON.parse(await readFile(file, 'utf8'))).toMatchObject({ bench: { bounds: moved } }),
    );
    const folder = run.folder;
    await run.bench.close();
    await standIn.exited();
    const kept = await readFile(file, 'utf8');

    for (const [displays, place] of [
      [electron.displays, moved],
      [[{ x: 0, y: 0, width: 1366, height: 728 }], { x: 83, y: 0, width: 1200, height: 728 }],
    ] as const) {
      const again = await ShellRun.prepare(browser, folder);
      again.electron.displays = displays;
      await mkdir(windowFolder(folder), { recursive: true });
      await writeFile(file, kept);
      await again.open();
      expect(again.bench.options).toMatchObject(place);
      standIn.powerMonitor.emit('shutdown');
      await standIn.exited();
      await again.electron.context?.close();
    }
  });
});

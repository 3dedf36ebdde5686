/** The page's way to the desktop shell: the same functions in a browser window, where there is none. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import {
  callThroughShell,
  isInShell,
  onShellNews,
  openPdfInShell,
  printPage,
  shellState,
  tellLanguage,
} from '../../renderer/station/shell-bridge.ts';
import type { ShellAct } from '../../src/station/shell-bridge.ts';

afterEach(() => vi.unstubAllGlobals());

/** What a window has of all this: its own print, and a shell where there is one. */
const stubWindow = (act?: (asked: ShellAct) => Promise<unknown>) => {
  const print = vi.fn();
  const asked: ShellAct[] = [];
  const bridge = {
    call: async (operation: string) => ({ ok: true, output: operation }),
    act: (each: ShellAct) => {
      asked.push(each);
      return act?.(each);
    },
    onNews: vi.fn(),
  };
  vi.stubGlobal('window', { print, ...(act === undefined ? {} : { srlBench: bridge }) });
  return { print, asked, bridge };
};

describe('in a browser window', () => {
  test('a call has another carrier, the page is printed by the browser, and nothing is known of a shell', async () => {
    const { print } = stubWindow();
    expect(isInShell()).toBe(false);
    expect(callThroughShell('station.status', {}, 'en')).toBeUndefined();
    await printPage();
    expect(print).toHaveBeenCalledTimes(1);
    expect(await openPdfInShell('', 'a.pdf')).toBe(false);
    expect(await shellState()).toBeUndefined();
    expect(() => {
      onShellNews(() => undefined);
      tellLanguage('es');
    }).not.toThrow();
  });
});

describe('in the shell', () => {
  test('a call and its language go through it', async () => {
    stubWindow(async () => ({ ok: true }));
    expect(await callThroughShell('station.status', {}, 'en')).toEqual({
      ok: true,
      output: 'station.status',
    });
  });

  test.each([{ ok: true }, { ok: false, why: 'canceled' }])(
    'the page is printed by its dialog alone, whatever comes of it: %o',
    async (answer) => {
      const { print, asked } = stubWindow(async () => answer);
      await printPage();
      expect(asked).toEqual([{ act: 'print-page' }]);
      expect(print).not.toHaveBeenCalled();
    },
  );

  test.each([
    [true, async () => ({ ok: true })],
    [false, async () => ({ ok: false, why: 'refused' })],
    [
      false,
      async () => {
        throw new Error('gone');
      },
    ],
  ])('a PDF counts as shown only where it says so: %s', async (isShown, act) => {
    const { asked } = stubWindow(act);
    expect(await openPdfInShell('JVBERi0=', 'a.pdf')).toBe(isShown);
    expect(asked).toEqual([{ act: 'open-pdf', fileName: 'a.pdf', pdfBase64: 'JVBERi0=' }]);
  });

  test('says how the PC and the window are, and nothing where it refuses to', async () => {
    stubWindow(async () => ({ wasRecovered: true, onBattery: false }));
    expect(await shellState()).toEqual({ wasRecovered: true, onBattery: false });
    stubWindow(async () => ({ ok: false, why: 'refused' }));
    expect(await shellState()).toBeUndefined();
  });
});

/** The menu: every entry in both languages, and no key that a scanner sends or a screen of ours uses. */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { menuTemplate as Template } from '../../electron/menu.ts';
import { commandOfKey } from '../../renderer/screens/bench/shortcut.ts';
import { wordsIn } from '../../src/host/words.ts';
import * as standIn from './stand-in/electron.ts';
import { itemsIn } from './stand-in/state.ts';

let menuTemplate: typeof Template;

beforeEach(async () => {
  vi.doMock('electron', () => standIn);
  ({ menuTemplate } = await import('../../electron/menu.ts'));
});

const acts = {
  openDesk: vi.fn(),
  print: vi.fn(),
  loadAnew: vi.fn(),
  fillScreen: vi.fn(),
  openLink: vi.fn(),
  showAbout: vi.fn(),
  end: vi.fn(),
};

const platforms = ['win32', 'linux', 'darwin'] as const;

const entries = (language: 'en' | 'es', platform: NodeJS.Platform) =>
  itemsIn(menuTemplate(wordsIn(language), acts, platform)).filter(({ type }) => type !== 'separator');

describe.each(platforms)('the menu on %s', (platform) => {
  test('has the same entries in both languages, each with words of its own', () => {
    const english = entries('en', platform);
    const spanish = entries('es', platform);
    expect(english.length).toBeGreaterThan(15);
    expect(spanish.map(({ role, accelerator }) => [role, accelerator])).toEqual(
      english.map(({ role, accelerator }) => [role, accelerator]),
    );
    const same = english
      .filter(({ label }, index) => label === spanish[index]?.label)
      .map(({ label }) => label);
    expect(same).toEqual(platform === 'darwin' ? ['SRL Bench'] : []);
    for (const { label } of [...english, ...spanish]) expect(label).toMatch(/\S/);
  });

  test('has every entry do something', () => {
    for (const { role, click, submenu, label } of entries('en', platform))
      expect(role !== undefined || click !== undefined || submenu !== undefined, label).toBe(true);
  });

  test('names no key twice', () => {
    const keys = entries('en', platform).flatMap(({ accelerator }) => accelerator ?? []);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

/** Scanners send control characters as Ctrl and a letter or a bracket, and codes as Alt and digits. */
test.each(['win32', 'linux'] as const)(
  'the menu on %s takes no key that a scanner sends or a screen uses',
  (platform) => {
    const items = entries('en', platform);
    for (const { role, registerAccelerator, label } of items.filter(({ role }) => role !== undefined))
      expect(registerAccelerator, `${role}: ${label}`).toBe(false);
    const keys = items
      .filter(({ role }) => role === undefined)
      .flatMap(({ accelerator }) => accelerator ?? []);
    expect(keys).toEqual(['F9', 'F8', 'F5', 'F11']);
    for (const key of keys) expect(commandOfKey(key)).toBeUndefined();
  },
);

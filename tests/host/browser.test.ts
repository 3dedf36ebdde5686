import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findBrowser, type Machine } from '../../src/host/browser.ts';
import { hasDisplay } from '../../src/host/display.ts';

const machine = (
  platform: NodeJS.Platform,
  environment: NodeJS.ProcessEnv,
  programs: readonly string[],
): Machine => ({ platform, environment, isProgram: (path) => Promise.resolve(programs.includes(path)) });

describe.skipIf(process.platform === 'win32')('a browser is found', () => {
  test('on the path of Linux, Chromium before the others', async () => {
    const programs = ['/usr/bin/google-chrome', '/opt/bin/chromium'];
    expect(await findBrowser(machine('linux', { PATH: '/usr/bin:/opt/bin' }, programs))).toBe(
      '/opt/bin/chromium',
    );
  });

  test('among the applications of macOS, of everybody or of the person', async () => {
    const own = '/Users/ines/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge';
    expect(await findBrowser(machine('darwin', { HOME: '/Users/ines' }, [own]))).toBe(own);
  });

  test('among the programs of Windows, for everybody or for the person', async () => {
    const edge = join('C:\\Program Files (x86)', 'Microsoft', 'Edge', 'Application', 'msedge.exe');
    const environment = { PROGRAMFILES: 'C:\\Program Files', 'PROGRAMFILES(X86)': 'C:\\Program Files (x86)' };
    expect(await findBrowser(machine('win32', environment, [edge]))).toBe(edge);
  });

  test('where SRL_BENCH_BROWSER or CHROME_PATH says, before all others', async () => {
    const environment = { PATH: '/usr/bin', CHROME_PATH: '/opt/one', SRL_BENCH_BROWSER: '/opt/two' };
    const programs = ['/usr/bin/chromium', '/opt/one', '/opt/two'];
    expect(await findBrowser(machine('linux', environment, programs))).toBe('/opt/two');
    expect(await findBrowser(machine('linux', environment, ['/opt/one', '/usr/bin/chromium']))).toBe(
      '/opt/one',
    );
    expect(await findBrowser(machine('linux', environment, ['/usr/bin/chromium']))).toBe('/usr/bin/chromium');
  });

  test('or none, and never one of the working folder', async () => {
    expect(
      await findBrowser(machine('linux', { PATH: '.:relative:' }, ['chromium', './chromium'])),
    ).toBeUndefined();
    expect(await findBrowser(machine('linux', {}, []))).toBeUndefined();
  });
});

test('a window needs a display on Linux only', () => {
  expect(hasDisplay('linux', {})).toBe(false);
  expect(hasDisplay('linux', { DISPLAY: ':0' })).toBe(true);
  expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBe(true);
  expect(hasDisplay('darwin', {})).toBe(true);
  expect(hasDisplay('win32', {})).toBe(true);
});

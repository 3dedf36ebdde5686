/** Keys that a real X keyboard makes of a scanner: another layout, Caps Lock, and both, in a window on a display. */
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { requireTool } from '../support/debian-tools.ts';
import { demo } from '../support/station-fixture.ts';
import { openBenchWindow } from './bench-window.ts';
import { openXKeyboard } from './x-keyboard.ts';

const hasDisplay = ['Xvfb', 'xdotool', 'setxkbmap'].map(requireTool).every(Boolean);

describe.runIf(hasBrowser() && hasDisplay)('a real keyboard', () => {
  test('on a Spanish layout, with Caps Lock on, and with both, brings the codes of a US scanner all the same', async () => {
    const keyboard = await openXKeyboard();
    const { page } = await openBenchWindow({ display: keyboard.display });
    const notice = page.getByRole('banner').getByRole('status');
    await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
    await page.keyboard.press('1');
    await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
    await page.bringToFront();

    keyboard.scan(demo.inspector);
    await page.getByRole('banner').getByText('Teo Arandal').waitFor();
    keyboard.scan('N2-18-1074');
    await page.getByRole('dialog', { name: 'Is it this device?' }).waitFor();
    await page.keyboard.press('Escape');
    expect(await notice.textContent()).toBe('');

    keyboard.setLayout('es');
    keyboard.scan('N2-18-1074');
    await page.getByRole('dialog', { name: 'Is it this device?' }).waitFor();
    await page.keyboard.press('Escape');
    await notice.getByText('The scanner types for another keyboard layout').waitFor();

    keyboard.pressCapsLock();
    keyboard.scan('N2-18-1074');
    await page.getByRole('dialog', { name: 'Is it this device?' }).waitFor();
    await page.keyboard.press('Escape');
    await notice.getByText('Caps Lock is on, and the scanner types').waitFor();

    keyboard.setLayout('us');
    keyboard.scan(demo.administrator);
    await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
    await notice.getByText('Caps Lock is on and turns').waitFor();
  }, 120_000);
});

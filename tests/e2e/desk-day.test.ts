/** A whole day at the desk in a real window: by scanner alone, and by keyboard alone. */
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { type DeskCrew, openDesk, secondUser } from './desk-crew.ts';
import { Keyboard } from './keyboard.ts';

/** What moves the desk on. */
interface Hand {
  enter(code: string): Promise<void>;
  choose(number: number): Promise<void>;
  /** The user confirms their inspection before use. */
  confirm(): Promise<void>;
  /** The choice of what a yes was is made. */
  goOn(): Promise<void>;
  /** Goes on from a sentence that fills the screen. */
  next(): Promise<void>;
}

const scannerHand = ({ window: { scan, command } }: DeskCrew): Hand => ({
  enter: scan,
  choose: (number) => command(String(number)),
  confirm: () => command('confirm'),
  goOn: () => command('confirm'),
  next: () => command('confirm'),
});

const keyboardHand = async (page: Page): Promise<Hand> => {
  const keyboard = new Keyboard(page, await page.context().newCDPSession(page));
  const pressOn = async (name: RegExp): Promise<void> => {
    await keyboard.tabTo(name);
    await keyboard.press('Enter');
  };
  return {
    enter: async (code) => {
      if (!(await keyboard.focused()).startsWith('input: Scan field'))
        await keyboard.tabTo(/^input: Scan field/);
      await keyboard.type(code);
      await keyboard.press('Enter');
    },
    choose: (number) => keyboard.shortcut(String(number)),
    confirm: () => pressOn(/^button: I inspected/),
    goOn: () => pressOn(/^button: Go on/),
    next: async () => {
      await expect.poll(() => keyboard.focused()).toMatch(/^button: (1)?Next/);
      await keyboard.press('Enter');
    },
  };
};

const isAsked = (page: Page): Promise<void> => page.getByText('Answer.', { exact: true }).waitFor();

/** Thirty go out and come back, four are held, two are refused. */
const day = async (crew: DeskCrew, hand: Hand): Promise<void> => {
  const { window: desk, ready, overdue, held, ask } = crew;
  const { page } = desk;
  const heading = (text: RegExp) => page.getByRole('heading', { level: 1, name: text }).waitFor();
  expect(ready.length).toBeGreaterThanOrEqual(19);
  await page.evaluate(() => {
    window.location.hash = '#/desk';
  });
  await heading(/Scan a badge/);

  const handOut = async (
    { badge, name }: { badge: string; name: RegExp },
    devices: readonly string[],
    refused?: string,
  ): Promise<void> => {
    await hand.enter(badge);
    await heading(name);
    for (const [index, benchId] of devices.entries()) {
      await hand.enter(benchId);
      await page
        .getByRole('listitem')
        .filter({ hasText: benchId.slice(5) })
        .waitFor();
      expect(
        await page.getByRole('main').getByRole('listitem').filter({ hasText: 'Leave here' }).count(),
      ).toBe(index + 1);
    }
    if (refused !== undefined) {
      await hand.enter(refused);
      await page.getByText('It stays here', { exact: true }).waitFor();
      await hand.next();
    }
    await hand.confirm();
    await heading(/Next badge/);
    await hand.next();
    await heading(/Scan a badge/);
  };
  const takeBack = async (benchId: string, isDropped: boolean): Promise<void> => {
    const answer = async (number: number): Promise<void> => {
      await isAsked(page);
      await hand.choose(number);
    };
    await hand.enter(benchId);
    await heading(/stop a fall/);
    await answer(1);
    await heading(/hot work/);
    await answer(isDropped ? 2 : 1);
    if (isDropped) {
      await page.getByText('What was it?').waitFor();
      await answer(4);
      await hand.goOn();
    }
    await heading(/questionable/);
    await answer(1);
    await heading(isDropped ? /Out of service/ : /is back in store/);
    await hand.next();
    await heading(/Scan a badge/);
  };

  const nadia = { badge: demo.user, name: /Nadia Solheim/, userId: 'P006' };
  const mara = { badge: secondUser, name: /Mara Quill/, userId: crew.secondUserId };
  const [first, second, more] = [ready.slice(0, 8), ready.slice(8, 15), ready.slice(15, 19)];
  const dropped = [...first.slice(0, 2), ...second.slice(0, 2)];
  await handOut(nadia, first, overdue);
  await handOut(mara, second, held);
  for (const benchId of [...first, ...second]) await takeBack(benchId, dropped.includes(benchId));
  const again = [...first.slice(2), ...more];
  await handOut(nadia, again);
  await handOut(mara, second.slice(2));
  for (const benchId of [...again, ...second.slice(2)]) await takeBack(benchId, false);

  for (const userId of [nadia.userId, mara.userId])
    expect(await ask('custody.list', { userId })).toMatchObject({ total: 0 });
  const had = async (userId: string) =>
    (await ask<{ spells: readonly object[] }>('custody.history', { userId })).spells.length;
  expect((await had(nadia.userId)) + (await had(mara.userId))).toBe(30);
  for (const benchId of dropped) {
    expect(await ask('device.show', { benchId })).toMatchObject({
      device: { standing: 'quarantined', reasons: [{ sentence: { en: 'Was dropped.' } }] },
    });
  }
};

describe.runIf(hasBrowser())('a day at the desk', () => {
  test('goes by scanner alone: thirty go out, two are refused, thirty come back, and four of them are held', async () => {
    const crew = await openDesk();
    await day(crew, scannerHand(crew));
  }, 300_000);

  test('is not rushed through: quick answers do not count, and whoever goes away after a yes leaves the device held', async () => {
    const { window: desk, ready, ask } = await openDesk();
    const { page, scan, command, scanner } = desk;
    const [benchId = ''] = ready as readonly string[];
    const toDesk = async (): Promise<void> => {
      await page.evaluate(() => {
        window.location.hash = '#/desk';
      });
      await page.getByRole('heading', { name: /Scan a badge/ }).waitFor();
    };
    const question = (text: RegExp) => page.getByRole('heading', { level: 1, name: text }).waitFor();
    await toDesk();
    await ask('custody.check-out', { userId: 'P006', benchIds: [benchId], preUse: { language: 'en' } });
    await scan(benchId);
    await question(/stop a fall/);
    for (let press = 0; press < 3; press += 1) await scanner.typeAsPerson('1', 120);
    await page.getByText(/Too soon/).waitFor();
    await question(/stop a fall/);
    await isAsked(page);
    for (let press = 0; press < 3; press += 1) await scanner.typeAsPerson('1', 120);
    await question(/hot work/);
    expect(await ask('device.show', { benchId })).toMatchObject({ device: { custody: { userId: 'P006' } } });
    await isAsked(page);
    await command('2');
    await page.getByText('What was it?').waitFor();
    const { device } = await ask<{ device: object }>('device.show', { benchId });
    expect(device).toMatchObject({
      standing: 'quarantined',
      openCheckIn: { unanswered: ['questionable'], unexplained: ['exposure'] },
    });
    expect(device).not.toHaveProperty('custody');

    await page.reload();
    await toDesk();
    await scan(benchId);
    await page.getByText('What was it?').waitFor();
    await isAsked(page);
    await command('4', 'confirm');
    await question(/questionable/);
    await isAsked(page);
    await command('1');
    await question(/Out of service/);
    await page.getByRole('main').getByText('Was dropped.').waitFor();
    const { device: whole } = await ask<{ device: object }>('device.show', { benchId });
    expect(whole).not.toHaveProperty('openCheckIn');
  }, 120_000);

  test('speaks the language of each user, and the language of the window for the next one', async () => {
    const { window: desk, ready } = await openDesk();
    const { page, scan, command } = desk;
    const [benchId = ''] = ready as readonly string[];
    const heading = (text: RegExp) => page.getByRole('heading', { level: 1, name: text }).waitFor();
    await page.evaluate(() => {
      window.location.hash = '#/desk';
    });
    await heading(/Scan a badge/);
    await scan(demo.user);
    await page.getByText('Scan each device').waitFor();
    await command('0');
    await page.getByText('Escanee cada equipo').first().waitFor();
    await scan(benchId);
    await page.getByRole('button', { name: 'Lo revisé: me lo llevo' }).waitFor();
    await command('confirm');
    await heading(/Next badge/);
    await scan(secondUser);
    await page.getByText('Scan each device').first().waitFor();
    await command('back');
    await heading(/Scan a badge/);
    await scan(demo.user);
    await page.getByText('Escanee cada equipo').first().waitFor();
  }, 120_000);

  test('goes by keyboard alone, as slowly as people type', async () => {
    const crew = await openDesk();
    await day(crew, await keyboardHand(crew.window.page));
  }, 400_000);
});

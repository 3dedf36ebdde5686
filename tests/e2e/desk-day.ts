/** A whole day at the desk in a real window, whatever hand moves it on. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { type DeskCrew, secondUser } from './desk-crew.ts';

/** What moves the desk on. */
export interface Hand {
  enter(code: string): Promise<void>;
  choose(number: number): Promise<void>;
  /** The user confirms their inspection before use. */
  confirm(): Promise<void>;
  /** The choice of what a yes was is made. */
  goOn(): Promise<void>;
  /** Goes on from a sentence that fills the screen. */
  next(): Promise<void>;
}

/** The question has stood on the screen for as long as it must. */
export const isAsked = (page: Page): Promise<void> => page.getByText('Answer.', { exact: true }).waitFor();

/** Thirty go out and come back, four are held, two are refused. */
export const day = async (crew: DeskCrew, hand: Hand): Promise<void> => {
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

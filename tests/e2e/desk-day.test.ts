/** A whole day at the desk in a real window, by scanner alone: no mouse, no key beyond the scanner's. */
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openDesk, secondUser } from './desk-crew.ts';

describe.skipIf(!hasBrowser)('a day at the desk', () => {
  test('goes by scanner alone: thirty go out, two are refused, thirty come back, and four of them are held', async () => {
    const { window: desk, ready, overdue, held, ask } = await openDesk();
    const { page, scan, command } = desk;
    const heading = (text: RegExp) => page.getByRole('heading', { level: 1, name: text }).waitFor();
    expect(ready.length).toBeGreaterThanOrEqual(15);
    await page.evaluate(() => {
      window.location.hash = '#/desk';
    });
    await heading(/Scan a badge/);

    const handOut = async (badge: string, devices: readonly string[], refused?: string): Promise<void> => {
      await scan(badge);
      for (const benchId of devices) await scan(benchId);
      if (refused !== undefined) {
        await scan(refused);
        await page.getByText('It stays here', { exact: true }).waitFor();
        await command('confirm');
      }
      await page.getByRole('button', { name: `I inspected all ${devices.length}` }).waitFor();
      await command('confirm');
      await heading(/Next badge/);
    };
    const takeBack = async (benchId: string, isDropped: boolean): Promise<void> => {
      await scan(benchId);
      await heading(/stop a fall/);
      await command('1');
      await heading(/hot work/);
      await command(...(isDropped ? ['2', '4', 'confirm'] : ['1']));
      await heading(/questionable/);
      await command('1');
      await heading(isDropped ? /Out of service/ : /is back in store/);
    };

    const crews = [ready.slice(0, 8), ready.slice(8, 15)] as const;
    let out = 0;
    let back = 0;
    for (const round of [0, 1]) {
      const [first, second] =
        round === 0 ? crews : [crews[0].slice(2), [...crews[1].slice(2), ...ready.slice(15, 19)]];
      await handOut(demo.user, first, round === 0 ? overdue : undefined);
      await handOut(secondUser, second, round === 0 ? held : undefined);
      out += first.length + second.length;
      for (const [crew, devices] of [first, second].entries()) {
        for (const [index, benchId] of devices.entries()) {
          await takeBack(benchId, round === 0 && index < 2 && crew < 2);
          back += 1;
        }
      }
    }
    expect([out, back]).toEqual([30, 30]);
    expect(await ask('custody.list')).toMatchObject({ total: 0 });
    const spells = [
      ...(await ask<{ spells: object[] }>('custody.history', { userId: 'P006' })).spells,
      ...(await ask<{ spells: object[] }>('custody.history', { userId: 'P009' })).spells,
    ];
    expect(spells).toHaveLength(30);
    for (const benchId of crews.flatMap((crew) => crew.slice(0, 2))) {
      expect(await ask('device.show', { benchId })).toMatchObject({
        device: { standing: 'quarantined', reasons: [{ sentence: { en: 'Was dropped.' } }] },
      });
    }
  }, 180_000);
});

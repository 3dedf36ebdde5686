/** Kits and counts in a real window, by scanner alone but for the one button of the count. */
import { expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { openDesk } from './desk-crew.ts';

test.runIf(hasBrowser())(
  'a kit is put together and goes out by its label; a count finds what is out, has it checked in, and goes on',
  async () => {
    const { window: desk, ready, ask } = await openDesk();
    const { page, scan, command } = desk;
    const [one = '', two = ''] = ready as readonly string[];
    const go = (hash: string) =>
      page.evaluate((next) => {
        window.location.hash = next;
      }, hash);
    const main = page.getByRole('main');

    await go('#/kits');
    await main.getByText('Tower crew 1').waitFor();
    await command('confirm');
    await main.getByText(/^Scan the label of the kit/).waitFor();
    await scan('.RC1');
    for (const benchId of [one, two]) {
      await scan(benchId);
      await main
        .getByRole('listitem')
        .filter({ hasText: benchId.slice(5) })
        .waitFor();
    }
    await command('confirm');
    await main.getByRole('heading', { name: 'Kit RC1' }).waitFor();

    await command('desk');
    await main.getByRole('heading', { name: /Scan a badge/ }).waitFor();
    await scan(demo.user);
    await main.getByRole('heading', { name: 'Nadia Solheim' }).waitFor();
    await scan('.RC1');
    await main.getByRole('button', { name: /I inspected all 2/ }).waitFor();
    await command('confirm');
    await main.getByRole('heading', { name: /Next badge/ }).waitFor();
    expect(await ask('device.show', { benchId: one })).toMatchObject({
      device: { custody: { userId: 'P006' } },
    });

    await go('#/count/R9');
    await main.getByRole('heading', { name: 'Place R9' }).waitFor();
    await scan(one);
    await main.getByText('Recorded out: 1').waitFor();
    await main.getByRole('button', { name: 'Check it in' }).click();
    for (const question of [/stop a fall/, /hot work/, /questionable/]) {
      await main.getByRole('heading', { level: 1, name: question }).waitFor();
      await main.getByText('Answer.', { exact: true }).waitFor();
      await command('1');
    }
    await main.getByRole('heading', { name: /is back in store/ }).waitFor();
    await go('#/count/R9');
    await main.getByText('Found: 1').waitFor();
    await command('confirm');
    await main.getByRole('heading', { name: 'The count of R9 is recorded' }).waitFor();
    expect(await ask('device.show', { benchId: one })).toMatchObject({ device: { stored: { place: 'R9' } } });
  },
  180_000,
);

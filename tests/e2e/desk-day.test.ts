/** A whole day at the desk in a real window, by scanner alone, and what its questions do not let pass. */
import { describe, expect, test } from 'vitest';
import { hasBrowser } from '../support/browser.ts';
import { demo } from '../support/station-fixture.ts';
import { type DeskCrew, openDesk, secondUser } from './desk-crew.ts';
import { day, type Hand, isAsked } from './desk-day.ts';

const scannerHand = ({ window: { scan, command } }: DeskCrew): Hand => ({
  enter: scan,
  choose: (number) => command(String(number)),
  confirm: () => command('confirm'),
  goOn: () => command('confirm'),
  next: () => command('confirm'),
});

describe.runIf(hasBrowser())('a day at the desk', () => {
  test('goes by scanner alone: thirty go out, two are refused, thirty come back, and four of them are held', async () => {
    const crew = await openDesk();
    await day(crew, scannerHand(crew));
  }, 600_000);

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
});

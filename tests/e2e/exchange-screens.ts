/** The screens on which a fleet comes in as a list and everything goes out as files. */
import { fileURLToPath } from 'node:url';
import { badges } from './prepared-depot.ts';
import { choose, go, heading, inMain, press, type Screen, signIn, type Visit } from './visit.ts';

const example = (name: string): string =>
  fileURLToPath(new URL(`../../demo-data/import/${name}`, import.meta.url));

const openPanel = async (visit: Visit): Promise<void> => {
  await go(visit, '#/setup');
  await visit.page.getByRole('tab', { name: visit.say('exchange:tab') }).click();
};

export const giveList = async ({ page }: Visit, file: string): Promise<void> =>
  page.locator('input[type=file][accept*=csv]').setInputFiles(file);

/** As `giveList`, of a list that is made on the spot. */
const giveText = async ({ page }: Visit, text: string): Promise<void> =>
  page
    .locator('input[type=file][accept*=csv]')
    .setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

/** Drags a list over the window and lets it go where lists are taken. */
const dropText = async ({ page, say }: Visit, text: string): Promise<void> => {
  const dataTransfer = await page.evaluateHandle((content) => {
    const dragged = new DataTransfer();
    dragged.items.add(new File([content], 'dropped.csv', { type: 'text/csv' }));
    return dragged;
  }, text);
  await page.getByRole('banner').dispatchEvent('dragover', { dataTransfer });
  const box = page.getByRole('region', { name: say('exchange:importTitle') });
  await box.dispatchEvent('dragover', { dataTransfer });
  await box.dispatchEvent('drop', { dataTransfer });
};

export const screensOfExchange: readonly Screen[] = [
  {
    name: 'setup, import and export',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await openPanel(visit);
      return heading(visit, 'exchange:exportTitle');
    },
  },
  {
    name: 'setup, everything is exported',
    show: async (visit) => {
      await press(visit, 'exchange:export');
      return visit.page.getByText(/record-\d+/);
    },
  },
  {
    name: 'import, a file that is no list',
    show: async (visit) => {
      await dropText(visit, 'only one line');
      await visit.page.getByText(visit.say('camera:drop')).waitFor({ state: 'detached' });
      return visit.page.getByRole('tabpanel').getByRole('alert').filter({ hasText: /\S/ });
    },
  },
  {
    name: 'import, questions and faults',
    show: async (visit) => {
      await openPanel(visit);
      await giveList(visit, example('fleet-with-faults.csv'));
      return inMain(visit, 'exchange:faultsTitle');
    },
  },
  {
    name: 'import, a question is answered',
    show: async (visit) => {
      await choose(visit.page.getByRole('radio', { name: visit.say('exchange:order.dmy') }).first());
      return inMain(visit, 'exchange:dates');
    },
  },
  {
    name: 'import, units and people are asked for',
    show: async (visit) => {
      await openPanel(visit);
      await giveText(
        visit,
        'Maker,Model,Serial,Length,User,Something else\nNorvane,Lode 6,N6-ASK-1,6,Nobody Here,x\n',
      );
      return inMain(visit, 'exchange:withoutPeople');
    },
  },
  {
    name: 'import, a list that can be imported',
    show: async (visit) => {
      await openPanel(visit);
      await giveList(visit, example('fleet.xlsx'));
      return inMain(visit, 'exchange:devicesTitle');
    },
  },
];

/** A list with a device that no other window has imported, and the screens after it is in. */
export const screensAfterImport: readonly Screen[] = [
  {
    name: 'import, done',
    show: async (visit) => {
      await openPanel(visit);
      const serial = `N6-IN-${Date.now() % 100_000}`;
      await giveText(
        visit,
        `Maker,Model,Serial,Length,Last inspection,Inspected by,Result,Notes\nNorvane,Lode 6,${serial},6 m,2025-11-03,P. Aldous (contractor),fail,Lower hook corroded.\n`,
      );
      await inMain(visit, 'exchange:devicesTitle').waitFor();
      await visit.page.getByRole('tabpanel').getByRole('button').last().click();
      return inMain(visit, 'exchange:doneUndo');
    },
  },
  {
    name: 'device card, declared history',
    show: async (visit) => {
      await go(visit, '#/register?show=held');
      await visit.page.getByRole('searchbox').fill('N6-IN-');
      const row = visit.page.getByRole('row').filter({ hasText: 'N6-IN-' });
      await row.first().getByRole('link').click();
      return heading(visit, 'exchange:declared');
    },
  },
];

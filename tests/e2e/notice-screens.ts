/** The screens of the manufacturers' notices: the list, the form with its faults, what a notice means, and one recorded. */
import { badges, pin } from './prepared-depot.ts';
import { go, heading, inMain, press, type Screen, signIn, type Visit } from './visit.ts';

const fill = async ({ page, say }: Visit, key: string, text: string): Promise<void> =>
  page.getByLabel(say(`notices:form.${key}`), { exact: true }).fill(text);

const choose = async ({ page, say }: Visit, list: string, value: string): Promise<void> => {
  await page
    .getByRole('combobox', { name: list === '' ? say('notices:form.manufacturer') : list })
    .selectOption(value);
};

export const screensOfNotices: readonly Screen[] = [
  {
    name: 'notices, none recorded in the first language',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, '#/notices');
      return heading(visit, 'notices:title');
    },
  },
  {
    name: 'new notice with every fault',
    show: async (visit) => {
      await press(visit, 'notices:enter');
      await visit.page.getByLabel(visit.say('notices:form.madeFrom'), { exact: true }).fill('18-06');
      await press(visit, 'notices:form.addGroup');
      await press(visit, 'notices:look');
      return visit.page.getByText(visit.say('notices:form.fault.reference'));
    },
  },
  {
    name: 'new notice, what it means, and what is odd about it',
    show: async (visit) => {
      const { page, say } = visit;
      await press(visit, 'notices:form.removeGroup');
      await choose(visit, '', 'Norvane');
      await fill(visit, 'reference', `SN 2026-02 ${say('notices:title')}`);
      for (const [part, value] of [
        ['day', '02'],
        ['month', '03'],
        ['year', '2026'],
      ] as const)
        await choose(visit, `${say('notices:form.issuedOn')}: ${say(`screens:date.${part}`)}`, value);
      await fill(visit, 'instructionEn', 'Take out of use and return to Norvane.');
      await fill(visit, 'models', 'Lode 2\nLode 9');
      // One that is held already: what other screens rely on stays as it is.
      await fill(visit, 'serials', 'N2-24-1000…N2-24-1999');
      await fill(visit, 'madeFrom', '');
      await press(visit, 'notices:look');
      return page.getByRole('heading', { name: say('notices:matches.title') });
    },
  },
  {
    name: 'new notice, the wrong PIN',
    show: async (visit) => {
      await visit.page.getByLabel(visit.say('notices:pin'), { exact: true }).fill('111222');
      await press(visit, 'notices:record');
      return visit.page.getByRole('main').getByRole('alert').filter({ hasText: 'PIN' });
    },
  },
  {
    name: 'a notice, and the devices held for it',
    show: async (visit) => {
      await visit.page.getByLabel(visit.say('notices:pin'), { exact: true }).fill(pin);
      await press(visit, 'notices:record');
      await heading(visit, 'notices:matches.title').waitFor();
      return inMain(visit, 'notices:matches.held');
    },
  },
  {
    name: 'notices, one recorded',
    show: async (visit) => {
      await press(visit, 'notices:all');
      return visit.page.getByRole('table').getByRole('link').first();
    },
  },
];

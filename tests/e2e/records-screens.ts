/** The screens of the records: signed inspections, one of them, and the reports that are made of them. */
import { badges, devices } from './prepared-depot.ts';
import { card, go, press, type Screen, signIn, type, type Visit } from './visit.ts';

const dialogHeading = ({ page, say }: Visit, key: string) =>
  page.getByRole('dialog').getByRole('heading', { name: say(key) });

export const screensOfRecords: readonly Screen[] = [
  {
    name: 'records',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, '#/records');
      return visit.page.getByRole('row').nth(3);
    },
  },
  {
    name: 'records of one device, after its scan',
    show: async (visit) => {
      await go(visit, '#/records');
      await visit.page.getByRole('row').nth(3).waitFor();
      await type(visit, devices.inService);
      return visit.page.getByRole('button', { name: visit.say('records:filter.drop') });
    },
  },
  {
    name: 'records, one inspection with a correction',
    show: async (visit) => {
      await go(visit, '#/records');
      await visit.page
        .getByRole('row')
        .filter({ hasText: visit.say('screens:verdict.remove from service') })
        .first()
        .getByRole('link')
        .click();
      await visit.page.getByRole('table', { name: visit.say('records:answers') }).waitFor();
      return visit.page.getByText(visit.say('records:corrected'));
    },
  },
  {
    name: 'dialog of an inspection report',
    show: async (visit) => {
      await press(visit, 'records:report.make');
      return dialogHeading(visit, 'records:report.inspection');
    },
  },
  {
    name: 'dialog of the due list',
    show: async (visit) => {
      await go(visit, '#/records');
      await visit.page.getByRole('row').nth(3).waitFor();
      await press(visit, 'records:fleet.due');
      return dialogHeading(visit, 'records:fleet.due');
    },
  },
  {
    name: 'dialog of return paperwork',
    show: async (visit) => {
      await go(visit, '#/records');
      await visit.page.getByRole('row').nth(3).waitFor();
      await press(visit, 'records:fleet.return');
      return visit.page.getByRole('dialog').getByRole('checkbox').first().locator('xpath=ancestor::label');
    },
  },
  {
    name: 'dialog of purchase and first use',
    show: async (visit) => {
      await (await card(visit, 'inService')).waitFor();
      await press(visit, 'records:facts.edit');
      return dialogHeading(visit, 'records:facts.dialogTitle');
    },
  },
  {
    name: 'setup, contact of a manufacturer',
    show: async (visit) => {
      await go(visit, '#/setup');
      await visit.page.getByRole('tab', { name: visit.say('screens:setup.models') }).click();
      await press(visit, 'records:contact.change');
      return dialogHeading(visit, 'records:contact.title');
    },
  },
];

/** The screens of the plan of returns: what it is made of, its dialogs with their faults, the plan, and its decisions. */
import { ask, heldDevices } from './held-depot.ts';
import { go, heading, inMain, press, type Screen, type Visit } from './visit.ts';

const saveIn = async ({ page, say }: Visit): Promise<void> => {
  await page
    .getByRole('dialog')
    .getByRole('button', { name: say('screens:form.save') })
    .click();
};

const faultIn = ({ page }: Visit) =>
  page.getByRole('dialog').getByRole('alert').filter({ hasText: /\S/ }).first();

const openData = async (visit: Visit): Promise<void> => {
  await heldDevices(visit);
  await go(visit, '#/returns-plan/data');
  await heading(visit, 'plan:lengths').waitFor();
};

/** Opens the dialog of the last row of a table: the device that was doubted is of the longest length that is planned. */
const changeIn = async (visit: Visit, table: string): Promise<void> => {
  await openData(visit);
  await visit.page
    .getByRole('table', { name: visit.say(table) })
    .getByRole('button')
    .last()
    .click();
};

/** What is asked of the depot, so that there is something to decide. */
const enterWhatIsMissing = async (visit: Visit): Promise<void> => {
  const record = (change: object) => ask(visit, 'returns-basis.record', { change });
  const basis = await ask<{
    makers: readonly { manufacturer: string }[];
    lengths: readonly { lengthM: number; inService: number }[];
  }>(visit, 'returns-basis.show');
  await record({ what: 'plan', months: 12, currency: 'EUR' });
  for (const { manufacturer } of basis.makers)
    await record({
      what: 'maker',
      manufacturer,
      shipmentCost: 90,
      priceBreaks: [{ from: 3, percentOff: 10 }],
      turnaroundDays: 45,
    });
  for (const { lengthM, inService } of basis.lengths)
    await record({
      what: 'length',
      lengthM,
      needed: Array.from({ length: 12 }, () => inService + 2),
      newDevice: { price: 400, leadTimeDays: 60 },
    });
  const { models } = await ask<{ models: readonly { modelSheetId: string }[] }>(visit, 'repair-terms.list');
  for (const [index, { modelSheetId }] of models.entries())
    if (index > 0)
      await ask(visit, 'repair-terms.record', {
        modelSheetId,
        repairable: 'yes',
        price: 120 + 40 * index,
        leadTimeDays: 45,
      });
};

const makePlan = async (visit: Visit): Promise<void> => {
  await openData(visit);
  await press(visit, 'plan:make_other');
  await heading(visit, 'plan:decisions').waitFor({ timeout: 30_000 });
};

export const screensOfReturnsPlan: readonly Screen[] = [
  {
    name: 'plan of returns, what it is made of and what is missing',
    show: async (visit) => {
      await openData(visit);
      return heading(visit, 'plan:missing');
    },
  },
  {
    name: 'plan of returns, the dialog of currency and months with a fault',
    show: async (visit) => {
      await openData(visit);
      await visit.page
        .getByRole('button', { name: visit.say('plan:changeOf') })
        .first()
        .click();
      await visit.page.getByRole('dialog').getByRole('textbox').last().fill('99');
      await saveIn(visit);
      return faultIn(visit);
    },
  },
  {
    name: 'plan of returns, the dialog of a manufacturer with every fault',
    show: async (visit) => {
      await changeIn(visit, 'plan:makers');
      const dialog = visit.page.getByRole('dialog');
      await dialog.getByRole('button', { name: visit.say('plan:form.addBreak') }).click();
      await dialog.getByRole('textbox').nth(0).fill('no amount');
      await dialog.getByRole('textbox').nth(1).fill('soon');
      await dialog.getByRole('textbox').nth(2).fill('1');
      await saveIn(visit);
      return faultIn(visit);
    },
  },
  {
    name: 'plan of returns, the dialog of a length month by month with every fault',
    show: async (visit) => {
      await changeIn(visit, 'plan:lengths');
      const dialog = visit.page.getByRole('dialog');
      await dialog.getByText(visit.say('plan:form.byMonth')).click();
      await dialog.getByRole('textbox').first().fill('some');
      await dialog.getByRole('textbox').last().fill('0');
      await saveIn(visit);
      return faultIn(visit);
    },
  },
  {
    name: 'plan of returns, its decisions',
    show: async (visit) => {
      await enterWhatIsMissing(visit);
      await makePlan(visit);
      return heading(visit, 'plan:cost');
    },
  },
  {
    name: 'plan of returns, a shipment',
    show: async (visit) => {
      await go(visit, '#/returns-plan/1');
      return inMain(visit, 'plan:pack');
    },
  },
  {
    name: 'plan of returns, what price would change it',
    show: async (visit) => {
      await go(visit, '#/returns-plan/1');
      await press(visit, 'plan:limitOf');
      return visit.page.getByRole('table').getByRole('status').first();
    },
  },
  {
    name: 'plan of returns, new devices',
    show: async (visit) => {
      await go(visit, '#/returns-plan/2');
      return inMain(visit, 'plan:back');
    },
  },
];

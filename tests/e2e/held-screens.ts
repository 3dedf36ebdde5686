/** The screens of held devices: the list, one device at each step, its dialogs, and the returns to manufacturers. */
import { type HeldDevices, heldDevices } from './held-depot.ts';
import { badges } from './prepared-depot.ts';
import { go, heading, inMain, press, type Screen, signIn, type Visit } from './visit.ts';

const openHeld = async (visit: Visit, name: keyof HeldDevices): Promise<void> => {
  const { [name]: benchId } = await heldDevices(visit);
  await go(visit, `#/held/${benchId}`);
  await heading(visit, 'held:evidence').waitFor();
};

/** The dialog that the one next action of the device opens. */
const nextOf = async (visit: Visit, name: keyof HeldDevices, step: string) => {
  await openHeld(visit, name);
  await press(visit, `held:do.${step}`);
  return visit.page.getByRole('dialog');
};

const saveIn = async ({ page, say }: Visit): Promise<void> => {
  await page
    .getByRole('dialog')
    .getByRole('button', { name: say('screens:form.save') })
    .click();
};

export const screensOfHeld: readonly Screen[] = [
  {
    name: 'held, every device',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      await heldDevices(visit);
      await go(visit, '#/held');
      return visit.page.getByRole('table').getByRole('link').nth(4);
    },
  },
  {
    name: 'held, the dialog of the lists',
    show: async (visit) => {
      await go(visit, '#/held');
      await press(visit, 'held:lists.open');
      return visit.page.getByRole('dialog').getByRole('radio').nth(8);
    },
  },
  {
    name: 'held, a device that is to be scanned back',
    show: async (visit) => {
      await openHeld(visit, 'ready');
      return inMain(visit, 'held:step.scan tag back');
    },
  },
  {
    name: 'held, the dialog of the tag that comes back',
    show: async (visit) => {
      const dialog = await nextOf(visit, 'ready', 'scan tag back');
      await dialog.getByRole('textbox').fill('99');
      await dialog.getByRole('button', { name: visit.say('held:release.take') }).click();
      return dialog.getByRole('alert').filter({ hasText: '99' });
    },
  },
  {
    name: 'held, the dialog of evidence with every fault',
    show: async (visit) => {
      await openHeld(visit, 'fallen');
      await press(visit, 'held:do.get evidence');
      await saveIn(visit);
      return visit.page.getByRole('dialog').getByRole('alert').filter({ hasText: /\S/ }).first();
    },
  },
  {
    name: 'held, a fall case that is open',
    show: async (visit) => {
      await openHeld(visit, 'fallen');
      return visit.page.getByRole('main').getByText('Gantry 4');
    },
  },
  {
    name: 'held, the dialog of what else is known of a fall',
    show: async (visit) => {
      await openHeld(visit, 'fallen');
      await press(visit, 'held:fall.note');
      return visit.page.getByRole('dialog').getByRole('radio').first();
    },
  },
  {
    name: 'held, the dialog that closes a fall case, with a fault',
    show: async (visit) => {
      await nextOf(visit, 'fallen', 'close fall case');
      await saveIn(visit);
      return visit.page.getByRole('dialog').getByRole('alert').filter({ hasText: /\S/ }).first();
    },
  },
  {
    name: 'held, the dialog of a second person',
    show: async (visit) => {
      const dialog = await nextOf(visit, 'doubted', 'agree to evidence');
      return dialog.getByText('The mark on the hook is paint', { exact: false });
    },
  },
  {
    name: 'held, the dialog of scrap with every fault',
    show: async (visit) => {
      await openHeld(visit, 'doubted');
      await press(visit, 'held:do.scrap');
      const dialog = visit.page.getByRole('dialog');
      await dialog.getByRole('textbox').fill(badges.administrator);
      await dialog.getByRole('button', { name: visit.say('held:scrap.do') }).click();
      return dialog.getByRole('alert').filter({ hasText: /\S/ }).first();
    },
  },
  {
    name: 'held, the dialog of a return batch for a device',
    show: async (visit) => {
      await openHeld(visit, 'doubted');
      await press(visit, 'held:toBatch');
      return visit.page.getByRole('dialog').getByRole('listitem').nth(1);
    },
  },
  {
    name: 'held, a scrapped device',
    show: async (visit) => {
      await openHeld(visit, 'scrapped');
      return inMain(visit, 'held:reasons');
    },
  },
  {
    name: 'returns to manufacturers',
    show: async (visit) => {
      await go(visit, '#/returns');
      return heading(visit, 'held:returns.models');
    },
  },
  {
    name: 'returns, the dialog of what can be repaired',
    show: async (visit) => {
      await go(visit, '#/returns');
      await press(visit, 'held:returns.record');
      return visit.page.getByRole('dialog').getByRole('radio').nth(2);
    },
  },
  {
    name: 'return batch on its way',
    show: async (visit) => {
      await openHeld(visit, 'away');
      await press(visit, 'held:do.wait for manufacturer');
      return inMain(visit, 'held:returns.shippedLine');
    },
  },
  {
    name: 'return batch, the dialog of a device that is back, with a fault',
    show: async (visit) => {
      await press(visit, 'held:returns.receive');
      const dialog = visit.page.getByRole('dialog');
      await dialog.getByText(visit.say('held:returns.outcomeOf.repaired'), { exact: true }).click();
      await saveIn(visit);
      return dialog.getByRole('alert').filter({ hasText: /\S/ }).first();
    },
  },
  {
    name: 'return batch, the dialog of the shipment with every fault',
    show: async (visit) => {
      await openHeld(visit, 'packed');
      await press(visit, 'held:do.ship batch');
      await press(visit, 'held:returns.ship');
      await saveIn(visit);
      return visit.page.getByRole('dialog').getByRole('alert').filter({ hasText: /\S/ }).first();
    },
  },
];

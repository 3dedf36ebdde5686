/** The screens of "who is this?", of a label once more, and of the markings to ask of a manufacturer. */
import { badges, devices } from './prepared-depot.ts';
import { choose, go, heading, inMain, press, type Screen, signIn, type Visit } from './visit.ts';

const openCase = async (visit: Visit, name: keyof Visit['depot']['identityCases']): Promise<void> =>
  go(visit, `#/who/${visit.depot.identityCases[name]}`);

const fact = (visit: Visit, key: string): Promise<void> => press(visit, `screens:identity.field.${key}`);

export const screensOfIdentity: readonly Screen[] = [
  {
    name: 'who is this, the facts',
    fitsTheWindow: true,
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, '#/who');
      return visit.page.getByRole('main').getByRole('listitem').nth(8);
    },
  },
  {
    name: 'who is this, a typed fact at fault',
    show: async (visit) => {
      await fact(visit, 'dateOfManufacture');
      await visit.page.getByRole('main').getByRole('textbox').fill('May');
      await press(visit, 'screens:identity.keep');
      return inMain(visit, 'screens:identity.badDate');
    },
  },
  {
    name: 'who is this, a fact by number',
    fitsTheWindow: true,
    show: async (visit) => {
      await press(visit, 'screens:identity.back');
      await fact(visit, 'housingColour');
      return visit.page.getByRole('main').getByRole('listitem').nth(8);
    },
  },
  {
    name: 'who is this, our label and the last user',
    show: async (visit) => {
      await visit.page.getByRole('main').getByRole('listitem').nth(5).getByRole('button').click();
      await press(visit, 'screens:identity.other');
      return visit.page.getByRole('main').getByRole('combobox');
    },
  },
  {
    name: 'who is this, the candidates',
    fitsTheWindow: true,
    show: async (visit) => {
      await openCase(visit, 'open');
      return visit.page.getByRole('main').getByRole('listitem').nth(5);
    },
  },
  {
    name: 'who is this, a candidate and its evidence',
    fitsTheWindow: true,
    show: async (visit) => {
      await visit.page.getByRole('main').getByRole('listitem').first().getByRole('button').click();
      return visit.page.getByRole('main').getByRole('table');
    },
  },
  {
    name: 'who is this, the proposal is signed',
    fitsTheWindow: true,
    show: async (visit) => {
      await press(visit, 'screens:identity.propose');
      return visit.page.getByLabel(visit.say('walk:sign.pin'));
    },
  },
  {
    name: 'who is this, none of these',
    show: async (visit) => {
      await press(visit, 'screens:identity.back');
      await press(visit, 'screens:identity.others');
      await press(visit, 'screens:identity.none');
      return inMain(visit, 'screens:identity.noneText');
    },
  },
  {
    name: 'who is this, handed over to a second person',
    show: async (visit) => {
      await openCase(visit, 'proposed');
      return visit.page.getByRole('main').getByRole('status');
    },
  },
  {
    name: 'who is this, the second person is asked',
    show: async (visit) => {
      await signIn(visit, badges.attendant);
      await openCase(visit, 'proposed');
      return inMain(visit, 'screens:identity.yes');
    },
  },
  {
    name: 'who is this, the second person signs',
    fitsTheWindow: true,
    show: async (visit) => {
      await press(visit, 'screens:identity.yes');
      return visit.page.getByLabel(visit.say('walk:sign.pin'));
    },
  },
  {
    name: 'who is this, the second person disagrees',
    show: async (visit) => {
      await visit.page
        .getByRole('main')
        .getByRole('button', { name: visit.say('screens:identity.back') })
        .click();
      await press(visit, 'screens:identity.no');
      return visit.page.getByLabel(visit.say('screens:identity.why'));
    },
  },
  {
    name: 'who is this, taken',
    show: async (visit) => {
      await openCase(visit, 'taken');
      return heading(visit, 'screens:identity.takenTitle');
    },
  },
  {
    name: 'device card, identity presumed',
    show: async (visit) => {
      await press(visit, 'screens:identity.openCard');
      await heading(visit, 'screens:device.inspections').waitFor();
      return inMain(visit, 'screens:identity.presumed');
    },
  },
  {
    name: 'who is this, not identified',
    show: async (visit) => {
      await openCase(visit, 'unidentified');
      return heading(visit, 'screens:identity.unidentifiedTitle');
    },
  },
  {
    name: 'replacement markings',
    show: async (visit) => {
      await go(visit, '#/markings');
      return visit.page.getByRole('main').getByRole('table').first();
    },
  },
  {
    name: 'a label once more, the marking',
    show: async (visit) => {
      await go(visit, `#/relabel/${devices.inService}`);
      return visit.page.getByRole('radiogroup').nth(8);
    },
  },
  {
    name: 'a label once more, why',
    show: async (visit) => {
      for (let line = 0; line < 9; line += 1) {
        await choose(visit.page.getByRole('radiogroup').nth(line).getByRole('radio').first());
      }
      for (const element of ['serialNumber', 'dateOfManufacture'] as const) {
        const words = `${visit.say('screens:newDevice.says')} ${visit.say(`screens:marking.element.${element}`)}`;
        await visit.page.getByLabel(words).fill('N2-18-1047');
      }
      await press(visit, 'screens:newDevice.next');
      return visit.page.getByRole('dialog').getByRole('listitem').nth(3);
    },
  },
  {
    name: 'a label once more, refused for another serial number',
    show: async (visit) => {
      await visit.page.getByRole('dialog').getByRole('button').first().click();
      return visit.page.getByRole('main').getByRole('alert').filter({ hasText: 'N2-18-1047' });
    },
  },
];

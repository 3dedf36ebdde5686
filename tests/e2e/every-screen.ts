/** Every screen and every main state of one, and the way there: what must hold on all of them is tried on this list. */
import { learningText, samplesNeeded } from '../../src/domain/scanner/learn-scanner.ts';
import { screensOfBench } from './bench-screens.ts';
import { screensOfDesk } from './desk-screens.ts';
import { screensOfEvidence } from './evidence-screens.ts';
import { screensAfterImport, screensOfExchange } from './exchange-screens.ts';
import { screensOfHeld } from './held-screens.ts';
import { helpAtFirstStart, screensOfHelp } from './help-screens.ts';
import { screensOfIdentity } from './identity-screens.ts';
import { screensOfInsight } from './insight-screens.ts';
import { screensOfKeeping } from './keeping-screens.ts';
import { screensOfLedger } from './ledger-screens.ts';
import { screensOfNotices } from './notice-screens.ts';
import { screensOfPeople } from './people-screens.ts';
import { badges, devices } from './prepared-depot.ts';
import { screensOfProgram } from './program-screens.ts';
import { screensOfRecords } from './records-screens.ts';
import { screensOfReinspections } from './reinspection-screens.ts';
import { screensOfReturnsPlan } from './returns-plan-screens.ts';
import { screensOfSchedule } from './schedule-screens.ts';
import { card, choose, go, heading, inMain, press, type Screen, signIn, type, type Visit } from './visit.ts';
import { WedgeScanner } from './wedge-scanner.ts';

/** The state of an empty station. */
export const screensOfFirstStart: readonly Screen[] = [
  { name: 'first start', show: async (visit) => heading(visit, 'screens:firstStart.title') },
  helpAtFirstStart,
  {
    name: 'set-up form',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await press(visit, 'screens:firstStart.emptyStart');
      await choose(visit.page.getByRole('checkbox'));
      return visit.page.getByRole('combobox').nth(1);
    },
  },
  {
    name: 'set-up form with every fault',
    show: async (visit) => {
      await press(visit, 'screens:firstStart.create');
      return visit.page.getByText(visit.say('screens:form.badgeShape')).first();
    },
  },
];

const start: readonly Screen[] = [
  { name: 'start, nobody signed in', show: async (visit) => heading(visit, 'screens:start.title') },
  {
    name: 'register, nobody signed in',
    show: async (visit) => {
      await go(visit, '#/register');
      return heading(visit, 'screens:errors.signIn');
    },
  },
  {
    name: 'start, signed in',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      return inMain(visit, 'screens:start.here');
    },
  },
];

const register: readonly Screen[] = [
  {
    name: 'register',
    show: async (visit) => {
      await go(visit, '#/register');
      return visit.page.getByRole('row').nth(5);
    },
  },
  {
    name: 'register, the devices held',
    show: async (visit) => {
      await go(visit, '#/register?show=held');
      return visit.page.getByRole('row').nth(1);
    },
  },
  {
    name: 'register, a search without a hit',
    show: async (visit) => {
      await go(visit, '#/register');
      await visit.page.getByRole('searchbox').fill('no such device');
      return inMain(visit, 'screens:register.none');
    },
  },
];

const device: readonly Screen[] = [
  { name: 'device card, never inspected', show: (visit) => card(visit, 'neverInspected') },
  { name: 'device card, in service', show: (visit) => card(visit, 'inService') },
  { name: 'device card, quarantined', show: (visit) => card(visit, 'quarantined') },
  {
    name: 'remove dialog, the ground',
    show: async (visit) => {
      await (await card(visit, 'inService')).waitFor();
      await press(visit, 'screens:device.remove');
      return visit.page.getByRole('dialog').getByRole('listitem').nth(3);
    },
  },
  {
    name: 'remove dialog, the note',
    show: async (visit) => {
      await visit.page.getByRole('dialog').getByRole('listitem').first().getByRole('button').click();
      return visit.page.getByRole('dialog').getByRole('textbox');
    },
  },
  {
    name: 'bind dialog on a device card',
    show: async (visit) => {
      await (await card(visit, 'inService')).waitFor();
      await type(visit, 'UNKNOWN-CODE-77310');
      return heading(visit, 'screens:device.bindTitle');
    },
  },
];

/** Article numbers under 952, which GS1 keeps for demonstrations; the first is that of the Stayline 50 ft. */
const makersCode = {
  known: '(01)09520000000042(11)260300(10)L-2026-03(21)Q26C49077',
  another: '(01)09520000000042(11)260400(21)Q26C49088',
  model: '(01)09520000000042',
  damaged: '(01)09520000000043(21)Q26C49077',
} as const;

const makersCodes: readonly Screen[] = [
  {
    name: 'dialog of a damaged code',
    show: async (visit) => {
      await go(visit, '#/');
      await type(visit, makersCode.damaged);
      return heading(visit, 'screens:scan.malformed.title');
    },
  },
  {
    name: 'unknown-code dialog of a code that names the model',
    show: async (visit) => {
      await go(visit, '#/');
      await type(visit, makersCode.model);
      return visit.page.getByText(visit.say('screens:markingData.modelOnly'));
    },
  },
  {
    name: 'bind dialog on a device card, of a code that names the model',
    show: async (visit) => {
      await (await card(visit, 'inService')).waitFor();
      await type(visit, makersCode.model);
      return heading(visit, 'screens:device.bindTitle');
    },
  },
  {
    name: 'unknown-code dialog of a maker’s code',
    show: async (visit) => {
      await go(visit, '#/');
      await type(visit, makersCode.known);
      return visit.page.getByRole('dialog').getByText(visit.say('screens:markingData.says'));
    },
  },
  {
    name: 'new device, the model that its code names',
    show: async (visit) => {
      await visit.page.keyboard.press('1');
      return visit.page.getByRole('main').getByText(visit.say('screens:newDevice.sheetNamed')).last();
    },
  },
  {
    name: 'new device, the marking that its code says',
    show: async (visit) => {
      await visit.page.getByRole('button', { name: /Stayline 50 ft/ }).click();
      return inMain(visit, 'screens:newDevice.fromCode');
    },
  },
  {
    name: 'new device, a code that says otherwise',
    show: async (visit) => {
      await type(visit, makersCode.another);
      return inMain(visit, 'screens:newDevice.codeDiffers');
    },
  },
  {
    name: 'new device, the maker’s codes',
    show: async (visit) => {
      for (let line = 0; line < 9; line += 1) {
        await choose(visit.page.getByRole('radiogroup').nth(line).getByRole('radio').first());
      }
      await press(visit, 'screens:newDevice.next');
      return inMain(visit, 'screens:newDevice.labelHint');
    },
  },
  {
    name: 'new device, a code that the station refuses',
    show: async (visit) => {
      await press(visit, 'screens:newDevice.register');
      return visit.page.getByRole('main').getByRole('alert').filter({ hasText: 'Q26C49088' });
    },
  },
];

const newDevice: readonly Screen[] = [
  {
    name: 'dialog of the label of a place',
    show: async (visit) => {
      await go(visit, '#/');
      await type(visit, '.CAGE2');
      return heading(visit, 'screens:scan.place.title');
    },
  },
  {
    name: 'unknown-code dialog',
    show: async (visit) => {
      await go(visit, '#/');
      await type(visit, 'UNKNOWN-CODE-77310');
      return heading(visit, 'screens:scan.unknown.title');
    },
  },
  {
    name: 'bind dialog that waits for the device',
    show: async (visit) => {
      await press(visit, 'screens:scan.unknown.bind');
      return visit.page.getByText(visit.say('screens:scan.bind.ask'));
    },
  },
  {
    name: 'suggestion dialog',
    show: async (visit) => {
      await go(visit, '#/');
      await type(visit, `${devices.inService.slice(0, 7)}???`);
      return heading(visit, 'screens:scan.suggestion.title');
    },
  },
  {
    name: 'new device, its model',
    show: async (visit) => {
      await go(visit, '#/new-device?code=QM152699777');
      return visit.page.getByRole('main').getByRole('listitem').nth(6);
    },
  },
  {
    name: 'new model sheet with every fault',
    show: async (visit) => {
      await press(visit, 'screens:newDevice.newSheet');
      await press(visit, 'screens:modelSheet.save');
      return inMain(visit, 'screens:form.needed');
    },
  },
  {
    name: 'new device, its marking',
    show: async (visit) => {
      await press(visit, 'screens:form.cancel');
      await visit.page.getByRole('button', { name: /Stayline 50 ft/ }).click();
      return visit.page.getByRole('radiogroup').nth(8);
    },
  },
  {
    name: 'new device, its marking with an element missing',
    show: async (visit) => {
      const missing = visit.page.getByRole('radio', { name: visit.say('screens:marking.state.missing') });
      await choose(missing.first());
      await press(visit, 'screens:newDevice.next');
      return visit.page.getByRole('main').getByRole('alert').filter({ hasText: '8' });
    },
  },
  {
    name: 'new device, its codes',
    show: async (visit) => {
      for (let line = 0; line < 9; line += 1) {
        await choose(visit.page.getByRole('radiogroup').nth(line).getByRole('radio').first());
      }
      for (const element of ['serialNumber', 'dateOfManufacture'] as const) {
        const words = `${visit.say('screens:newDevice.says')} ${visit.say(`screens:marking.element.${element}`)}`;
        await visit.page.getByLabel(words).fill('2026-05');
      }
      await press(visit, 'screens:newDevice.next');
      return inMain(visit, 'screens:newDevice.labelHint');
    },
  },
];

/** With a scanner that is set to the US layout, on a Spanish computer. */
const teach = async ({ page }: Visit): Promise<void> => {
  const scanner = new WedgeScanner(page, await page.context().newCDPSession(page));
  for (let scans = 0; scans < samplesNeeded; scans += 1)
    await scanner.type(learningText, { layout: 'us', computer: 'es' });
};

const setup: readonly Screen[] = [
  {
    name: 'setup, people',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      await go(visit, '#/setup');
      return visit.page.getByRole('tabpanel').getByRole('listitem').nth(7);
    },
  },
  {
    name: 'add-person dialog with every fault',
    show: async (visit) => {
      await press(visit, 'screens:setup.addPerson');
      await press(visit, 'screens:form.save');
      return visit.page.getByRole('dialog').getByText(visit.say('screens:form.badgeShape'));
    },
  },
  {
    name: 'setup, model sheets',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await visit.page.getByRole('tab').nth(1).click();
      return visit.page.getByRole('tabpanel').getByRole('listitem').nth(4);
    },
  },
  {
    name: 'setup, the station and its record',
    show: async (visit) => {
      await visit.page.getByRole('tab').nth(3).click();
      await press(visit, 'ledger:verify');
      return visit.page.getByText(visit.say('ledger:fingerprint')).first();
    },
  },
  ...screensOfLedger,
  {
    name: 'setup, printers',
    show: async (visit) => {
      await visit.page.getByRole('tab').nth(4).click();
      return visit.page.getByText(visit.say('screens:printers.none'));
    },
  },
  {
    name: 'setup, a new printer',
    show: async (visit) => {
      await press(visit, 'screens:printers.add');
      return heading(visit, 'screens:printers.newTitle');
    },
  },
  {
    name: 'setup, the form of the stock of a printer',
    show: async (visit) => {
      await visit.page.getByText(visit.say('screens:face.title')).click();
      await choose(visit.page.getByRole('radio', { name: visit.say('screens:face.shapeOf.flag') }));
      return visit.page.getByLabel(visit.say('screens:face.clearMm'));
    },
  },
  {
    name: 'setup, the scanner',
    show: async (visit) => {
      await visit.page.getByRole('tab').nth(5).click();
      return heading(visit, 'screens:scanner.known');
    },
  },
  {
    name: 'setup, the scanner is taught',
    show: async (visit) => {
      await press(visit, 'screens:scanner.teach');
      return visit.page.getByRole('img', {
        name: visit.say('screens:scanner.symbol'),
      });
    },
  },
  {
    name: 'setup, the scanner is learnt, and its layout is explained',
    show: async (visit) => {
      await teach(visit);
      return visit.page.getByText(visit.say('screens:scanner.fault.layout'));
    },
  },
  {
    name: 'setup, the scanner is forgotten',
    show: async (visit) => {
      await press(visit, 'screens:scanner.forget');
      return visit.page.getByText(visit.say('screens:scanner.unknown'));
    },
  },
];

export const screens: readonly Screen[] = [
  ...start,
  ...register,
  ...device,
  ...newDevice,
  ...makersCodes,
  ...screensOfBench,
  ...screensOfIdentity,
  ...screensOfEvidence,
  ...screensOfExchange,
  ...screensAfterImport,
  ...screensOfKeeping,
  ...screensOfPeople,
  ...screensOfProgram,
  ...screensOfRecords,
  ...screensOfInsight,
  ...screensOfReinspections,
  ...screensOfSchedule,
  ...setup,
  ...screensOfDesk,
  ...screensOfHeld,
  ...screensOfReturnsPlan,
  ...screensOfNotices,
  ...screensOfHelp,
];

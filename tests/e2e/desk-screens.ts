/** The states of the desk, of who has what, and of a count. */
import { badges, devices } from './prepared-depot.ts';
import { go, heading, inMain, press, type Screen, signIn, type Visit } from './visit.ts';
import { WedgeScanner } from './wedge-scanner.ts';

const scan = async ({ page }: Visit, ...codes: readonly string[]): Promise<void> => {
  const scanner = new WedgeScanner(page, await page.context().newCDPSession(page));
  for (const code of codes) await scanner.scan(code);
};

const atDesk = async (visit: Visit, ...codes: readonly string[]): Promise<void> => {
  await go(visit, '#/desk');
  await heading(visit, 'desk:title').waitFor();
  await scan(visit, ...codes);
};

export const screensOfDesk: readonly Screen[] = [
  {
    name: 'desk, nobody signed in as attendant',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, '#/desk');
      return heading(visit, 'desk:staff');
    },
  },
  {
    name: 'desk',
    show: async (visit) => {
      await signIn(visit, badges.attendant);
      await go(visit, '#/desk');
      return heading(visit, 'desk:title');
    },
  },
  {
    name: 'desk, a user',
    show: async (visit) => {
      await atDesk(visit, badges.user);
      return inMain(visit, 'desk:scanDevices');
    },
  },
  {
    name: 'desk, a device that stays',
    show: async (visit) => {
      await atDesk(visit, badges.user);
      await inMain(visit, 'desk:scanDevices').waitFor();
      await scan(visit, devices.neverInspected);
      return inMain(visit, 'desk:stays');
    },
  },
  {
    name: 'desk, a device in store and nobody there',
    show: async (visit) => {
      await atDesk(visit, devices.neverInspected);
      return inMain(visit, 'desk:inStoreHint');
    },
  },
  {
    name: 'desk, the first question',
    show: async (visit) => {
      await atDesk(visit, devices.neverInspected, 'XC1');
      return inMain(visit, 'desk:notKnown');
    },
  },
  {
    name: 'desk, what a yes was',
    show: async (visit) => {
      await atDesk(visit, devices.askedAbout);
      return inMain(visit, 'desk:which');
    },
  },
  {
    name: 'who has what',
    show: async (visit) => {
      await go(visit, '#/custody');
      return heading(visit, 'desk:custodyTitle');
    },
  },
  {
    name: 'count, the places',
    show: async (visit) => {
      await go(visit, '#/count');
      return heading(visit, 'desk:countTitle');
    },
  },
  {
    name: 'count of a place',
    show: async (visit) => {
      await go(visit, '#/count/A1');
      await scan(visit, devices.neverInspected, 'NOT-KNOWN-7');
      return inMain(visit, 'desk:countFinish');
    },
  },
  {
    name: 'count of a place where a device lies that is out',
    show: async (visit) => {
      await go(visit, '#/count/R1');
      await scan(visit, devices.out);
      return inMain(visit, 'desk:countCheckIn');
    },
  },
  {
    name: 'kits',
    show: async (visit) => {
      await go(visit, '#/kits');
      return inMain(visit, 'desk:kitChange');
    },
  },
  {
    name: 'a kit',
    show: async (visit) => {
      await go(visit, '#/kits');
      await press(visit, 'desk:kitChange');
      return inMain(visit, 'desk:kitScan');
    },
  },
  {
    name: 'a device that is out',
    show: async (visit) => {
      await go(visit, `#/device/${devices.out}`);
      return inMain(visit, 'desk:checkInNow');
    },
  },
  {
    name: 'bench, a device that is out',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, '#/bench');
      await heading(visit, 'walk:idle.title').waitFor();
      await scan(visit, devices.out);
      return inMain(visit, 'desk:checkInNow');
    },
  },
  {
    name: 'register, devices chosen for a type of use',
    show: async (visit) => {
      await go(visit, '#/register');
      await press(visit, 'program:typeOfUse.several');
      await scan(visit, devices.out, devices.inService);
      return inMain(visit, 'program:typeOfUse.choose');
    },
  },
  {
    name: 'register, the type of use of several',
    show: async (visit) => {
      await scan(visit, 'XCCONFIRM');
      return visit.page.getByRole('dialog').getByText(visit.say('program:typeOfUse.hint'));
    },
  },
];

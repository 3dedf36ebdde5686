/** Every screen and every main state of one, and the way there: what must hold on all of them is tried on this list. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import type { Language } from '../../src/domain/message.ts';
import type { TagKind } from '../../src/domain/tag-content.ts';
import { badges, devices, type PreparedDepot } from './prepared-depot.ts';

/** A window, and the words that stand in it. */
export interface Visit {
  readonly page: Page;
  readonly depot: PreparedDepot;
  readonly say: Words;
}

export interface Screen {
  readonly name: string;
  /** Goes there from wherever the window is, and resolves to something that is only seen there. */
  readonly show: (visit: Visit) => Promise<Locator>;
  /** Everything of it must be in sight at once. */
  readonly fitsTheWindow?: true;
}

/** The sentence of a key such as `walk:verdict.pass`, up to its first placeholder. */
export type Words = (key: string) => string;

export const wordsIn = (language: Language): Words => {
  const catalogues = new Map<string, unknown>();
  const load = (name: string): unknown =>
    JSON.parse(
      readFileSync(new URL(`../../assets/messages/${language}/${name}.json`, import.meta.url), 'utf8'),
    );
  return (key) => {
    const [name = '', path = ''] = key.split(':');
    if (!catalogues.has(name)) catalogues.set(name, load(name));
    let found = catalogues.get(name);
    for (const part of path.split('.')) found = (found as Record<string, unknown>)[part];
    if (typeof found !== 'string') throw new Error(`There are no words for ${key}.`);
    return found.split('{{')[0]!.trim();
  };
};

const go = async ({ page }: Visit, hash: string): Promise<void> => {
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await page.evaluate((next) => {
    window.location.hash = '#/';
    return new Promise<void>((resolve) =>
      window.setTimeout(() => {
        window.location.hash = next;
        resolve();
      }, 30),
    );
  }, hash);
};

const type = async ({ page }: Visit, code: string): Promise<void> => {
  const field = page.getByRole('banner').getByRole('textbox');
  await field.fill(code);
  await field.press('Enter');
};

export const signIn = async (visit: Visit, badge: string): Promise<void> => {
  await go(visit, '#/');
  const signOut = visit.page.getByRole('button', { name: visit.say('screens:header.signOut') });
  if (await signOut.isVisible()) await signOut.click();
  await signOut.waitFor({ state: 'detached' });
  await type(visit, badge);
  await signOut.waitFor();
};

const press = (visit: Visit, key: string): Promise<void> =>
  visit.page
    .getByRole('button', { name: visit.say(key) })
    .first()
    .click();

const heading = ({ page, say }: Visit, key: string): Locator => page.getByRole('heading', { name: say(key) });

const inMain = ({ page, say }: Visit, key: string): Locator =>
  page.getByRole('main').getByText(say(key)).first();

const openWalk = async (visit: Visit, name: keyof PreparedDepot['inspections']): Promise<Locator> => {
  await go(visit, `#/bench/${visit.depot.inspections[name]}`);
  return visit.page.getByRole('navigation', { name: visit.say('walk:progress.zones') });
};

/** Opens the walk where it stands, then answers with these keys of the keyboard. */
const walkWith = async (
  visit: Visit,
  name: keyof PreparedDepot['inspections'],
  ...keys: readonly string[]
): Promise<void> => {
  await (await openWalk(visit, name)).waitFor();
  for (const key of keys) {
    await visit.page.keyboard.press(key);
    await visit.page.waitForTimeout(220);
  }
};

/** Presses the tile in which a radio button or a check box hides. */
const choose = (hidden: Locator): Promise<void> => hidden.locator('xpath=ancestor::label').click();

const answerIn = ({ page, say }: Visit): Locator =>
  page.getByRole('group', { name: say('walk:check.answers') });

/**
 * Goes through all checks of a walk, each as a question and, where it has them, with the choice of its defects; `look` is
 * told what it is looking at.
 */
export const throughTheWalk = async (visit: Visit, look: (at: string) => Promise<void>): Promise<number> => {
  const { page, say } = visit;
  await (await openWalk(visit, 'atMarking')).waitFor();
  const title = page.getByRole('main').getByRole('heading', { level: 1 });
  const defects = heading(visit, 'walk:picker.title');
  const length = heading(visit, 'walk:length.title');
  const verdict = heading(visit, 'walk:verdict.incomplete');
  let checks = 0;
  for (; !(await verdict.isVisible()); checks += 1) {
    const check = (await title.textContent()) ?? '';
    await look(check);
    const answers = answerIn(visit).getByRole('button');
    if ((await answers.count()) === 2) {
      await answers.last().click();
      await defects.or(length).or(page.getByRole('slider')).first().waitFor();
      await look(`${check}, its defects`);
      await page
        .getByRole('main')
        .getByRole('button', { name: say('walk:picker.cancel') })
        .click();
    }
    await page
      .getByRole('main')
      .getByRole('button', { name: say('walk:actions.next') })
      .click();
  }
  return checks;
};

/** The state of an empty station. */
export const screensOfFirstStart: readonly Screen[] = [
  { name: 'first start', show: async (visit) => heading(visit, 'screens:firstStart.title') },
  {
    name: 'set-up form',
    show: async (visit) => {
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

const card = async (visit: Visit, device: keyof typeof devices): Promise<Locator> => {
  await go(visit, `#/device/${devices[device]}`);
  return heading(visit, 'screens:device.inspections');
};

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

const newDevice: readonly Screen[] = [
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

const walk: readonly Screen[] = [
  {
    name: 'bench, idle',
    show: async (visit) => {
      await go(visit, '#/bench');
      return heading(visit, 'walk:idle.title');
    },
  },
  {
    name: 'begin dialog',
    show: async (visit) => {
      await (await card(visit, 'neverInspected')).waitFor();
      await press(visit, 'screens:device.start');
      return visit.page.getByRole('dialog').getByRole('listitem').first();
    },
  },
  {
    name: 'walk, a check of the marking',
    fitsTheWindow: true,
    show: async (visit) => {
      await (await openWalk(visit, 'atMarking')).waitFor();
      return answerIn(visit);
    },
  },
  {
    name: 'walk, a check of the condition with its caution',
    fitsTheWindow: true,
    show: async (visit) => {
      await (await openWalk(visit, 'atLifeline')).waitFor();
      return answerIn(visit);
    },
  },
  {
    name: 'walk, an answer that does not fit',
    fitsTheWindow: true,
    show: async (visit) => {
      await walkWith(visit, 'atMarking', 'd');
      return visit.page.getByText(visit.say('walk:fault.chooseMarking'));
    },
  },
  {
    name: 'walk, the defects of a check',
    fitsTheWindow: true,
    show: async (visit) => {
      await walkWith(visit, 'atLifeline', 'd');
      return heading(visit, 'walk:picker.title');
    },
  },
  {
    name: 'walk, the place on the lifeline',
    fitsTheWindow: true,
    show: async (visit) => {
      await visit.page.keyboard.press('1');
      return visit.page.getByRole('slider');
    },
  },
  {
    name: 'walk, a finding with its place',
    fitsTheWindow: true,
    show: async (visit) => {
      await visit.page.getByRole('main').getByRole('textbox').fill('3.2');
      await visit.page.keyboard.press('Enter');
      return visit.page.getByRole('list', { name: visit.say('walk:picker.found') }).getByRole('button');
    },
  },
  {
    name: 'walk, the payout',
    fitsTheWindow: true,
    show: async (visit) => {
      await (await openWalk(visit, 'atPayout')).waitFor();
      return answerIn(visit);
    },
  },
  {
    name: 'walk, less came out',
    fitsTheWindow: true,
    show: async (visit) => {
      await walkWith(visit, 'atPayout', 'd');
      return heading(visit, 'walk:length.title');
    },
  },
  {
    name: 'walk, clean and look again',
    fitsTheWindow: true,
    show: async (visit) => {
      await (await openWalk(visit, 'lookAgain')).waitFor();
      return inMain(visit, 'walk:check.lookAgain');
    },
  },
  {
    name: 'break-off dialog',
    show: async (visit) => {
      await (await openWalk(visit, 'threeReasons')).waitFor();
      await visit.page.keyboard.press('b');
      await answerIn(visit).waitFor();
      await press(visit, 'walk:actions.breakOff');
      return visit.page.getByRole('dialog').getByRole('textbox');
    },
  },
  {
    name: 'inspection broken off',
    show: async (visit) => {
      await go(visit, `#/bench/${visit.depot.inspections.brokenOff}`);
      return heading(visit, 'walk:abandoned.title');
    },
  },
];

const verdict: readonly Screen[] = [
  {
    name: 'verdict, pass',
    fitsTheWindow: true,
    show: async (visit) => {
      await (await openWalk(visit, 'passing')).waitFor();
      return heading(visit, 'walk:verdict.pass');
    },
  },
  {
    name: 'verdict, three reasons',
    fitsTheWindow: true,
    show: async (visit) => {
      await (await openWalk(visit, 'threeReasons')).waitFor();
      return heading(visit, 'walk:verdict.remove');
    },
  },
  {
    name: 'verdict, six reasons',
    fitsTheWindow: true,
    show: async (visit) => {
      await (await openWalk(visit, 'sixReasons')).waitFor();
      return heading(visit, 'walk:verdict.remove');
    },
  },
  {
    name: 'verdict, a wrong PIN',
    fitsTheWindow: true,
    show: async (visit) => {
      await visit.page.getByRole('main').getByRole('textbox').fill('314159');
      await visit.page.keyboard.press('Enter');
      return visit.page.getByRole('main').getByRole('alert').filter({ hasText: /\d/ });
    },
  },
  {
    name: 'verdict, not finished',
    show: async (visit) => {
      await (await openWalk(visit, 'atPayout')).waitFor();
      await press(visit, 'walk:progress.verdict');
      return heading(visit, 'walk:verdict.incomplete');
    },
  },
  {
    name: 'verdict, signed',
    fitsTheWindow: true,
    show: async (visit) => {
      await go(visit, `#/bench/${visit.depot.inspections.signed}`);
      return visit.page.getByRole('button', { name: visit.say('walk:verdict.tag') });
    },
  },
  {
    name: 'verdict, the training of the inspector has ended',
    fitsTheWindow: true,
    show: async (visit) => {
      await signIn(visit, badges.inspectorWhoseTrainingEnded);
      await (await openWalk(visit, 'sixReasons')).waitFor();
      return inMain(visit, 'walk:sign.expired');
    },
  },
  {
    name: 'verdict, answers by somebody else',
    fitsTheWindow: true,
    show: async (visit) => {
      await signIn(visit, badges.otherInspector);
      await (await openWalk(visit, 'passing')).waitFor();
      return visit.page.getByRole('main').getByText(/\b35\b/);
    },
  },
];

const tagOf = async (visit: Visit, kind: TagKind, of: keyof typeof devices): Promise<Locator> => {
  await go(visit, `#/tag/${devices[of]}/${kind}`);
  return visit.page.getByRole('main').getByRole('img').first();
};

const tag: readonly Screen[] = [
  { name: 'tag screen, status', show: (visit) => tagOf(visit, 'status', 'inService') },
  { name: 'tag screen, quarantine', show: (visit) => tagOf(visit, 'quarantine', 'quarantined') },
  { name: 'tag screen, ID label', show: (visit) => tagOf(visit, 'id', 'neverInspected') },
  {
    name: 'tag screen, a tag that the device cannot have',
    show: async (visit) => {
      await go(visit, `#/tag/${devices.quarantined}/status`);
      return heading(visit, 'screens:errors.title');
    },
  },
];

const setup: readonly Screen[] = [
  {
    name: 'setup, people',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      await go(visit, '#/setup');
      return visit.page.getByRole('tabpanel').getByRole('listitem').nth(5);
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
    name: 'designate dialog',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await press(visit, 'screens:setup.designate');
      return visit.page.getByRole('dialog').getByRole('combobox').first();
    },
  },
  {
    name: 'PIN dialog',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await press(visit, 'screens:setup.changePin');
      return visit.page.getByRole('dialog').getByText(visit.say('screens:firstStart.pinHint'));
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
      await visit.page.getByRole('tab').nth(2).click();
      await press(visit, 'screens:setup.verify');
      return visit.page.getByText(visit.say('screens:setup.fingerprint')).first();
    },
  },
];

export const screens: readonly Screen[] = [
  ...start,
  ...register,
  ...device,
  ...newDevice,
  ...walk,
  ...verdict,
  ...tag,
  ...setup,
];

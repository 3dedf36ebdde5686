/** The employer's program in Setup, and what a device is due for by its rules. */
import { badges, pin } from './prepared-depot.ts';
import { choose, go, heading, inMain, press, type Screen, signIn, type Visit } from './visit.ts';

/** A device of `demo-data/fleet.json` whose type of use was determined, and one that was never inspected. */
const used = 'J245FS46WN';
const neverInspected = '3WWTGMXZ3V';

const openPanel = async (visit: Visit): Promise<void> => {
  await go(visit, '#/');
  await go(visit, '#/setup/program');
};

const region = ({ page, say }: Visit, key: string) => page.getByRole('region', { name: say(key) });

const save = ({ page, say }: Visit): Promise<void> =>
  page
    .getByRole('dialog')
    .getByRole('button', { name: say('screens:form.save'), exact: true })
    .click();

export const screensOfProgram: readonly Screen[] = [
  {
    name: 'setup, the program, of somebody who may not change it',
    show: async (visit) => {
      await signIn(visit, badges.attendant);
      await openPanel(visit);
      return inMain(visit, 'program:inForce.readOnly');
    },
  },
  {
    name: 'setup, the program',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      await openPanel(visit);
      return region(visit, 'program:presets.title').getByRole('button').nth(5);
    },
  },
  {
    name: 'dialog of an earlier program',
    show: async (visit) => {
      await region(visit, 'program:earlier.title').getByRole('button').first().click();
      return visit.page.getByRole('dialog').getByRole('table');
    },
  },
  {
    name: 'setup, a new version of the program with every fault',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await visit.page.getByRole('dialog').waitFor({ state: 'detached' });
      await press(visit, 'program:inForce.change');
      await choose(visit.page.getByRole('checkbox', { name: visit.say('program:edit.byUse') }));
      for (const language of ['en', 'es'])
        await visit.page
          .getByRole('checkbox', { name: visit.say(`program:language.${language}`), exact: true })
          .evaluate((box: HTMLInputElement) => box.click());
      for (const field of ['interval', 'grace', 'training', 'dueSoon', 'retention'])
        await visit.page.getByLabel(visit.say(`program:edit.${field}`)).fill('x');
      await visit.page
        .getByRole('button', {
          name: `${visit.say('program:edit.add')}: ${visit.say('program:release.title')}`,
        })
        .click();
      for (const name of ['jurisdictions', 'own'])
        await visit.page
          .getByRole('button', {
            name: `${visit.say('program:edit.add')}: ${visit.say(`program:edit.${name}`)}`,
          })
          .click();
      await press(visit, 'program:edit.sign');
      return inMain(visit, 'program:edit.languageNeeded');
    },
  },
  {
    name: 'setup, a program that asks for more before a return',
    show: async (visit) => {
      await openPanel(visit);
      await press(visit, 'program:inForce.change');
      const rule = visit.page.getByLabel(visit.say('program:release.rule'), { exact: true });
      await rule.selectOption('doubt');
      await visit.page.getByLabel(visit.say('program:release.howMany'), { exact: true }).selectOption('3');
      await visit.page
        .getByRole('button', {
          name: `${visit.say('program:edit.add')}: ${visit.say('program:release.title')}`,
        })
        .click();
      return region(visit, 'program:release.title').getByRole('button').first();
    },
  },
  {
    name: 'setup, a program that the station refuses',
    show: async (visit) => {
      await openPanel(visit);
      await press(visit, 'program:inForce.change');
      await visit.page.getByLabel(visit.say('program:edit.interval')).fill('18');
      await visit.page.getByLabel(visit.say('program:edit.pin')).fill(pin);
      await press(visit, 'program:edit.sign');
      return visit.page.getByRole('main').getByRole('alert').filter({ hasText: '18' }).last();
    },
  },
  {
    name: 'intervals dialog of a model, with every fault',
    show: async (visit) => {
      await go(visit, '#/');
      await go(visit, '#/setup/models');
      await press(visit, 'program:intervals.set');
      for (const line of ['inspection', 'revalidation', 'life'])
        await visit.page.getByLabel(visit.say(`program:intervals.${line}`)).fill('0');
      await save(visit);
      return visit.page.getByRole('dialog').getByText(visit.say('program:intervals.notWhole')).nth(2);
    },
  },
  {
    name: 'device card, every rule that applies',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, `#/device/${used}`);
      await heading(visit, 'program:due.title').waitFor();
      await visit.page.getByText(visit.say('program:due.every')).click();
      return region(visit, 'program:due.title').getByRole('listitem').last();
    },
  },
  {
    name: 'type-of-use dialog',
    show: async (visit) => {
      await press(visit, 'program:typeOfUse.set');
      return visit.page.getByRole('dialog').getByRole('radio').nth(2).locator('..');
    },
  },
  {
    name: 'revalidation dialog, with every fault',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await visit.page.getByRole('dialog').waitFor({ state: 'detached' });
      await press(visit, 'program:revalidation.record');
      await save(visit);
      return visit.page.getByRole('dialog').getByText(visit.say('screens:form.needed')).nth(1);
    },
  },
  {
    name: 'device card, nothing due before the first inspection',
    show: async (visit) => {
      await go(visit, `#/device/${neverInspected}`);
      return inMain(visit, 'program:due.notUsed');
    },
  },
];

/** A window that is taken from screen to screen, and the words by which it is steered. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import type { Language } from '../../src/domain/message.ts';
import { devices, type PreparedDepot } from './prepared-depot.ts';

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

export const go = async ({ page }: Visit, hash: string): Promise<void> => {
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

export const type = async ({ page }: Visit, code: string): Promise<void> => {
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

export const press = (visit: Visit, key: string): Promise<void> =>
  visit.page
    .getByRole('button', { name: visit.say(key) })
    .first()
    .click();

export const heading = ({ page, say }: Visit, key: string): Locator =>
  page.getByRole('heading', { name: say(key) });

export const inMain = ({ page, say }: Visit, key: string): Locator =>
  page.getByRole('main').getByText(say(key)).first();

export const openWalk = async (visit: Visit, name: keyof PreparedDepot['inspections']): Promise<Locator> => {
  await go(visit, `#/bench/${visit.depot.inspections[name]}`);
  return visit.page.getByRole('navigation', { name: visit.say('walk:progress.zones') });
};

/** Opens the walk where it stands, then answers with these keys of the keyboard. */
export const walkWith = async (
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
export const choose = (hidden: Locator): Promise<void> => hidden.locator('xpath=ancestor::label').click();

export const answerIn = ({ page, say }: Visit): Locator =>
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

export const card = async (visit: Visit, device: keyof typeof devices): Promise<Locator> => {
  await go(visit, `#/device/${devices[device]}`);
  return heading(visit, 'screens:device.inspections');
};

/** The screens of the bench in all their main states: the walk, the verdict and the tag. */
import type { Locator } from 'playwright-core';
import type { TagKind } from '../../src/domain/tag-content.ts';
import { badges, devices } from './prepared-depot.ts';
import {
  answerIn,
  card,
  go,
  heading,
  inMain,
  openWalk,
  press,
  type Screen,
  signIn,
  type Visit,
  walkWith,
} from './visit.ts';

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
      return visit.page.getByRole('main').getByText(/\b36\b/);
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

export const screensOfBench: readonly Screen[] = [...walk, ...verdict, ...tag];

/** The help over a screen and at the first start, the tour, cautions and limits, and the check-up of the station. */
import { badges } from './prepared-depot.ts';
import { go, heading, inMain, press, type Screen, signIn } from './visit.ts';

export const helpAtFirstStart: Screen = {
  name: 'first start, its help',
  show: async (visit) => {
    await visit.page.keyboard.press('F1');
    return visit.page.getByRole('dialog').getByText(visit.say('help:for.first-start'));
  },
};

export const screensOfHelp: readonly Screen[] = [
  {
    name: 'start, the offer of the tour',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      return heading(visit, 'tour:offerTitle');
    },
  },
  {
    name: 'start, its help',
    show: async (visit) => {
      await visit.page.keyboard.press('F1');
      return visit.page.getByRole('dialog').getByText(visit.say('help:for.start'));
    },
  },
  {
    name: 'desk, its help',
    show: async (visit) => {
      await go(visit, '#/desk');
      await visit.page.getByRole('main').getByRole('heading').first().waitFor();
      await visit.page.keyboard.press('F1');
      return visit.page.getByRole('dialog').getByText(visit.say('help:for.desk'));
    },
  },
  {
    name: 'a walk, its help',
    show: async (visit) => {
      await go(visit, `#/bench/${visit.depot.inspections.atLifeline}`);
      await visit.page.getByRole('navigation', { name: visit.say('walk:progress.zones') }).waitFor();
      await visit.page.keyboard.press('F1');
      return visit.page.getByRole('dialog').getByText(visit.say('help:for.bench'));
    },
  },
  {
    name: 'cautions and limits',
    show: async (visit) => {
      await go(visit, '#/limits');
      return visit.page.getByRole('row').nth(5);
    },
  },
  {
    name: 'the tour at its first stop',
    show: async (visit) => {
      await go(visit, '#/');
      await press(visit, 'tour:start');
      return visit.page.getByRole('complementary').getByText(visit.say('tour:stop.sign-in.title'));
    },
  },
  {
    name: 'the tour at a check of the walk',
    show: async (visit) => {
      for (let stop = 0; stop < 3; stop += 1) await press(visit, 'tour:next');
      await go(visit, `#/bench/${visit.depot.inspections.atLifeline}`);
      return visit.page.getByRole('complementary').getByText(visit.say('tour:stop.verdict.title'));
    },
  },
  {
    name: 'start, the tour left',
    show: async (visit) => {
      await press(visit, 'tour:leave');
      await go(visit, '#/');
      return inMain(visit, 'tour:resume');
    },
  },
  {
    name: 'setup, the check-up',
    show: async (visit) => {
      await go(visit, '#/setup/health');
      const findings = visit.page.getByRole('tabpanel').getByRole('listitem');
      await visit.page.getByRole('button', { name: visit.say('health:report') }).waitFor();
      return findings.nth(12);
    },
  },
  {
    name: 'setup, the scanner is tried',
    show: async (visit) => {
      await press(visit, 'health:scanner.begin');
      return visit.page.getByRole('img', { name: visit.say('screens:scanner.symbol') });
    },
  },
];

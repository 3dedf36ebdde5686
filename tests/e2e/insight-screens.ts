/** The screens of insight: over all devices, and by model. */
import { badges } from './prepared-depot.ts';
import { choose, go, heading, type Screen, signIn } from './visit.ts';

export const screensOfInsight: readonly Screen[] = [
  {
    name: 'insight, all devices',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, '#/insight');
      return heading(visit, 'insight:survival.title');
    },
  },
  {
    name: 'insight, by model',
    show: async (visit) => {
      const { page, say } = visit;
      await choose(page.getByRole('radio', { name: say('insight:byWhat.model') }));
      return page.getByRole('heading', { name: 'Norvane Lode 6' });
    },
  },
];

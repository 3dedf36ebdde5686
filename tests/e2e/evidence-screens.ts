/** The screens of pictures of findings, of readings of the diameter, and of the lifeline over the life of a device. */
import type { Locator } from 'playwright-core';
import { badges } from './prepared-depot.ts';
import { go, heading, press, type Screen, signIn, type Visit, walkWith } from './visit.ts';

/** A device of `demo-data/fleet.json` that was taken out of service for a lifeline that wore thin. */
const thin = 'NQZ5EGHVNN';

const page = async (visit: Visit, benchId: string): Promise<Locator> => {
  await go(visit, `#/lifeline/${benchId}`);
  return heading(visit, 'evidence:trend.title');
};

export const screensOfEvidence: readonly Screen[] = [
  {
    name: 'check, with a picture to be taken',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await walkWith(visit, 'atLifeline', 'p');
      return heading(visit, 'evidence:pictures.keepTitle');
    },
  },
  {
    name: 'check, diameter with a minimum',
    show: async (visit) => {
      await walkWith(visit, 'atDiameter');
      return visit.page.getByRole('button', { name: visit.say('evidence:diameter.measure') });
    },
  },
  {
    name: 'check, where the diameter is measured',
    show: async (visit) => {
      await walkWith(visit, 'atDiameter', 'd', '2');
      return visit.page.getByText(visit.say('evidence:diameter.stillTo'));
    },
  },
  {
    name: 'check, the diameter there',
    show: async (visit) => {
      await walkWith(
        visit,
        'atDiameter',
        'd',
        '2',
        'Enter',
        '4',
        '.',
        '9',
        'Enter',
        '1',
        '4',
        'Enter',
        '9',
        '9',
      );
      return visit.page.getByRole('button', { name: visit.say('evidence:diameter.keep') });
    },
  },
  {
    name: 'check, a diameter that cannot be',
    show: async (visit) => {
      await visit.page.keyboard.press('Enter');
      return visit.page.getByRole('alert').filter({ hasText: visit.say('walk:fault.diameterImpossible') });
    },
  },
  { name: 'lifeline, worn below the minimum', show: (visit) => page(visit, thin) },
  { name: 'lifeline, without a minimum', show: (visit) => page(visit, 'GJQ81T5WX2') },
  { name: 'lifeline, never inspected', show: (visit) => page(visit, '4R02SSYNB2') },
  {
    name: 'verdict, what was seen',
    show: async (visit) => {
      await go(visit, `#/device/${thin}`);
      await visit.page
        .getByRole('region', { name: visit.say('screens:device.inspections') })
        .getByRole('link')
        .first()
        .click();
      await press(visit, 'evidence:seen.lifeline');
      return visit.page.getByRole('button', { name: visit.say('evidence:pictures.open') }).first();
    },
  },
  {
    name: 'picture of a finding, large',
    show: async (visit) => {
      await press(visit, 'evidence:pictures.open');
      return visit.page.getByRole('dialog').last().getByRole('img');
    },
  },
  {
    name: 'picture of a finding, closed again',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await visit.page.getByRole('dialog').nth(1).waitFor({ state: 'detached' });
      return visit.page.getByRole('dialog').getByRole('button', { name: visit.say('camera:pictures.close') });
    },
  },
];

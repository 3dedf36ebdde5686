/** The screens of blind second inspections: the list, the draw, a device as its second inspector sees it, a pair, agreement. */
import type { BenchId } from '../../src/domain/brand.ts';
import { ask } from './held-depot.ts';
import { inspectedDevice, signAllGood, type Walked } from './inspected-device.ts';
import { badges } from './prepared-depot.ts';
import { go, heading, inMain, press, type Screen, signIn, type, type Visit } from './visit.ts';

interface Listed {
  readonly waiting: readonly { readonly benchId: BenchId; readonly serial: string }[];
  readonly signed: readonly { readonly serial: string; readonly second: { readonly inspection: number } }[];
}

const waitingSerial = 'BLIND-1';
const pairedSerial = 'BLIND-2';

/** Two devices that were drawn, one of them inspected twice; whatever else chance drew is shown to the inspectors at once. */
const drawn = async (visit: Visit): Promise<Listed> => {
  const known = await ask<Listed>(visit, 'reinspection.list');
  if (known.signed.some(({ serial }) => serial === pairedSerial)) return known;
  await ask(visit, 'session.sign-in', { badge: badges.inspector });
  const made: BenchId[] = [];
  for (const serial of [waitingSerial, pairedSerial]) made.push(await inspectedDevice(visit, serial));
  const others = new Set<BenchId>();
  for (let left = new Set(made); left.size > 0; ) {
    const { drawn: benchIds } = await ask<{ drawn: readonly BenchId[] }>(visit, 'reinspection.draw', {
      count: 50,
    });
    for (const benchId of benchIds) if (!made.includes(benchId)) others.add(benchId);
    left = new Set([...left].filter((benchId) => !benchIds.includes(benchId)));
  }
  for (const badge of [badges.inspector, badges.otherInspector]) {
    await ask(visit, 'session.sign-in', { badge });
    for (const benchId of others) await ask(visit, 'reinspection.see', { benchId });
  }
  await signAllGood(
    visit,
    await ask<Walked>(visit, 'reinspection.begin', { benchId: made[1], isUnaware: true }),
  );
  return ask<Listed>(visit, 'reinspection.list');
};

const waitingDevice = async (visit: Visit): Promise<BenchId> => {
  const { waiting } = await drawn(visit);
  return waiting.find(({ serial }) => serial === waitingSerial)!.benchId;
};

export const screensOfReinspections: readonly Screen[] = [
  {
    name: 'blind second inspections',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      await drawn(visit);
      await signIn(visit, badges.administrator);
      await go(visit, '#/reinspections');
      return visit.page.getByRole('table').nth(1);
    },
  },
  {
    name: 'insight, agreement of inspectors',
    show: async (visit) => {
      await go(visit, '#/insight');
      await heading(visit, 'insight:agreement.title').scrollIntoViewIfNeeded();
      return heading(visit, 'insight:agreement.both.title');
    },
  },
  {
    name: 'record of the second inspection of a pair',
    show: async (visit) => {
      const { signed } = await drawn(visit);
      const pair = signed.find(({ serial }) => serial === pairedSerial)!;
      await go(visit, `#/records/${pair.second.inspection}`);
      return inMain(visit, 'schedule:blind.agree');
    },
  },
  {
    name: 'device that was drawn, as its second inspector sees it',
    show: async (visit) => {
      await signIn(visit, badges.otherInspector);
      await go(visit, `#/device/${await waitingDevice(visit)}`);
      return inMain(visit, 'schedule:blind.offer.cover');
    },
  },
  {
    name: 'dialog of a drawn device at the bench',
    show: async (visit) => {
      const benchId = await waitingDevice(visit);
      await go(visit, '#/bench');
      await type(visit, benchId);
      return visit.page.getByRole('dialog').getByText(visit.say('schedule:blind.offer.cover'));
    },
  },
  {
    name: 'dialog of the draw with its fault',
    show: async (visit) => {
      await go(visit, '#/reinspections');
      await press(visit, 'schedule:blind.draw');
      await visit.page.getByRole('dialog').getByRole('textbox').fill('x');
      await visit.page
        .getByRole('dialog')
        .getByRole('button', { name: visit.say('schedule:blind.draw') })
        .click();
      return visit.page.getByRole('dialog').getByText(visit.say('schedule:blind.countFault'));
    },
  },
];

/** The pages of people: what they may do, how they were designated, and everything an administrator changes. */
import { badges } from './prepared-depot.ts';
import { choose, go, heading, inMain, press, type Screen, signIn, type Visit } from './visit.ts';

/** A device of `demo-data/fleet.json` of which a date was misread. */
const corrected = '2V0VNQRVE2';

/** A dialog that is opened on the page of a person, and seen by a line of it. */
const dialog = (name: string, button: string, line: string): Screen => ({
  name,
  show: async (visit) => {
    await visit.page.keyboard.press('Escape');
    await visit.page.getByRole('dialog').waitFor({ state: 'detached' });
    await press(visit, button);
    return inDialog(visit, line);
  },
});

const inDialog = ({ page, say }: Visit, key: string) => page.getByRole('dialog').getByText(say(key)).first();

export const screensOfPeople: readonly Screen[] = [
  {
    name: 'setup, people, of somebody who may change none of them',
    show: async (visit) => {
      await signIn(visit, badges.attendant);
      await go(visit, '#/setup');
      return visit.page.getByRole('tabpanel').getByRole('listitem').nth(7);
    },
  },
  {
    name: 'start, training to be seen to',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      return heading(visit, 'people:notices.title');
    },
  },
  {
    name: 'page of a person whose scope is narrow',
    show: async (visit) => {
      await go(visit, '#/person/P007');
      return inMain(visit, 'people:designation.scope');
    },
  },
  {
    name: 'designate dialog, a scope is chosen',
    show: async (visit) => {
      await press(visit, 'people:action.again');
      await choose(visit.page.getByRole('radio', { name: visit.say('people:form.some') }));
      return visit.page.getByRole('dialog').getByRole('checkbox').last();
    },
  },
  dialog('end-designation dialog', 'people:action.end', 'people:form.endedOn'),
  {
    name: 'change-person dialog with a fault',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      await press(visit, 'people:action.change');
      await press(visit, 'screens:form.save');
      return inDialog(visit, 'screens:form.needed');
    },
  },
  dialog('PIN dialog, a reset', 'people:action.resetPin', 'people:form.becauseHint'),
  dialog('leave dialog', 'people:action.leave', 'people:form.leftOn'),
  {
    name: 'page of a person who left',
    show: async (visit) => {
      await go(visit, '#/person/P008');
      return visit.page.getByRole('button', { name: visit.say('people:action.return') });
    },
  },
  dialog('return dialog', 'people:action.return', 'people:form.because'),
  {
    name: 'own page, own PIN',
    show: async (visit) => {
      await signIn(visit, badges.inspector);
      await go(visit, '#/person/P002');
      await press(visit, 'people:action.ownPin');
      return visit.page.getByLabel(visit.say('people:form.oldPin'));
    },
  },
  {
    name: 'device card, a correction',
    show: async (visit) => {
      await go(visit, `#/device/${corrected}`);
      return heading(visit, 'corrections:made');
    },
  },
  {
    name: 'corrections of a device',
    show: async (visit) => {
      await press(visit, 'corrections:open');
      return inMain(visit, 'corrections:entered');
    },
  },
  {
    name: 'correction of a serial number, with every fault',
    show: async (visit) => {
      await press(visit, 'corrections:correct');
      await press(visit, 'corrections:sign');
      return inDialog(visit, 'corrections:choose');
    },
  },
  {
    name: 'correction of an answer, with defects',
    show: async (visit) => {
      await visit.page.keyboard.press('Escape');
      const answers = visit.page.getByRole('region', { name: visit.say('corrections:answers') });
      await answers.getByRole('button').last().click();
      await choose(visit.page.getByRole('radio', { name: visit.say('corrections:answer.defects') }));
      return inDialog(visit, 'corrections:answer.another');
    },
  },
];

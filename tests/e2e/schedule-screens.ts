/** The screens of the schedule: the year, one week, its files, and the hours of the bench. */
import { badges } from './prepared-depot.ts';
import { go, press, type Screen, signIn, type Visit } from './visit.ts';

const table = ({ page, say }: Visit, key: string) => page.getByRole('table', { name: say(key) });

const openSchedule = async (visit: Visit): Promise<void> => {
  await go(visit, '#/schedule');
  await table(visit, 'schedule:weeks').waitFor();
};

const dialogOf = ({ page, say }: Visit, action: string) =>
  page.getByRole('dialog').getByRole('heading', { name: say(`schedule:actions.${action}`) });

export const screensOfSchedule: readonly Screen[] = [
  {
    name: 'schedule',
    show: async (visit) => {
      await signIn(visit, badges.administrator);
      await go(visit, '#/schedule');
      return table(visit, 'schedule:weeks');
    },
  },
  {
    name: 'schedule, one week',
    show: async (visit) => {
      await openSchedule(visit);
      await table(visit, 'schedule:weeks').getByRole('link').first().click();
      return visit.page.getByRole('columnheader', { name: visit.say('schedule:where') });
    },
  },
  {
    name: 'dialog of the pick list',
    show: async (visit) => {
      await openSchedule(visit);
      await visit.page.keyboard.press('1');
      return dialogOf(visit, 'pick-list');
    },
  },
  {
    name: 'dialog of the calendar file',
    show: async (visit) => {
      await openSchedule(visit);
      await press(visit, 'schedule:actions.calendar');
      return dialogOf(visit, 'calendar');
    },
  },
  {
    name: 'dialog of the bench hours with every fault',
    show: async (visit) => {
      await openSchedule(visit);
      await press(visit, 'schedule:actions.capacity');
      const dialog = visit.page.getByRole('dialog');
      for (const field of await dialog.getByRole('textbox').all()) await field.fill('x');
      await press(visit, 'schedule:capacity.addClosure');
      await dialog.getByRole('combobox').first().selectOption({ index: 1 });
      await press(visit, 'screens:form.save');
      return dialog.getByText(visit.say('schedule:capacity.minutesFault'));
    },
  },
];

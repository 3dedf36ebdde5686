/** The correction of what was misread when a device of the invented depot was registered. */
import { isRefusal } from '../../domain/refusal.ts';
import { amend } from '../amend.ts';
import { personIn } from '../lookup.ts';
import type { Rules } from '../rules.ts';
import type { DemoDevice } from './demo-files.ts';
import { minutesADay, type TimedStep } from './timed-step.ts';

export const corrected = (
  { benchId, dateOfManufacture }: DemoDevice,
  { correctedDaysAgo, correctedBy, because }: NonNullable<DemoDevice['misread']>,
  rules: Rules,
): TimedStep => ({
  minutesAgo: correctedDaysAgo * minutesADay,
  by: correctedBy,
  decide: async (reader, occasion) => {
    const person = await personIn(reader, correctedBy);
    if (isRefusal(person)) return person;
    const [registered] = await reader.eventsOf(benchId);
    const amending = { amends: registered?.seq ?? 0, person, because, markingReadNow: true, occasion };
    return amend(reader, rules, { field: 'dateOfManufacture', now: dateOfManufacture }, amending);
  },
});

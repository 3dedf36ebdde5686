/** The programs of the invented depot, and what its competent person recorded of its devices for them. */
import type { CalendarDate } from '../../domain/brand.ts';
import type { Decision } from '../../domain/decide/decision.ts';
import { decideRecordRevalidation, decideSetUse } from '../../domain/decide/device-use.ts';
import { decideAdoptProgram } from '../../domain/decide/program.ts';
import type { Device } from '../../domain/device.ts';
import type { Person } from '../../domain/person.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { deviceIn, personIn, stationIn } from '../lookup.ts';
import type { Rules } from '../rules.ts';
import type { DemoDevice, DemoProgram } from './demo-files.ts';
import { minutesADay, type TimedStep } from './timed-step.ts';

const surveyor = 'P002';
/** When the surveyor went through the fleet and determined the types of use: the day after the second program. */
const surveyedDaysAgo = 119;

export const adopted = ({ daysAgo, by, ...changed }: DemoProgram, rules: Rules): TimedStep => ({
  minutesAgo: daysAgo * minutesADay,
  by,
  decide: async (reader, { on }) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const { version: _version, ...settings } = rules.shipped;
    const { presets, shipped, release: releaseRules } = rules;
    const modelSheets = await reader.modelSheets();
    const place = { station, presets, shipped, releaseRules, modelSheets };
    return decideAdoptProgram({ settings: { ...settings, ...changed }, effectiveFrom: on }, place, on);
  },
});

export const surveyed = ({ benchId, typeOfUse, revalidated }: DemoDevice): readonly TimedStep[] => {
  const step = (
    minutesAgo: number,
    decide: (device: Device, person: Person, on: CalendarDate) => Decision,
  ): TimedStep => ({
    minutesAgo,
    by: surveyor,
    decide: async (reader, { on }) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const person = await personIn(reader, surveyor);
      return isRefusal(person) ? person : decide(row.device, person, on);
    },
  });
  const steps: TimedStep[] = [];
  if (revalidated !== undefined) {
    const { daysAgo, by: revalidatedBy, certificate } = revalidated;
    steps.push(
      step(daysAgo * minutesADay - 5, (device, person, on) =>
        decideRecordRevalidation(device, { revalidatedOn: on, revalidatedBy, certificate }, person, on),
      ),
    );
  }
  if (typeOfUse !== undefined)
    steps.push(
      step(surveyedDaysAgo * minutesADay, (device, person, on) =>
        decideSetUse(device, { typeOfUse, from: on }, person, on),
      ),
    );
  return steps;
};

/** What went out of the invented depot and came back, its kit, and its shelves with the last count. */
import type { BenchId } from '../../domain/brand.ts';
import { addDays } from '../../domain/calendar.ts';
import type { DeskRules } from '../../domain/custody/desk-rules.ts';
import { decideCheckIn } from '../../domain/decide/check-in.ts';
import { decideCheckOut } from '../../domain/decide/custody.ts';
import type { Decision } from '../../domain/decide/decision.ts';
import { decideSaveKit } from '../../domain/decide/kit.ts';
import { decideCount, decideStore } from '../../domain/decide/shelf-count.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { devicesOfPlace, scannedDevices } from '../count-input.ts';
import { deviceIn, personIn } from '../lookup.ts';
import type { Rules } from '../rules.ts';
import type { DemoCustody } from './demo-files.ts';
import { minutesADay, type TimedStep } from './timed-step.ts';

export const custodySteps = (
  { by, kits, places, out }: DemoCustody,
  { desk }: Rules,
): readonly TimedStep[] => [
  ...places.flatMap((place) => placeSteps(place, by)),
  ...kits.map(({ savedDaysAgo, ...kit }) => ({
    minutesAgo: savedDaysAgo * minutesADay,
    by,
    decide: async (reader: LedgerReader): Promise<Decision> => {
      const devices = await scannedDevices(reader, { scanned: kit.benchIds });
      return isRefusal(devices) ? devices : decideSaveKit(kit, devices, [], []);
    },
  })),
  ...out.flatMap((spell) => spell.benchIds.flatMap((benchId) => spellSteps(benchId, spell, by, desk))),
];

const placeSteps = (
  { place, benchIds, storedDaysAgo, counted }: DemoCustody['places'][number],
  by: string,
): readonly TimedStep[] => {
  const stored = benchIds.map((benchId) => ({
    minutesAgo: storedDaysAgo * minutesADay,
    by,
    decide: async (reader: LedgerReader): Promise<Decision> => {
      const row = await deviceIn(reader, benchId);
      return isRefusal(row) ? row : decideStore(row.device, place);
    },
  }));
  return counted === undefined ? stored : [...stored, countStep(place, benchIds, counted, by)];
};

/** Everything that belongs there was scanned but what is missing, and beside it what strayed in from another place. */
const countStep = (
  place: string,
  benchIds: readonly BenchId[],
  { daysAgo, missing, strayed }: NonNullable<DemoCustody['places'][number]['counted']>,
  by: string,
): TimedStep => ({
  minutesAgo: daysAgo * minutesADay,
  by,
  decide: async (reader) => {
    const scanned = await scannedDevices(reader, {
      scanned: [...benchIds.filter((benchId) => !missing.includes(benchId)), ...strayed],
    });
    return isRefusal(scanned)
      ? scanned
      : decideCount({ place, scanned, unknown: [], keepHere: [] }, await devicesOfPlace(reader, place), []);
  },
});

/** Each a minute after the one before, and back with nothing in doubt where it is back. */
const spellSteps = (
  benchId: BenchId,
  {
    userId,
    language,
    benchIds,
    kitId,
    minutesAgo,
    backAfterDays,
    returnedMinutesAgo,
  }: DemoCustody['out'][number],
  by: string,
  desk: DeskRules,
): readonly TimedStep[] => {
  const later = benchIds.indexOf(benchId);
  const { key, version } = desk;
  const goesOut: TimedStep = {
    minutesAgo: minutesAgo - later,
    by,
    decide: async (reader, { on: today }) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const user = await personIn(reader, userId);
      if (isRefusal(user)) return user;
      const preUse = { list: { key, version }, language };
      const expectedOn = addDays(today, backAfterDays);
      return decideCheckOut(row.device, { user, today, expectedOn, preUse }, undefined, kitId);
    },
  };
  if (returnedMinutesAgo === undefined) return [goesOut];
  return [
    goesOut,
    {
      minutesAgo: returnedMinutesAgo - later,
      by,
      decide: async (reader) => {
        const row = await deviceIn(reader, benchId);
        if (isRefusal(row)) return row;
        const answers = desk.checkIn.map(({ key: question }) => ({ question, said: 'no' as const }));
        return decideCheckIn(row.device, desk, { answeredBy: userId, answers, withoutCheckOut: false }, []);
      },
    },
  ];
};

/** How custody, kits and counted places change with an event of the desk. */
import { explainedReasons } from './custody/check-in-answer.ts';
import type { CustodySpell } from './custody/custody.ts';
import type { Kit } from './custody/kit.ts';
import type { CountedPlace } from './custody/shelf-count.ts';
import type { CustodyEvent } from './custody-event.ts';
import type { Device } from './device.ts';
import type { RecordedEvent } from './event.ts';
import { withoutReasons } from './held/without-reasons.ts';

type EventOf<Type extends CustodyEvent['type']> = Extract<CustodyEvent, { type: Type }>;
type DeviceEvent = EventOf<
  | 'device.checked-out'
  | 'device.checked-in'
  | 'device.check-in-answered'
  | 'device.transferred'
  | 'device.lost'
  | 'device.stored'
>;

export const inCustody = (device: Device, { seq, on, at, by }: RecordedEvent, event: DeviceEvent): Device => {
  const { custody, ...inStore } = device;
  const begun = { spell: seq, since: { on, at }, handedOutBy: by };
  switch (event.type) {
    case 'device.checked-out': {
      const { userId, expectedOn, kitId } = event;
      return {
        ...inStore,
        custody: {
          ...begun,
          userId,
          ...(expectedOn === undefined ? {} : { expectedOn }),
          ...(kitId === undefined ? {} : { kitId }),
        },
      };
    }
    case 'device.transferred': {
      const { toUserId, expectedOn } = event;
      return {
        ...inStore,
        custody: { ...begun, userId: toUserId, ...(expectedOn === undefined ? {} : { expectedOn }) },
      };
    }
    case 'device.checked-in':
      return withOpenQuestions(inStore, event);
    case 'device.check-in-answered':
      return withOpenQuestions(withoutUnexplained(device, event), event);
    case 'device.lost':
      return custody === undefined ? device : { ...inStore, custody: { ...custody, lostOn: on } };
    case 'device.stored':
      return { ...device, stored: { place: event.place, on } };
  }
};

const withOpenQuestions = (
  { openCheckIn: _before, ...device }: Device,
  { open }: EventOf<'device.checked-in' | 'device.check-in-answered'>,
): Device => (open === undefined ? device : { ...device, openCheckIn: open });

/** Once it is said what a yes was, that stands in the place of the bare yes. */
const withoutUnexplained = (device: Device, { answers }: EventOf<'device.check-in-answered'>): Device =>
  device.standing === 'scrapped' ? device : withoutReasons(device, explainedReasons(answers));

/** The times that a user had the device which the event began, changed or ended. */
export const changedSpells = (
  before: Device | undefined,
  after: Device | undefined,
  { event, on, at, by }: RecordedEvent,
): readonly CustodySpell[] => {
  const was = before?.custody;
  const is = after?.custody;
  if (before === undefined || after === undefined || was === is) return [];
  const { benchId } = after;
  const current = is === undefined ? [] : [{ ...is, benchId }];
  if (was === undefined || was.spell === is?.spell) return current;
  const how = event.type === 'device.transferred' ? 'transferred' : 'checked in';
  return [{ ...was, benchId, ended: { on, at, how, by } }, ...current];
};

export const keptKits = (
  kits: readonly Kit[],
  event: EventOf<'kit.saved' | 'kit.removed'>,
): readonly Kit[] => {
  const kitId = event.type === 'kit.saved' ? event.kit.kitId : event.kitId;
  const others = kits.filter((kit) => kit.kitId !== kitId);
  return event.type === 'kit.saved'
    ? [...others, event.kit].toSorted((one, other) => one.name.localeCompare(other.name))
    : others;
};

export const countedPlaces = (
  counted: readonly CountedPlace[],
  { on, by }: RecordedEvent,
  { place, found, missing, wrongPlace, recordedOut, unknown }: EventOf<'place.counted'>,
): readonly CountedPlace[] =>
  [
    ...counted.filter((other) => other.place !== place),
    {
      place,
      on,
      by,
      found: found.length,
      missing: missing.length,
      wrongPlace: wrongPlace.length,
      recordedOut: recordedOut.length,
      unknown: unknown.length,
    },
  ].toSorted((one, other) => one.place.localeCompare(other.place));

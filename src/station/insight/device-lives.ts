/** The life of each device in service, as its tags and the events of its removals tell it. */
import type { BenchId } from '../../domain/brand.ts';
import type { Device } from '../../domain/device.ts';
import { currentUse } from '../../domain/due/type-of-use.ts';
import type { RecordedEvent } from '../../domain/event.ts';
import { manufacturedIn } from '../../domain/identity/registered-device.ts';
import type { DeviceRow, LedgerReader } from '../../ledger/ledger.ts';
import type { DeviceLife } from '../../planning/insight/removal-insight.ts';

const devicesAtOnce = 1000;

export const deviceLives = async (reader: LedgerReader): Promise<readonly DeviceLife[]> => {
  const lives: DeviceLife[] = [];
  let after: BenchId | undefined;
  for (;;) {
    const rows = await reader.devicesAfter(after, devicesAtOnce);
    for (const row of rows) lives.push(await lifeOf(reader, row));
    after = rows.at(-1)?.device.benchId;
    if (rows.length < devicesAtOnce) return lives;
  }
};

/** The events are read only where a quarantine tag says that there was a removal. */
const lifeOf = async (reader: LedgerReader, { device, modelSheet }: DeviceRow): Promise<DeviceLife> => {
  const tags = [...device.pastTags, ...(device.currentTag === undefined ? [] : [device.currentTag])];
  const inServiceFrom = tags.find(({ kind }) => kind === 'status')?.issuedOn;
  const wasRemoved = tags.some(({ kind }) => kind === 'quarantine');
  return {
    model: `${modelSheet.manufacturer} ${modelSheet.model}`,
    ratedLengthM: modelSheet.ratedLengthM,
    ...yearOf(device),
    ...(currentUse(device.uses) === undefined ? {} : { typeOfUse: currentUse(device.uses)?.typeOfUse }),
    ...(inServiceFrom === undefined ? {} : { inServiceFrom }),
    removals: wasRemoved ? removalsIn(await reader.eventsOf(device.benchId)) : [],
  };
};

const yearOf = ({ dateOfManufacture }: Device): Pick<DeviceLife, 'yearMade'> => {
  const made = manufacturedIn(dateOfManufacture);
  return made === undefined ? {} : { yearMade: Number(made.year) };
};

/** What the second inspection of a blind pair finds on a device that is held already is no further removal. */
const removalsIn = (events: readonly RecordedEvent[]): DeviceLife['removals'] => {
  let isHeld = false;
  return events.flatMap((recorded) => {
    const { event } = recorded;
    const isSecond = event.type === 'inspection.signed' && event.reinspection !== undefined;
    const removals = isSecond && isHeld ? [] : removalIn(recorded);
    if (removals.length > 0) isHeld = true;
    if (event.type === 'inspection.signed' && event.verdict.kind === 'pass' && !isSecond) isHeld = false;
    return removals;
  });
};

const removalIn = ({ event, on }: RecordedEvent): DeviceLife['removals'] => {
  if (event.type === 'device.removed') return [{ on, zones: event.reasons.map(({ zone }) => zone) }];
  return event.type === 'inspection.signed' && event.verdict.kind === 'remove from service'
    ? [{ on, zones: event.verdict.reasons.map(({ zone }) => zone) }]
    : [];
};

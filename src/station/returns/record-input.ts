/** What a plan of returns is made of, from the record: the devices and prices that are known, and what is missing, maker by maker. */
import type { BenchId, CalendarDate } from '../../domain/brand.ts';
import { serviceLifeEnd } from '../../domain/due/service-life-end.ts';
import type { LengthPlan } from '../../domain/held/returns-basis.ts';
import type { HeldDevice, Need, NewDevice, ReturnPlanInput } from '../../planning/returns/plan-input.ts';
import type { GatheredReturns, HeldRow } from './gather-returns.ts';
import { type MissingFromRecord, missingFromRecord } from './missing-from-record.ts';
import { turnaroundOf } from './turnaround.ts';

/** Why a device cannot be repaired at all. */
export type LostWhy = 'condemned' | 'not repairable' | 'life over' | 'sent back';

/** Why a held device is no part of the plan. */
export type ApartWhy =
  /** In a return batch, packed or on its way; `ready` is the month of the plan from which it counts again. */
  | { readonly kind: 'away'; readonly batch: number; readonly ready?: number }
  | { readonly kind: 'not here' }
  | { readonly kind: 'at the bench' }
  | { readonly kind: 'fall case' }
  /** What is missing is to be done here; its manufacturer is not needed. */
  | { readonly kind: 'step here' };

export interface RecordedInput {
  readonly input: ReturnPlanInput;
  /** The devices of the plan, by their bench IDs. */
  readonly rows: ReadonlyMap<string, HeldRow>;
  readonly lost: ReadonlyMap<string, LostWhy>;
  readonly apart: readonly { readonly row: HeldRow; readonly why: ApartWhy }[];
  readonly missing: readonly MissingFromRecord[];
}

/** Of a month of 30 days each: a repair of 31 days is back in the second month after. */
const monthsOfDays = (days: number): number => Math.min(24, Math.ceil(days / 30));

/** How many months of the calendar after the one of today. */
const monthAfter = (date: CalendarDate, today: CalendarDate): number =>
  (Number(date.slice(0, 4)) - Number(today.slice(0, 4))) * 12 +
  Number(date.slice(5, 7)) -
  Number(today.slice(5, 7));

export const recordedInput = (gathered: GatheredReturns): RecordedInput => {
  const { basis, held } = gathered;
  const placed = held.map((row) => ({ row, why: apartWhy(row, gathered) }));
  const planned = placed.flatMap(({ row, why }) => (why === undefined ? [row] : []));
  const lost = new Map<string, LostWhy>(
    planned.flatMap((row) => {
      const why = lostWhy(row, gathered);
      return why === undefined ? [] : [[row.device.benchId, why] as const];
    }),
  );
  const makers = new Set(planned.map(({ modelSheet }) => modelSheet.manufacturer));
  const away = placed.flatMap(({ row, why }) => (why?.kind === 'away' ? [{ row, ready: why.ready }] : []));
  return {
    input: {
      currency: basis.currency ?? '',
      months: basis.months,
      devices: planned.map((row) => heldDevice(row, lost.has(row.device.benchId), gathered)),
      manufacturers: basis.makers
        .filter(({ manufacturer }) => makers.has(manufacturer))
        .map(({ manufacturer, shipmentCost, priceBreaks }) => ({
          name: manufacturer,
          shipmentCost,
          priceBreaks: [...priceBreaks],
        })),
      newDevices: basis.lengths.flatMap(newDeviceOf),
      needs: basis.lengths.flatMap((plan) => needOf(plan, away, gathered)),
    },
    rows: new Map(planned.map((row) => [row.device.benchId, row])),
    lost,
    apart: placed.flatMap(({ row, why }) => (why === undefined ? [] : [{ row, why }])),
    missing: missingFromRecord(
      planned.filter(({ device }) => !lost.has(device.benchId)),
      [...new Set(planned.map(({ modelSheet }) => modelSheet.ratedLengthM))],
      gathered,
    ),
  };
};

const apartWhy = (row: HeldRow, gathered: GatheredReturns): ApartWhy | undefined => {
  const { device, missing } = row;
  if (device.returnBatch !== undefined) return awayWhy(row, device.returnBatch, gathered);
  if (device.custody !== undefined || device.openCheckIn !== undefined) return { kind: 'not here' };
  if (device.release !== undefined || device.openInspection !== undefined) return { kind: 'at the bench' };
  const kinds = missing.flatMap((each) => each.kinds);
  if (kinds.some(({ how }) => how === 'never')) return undefined;
  if (
    (device.fallCases ?? []).some(({ closedOn }) => closedOn === undefined) ||
    kinds.some(({ how }) => how === 'fall case')
  )
    return { kind: 'fall case' };
  return missing.some((each) => each.kinds[0]?.owner === 'manufacturer') ? undefined : { kind: 'step here' };
};

/** It counts again when its turnaround is over, as a plan counts it, in the month after this one at the earliest. */
const awayWhy = (row: HeldRow, number: number, gathered: GatheredReturns): ApartWhy => {
  const { batches, today } = gathered;
  const turnaround = turnaroundOf(row, gathered);
  if (turnaround === undefined) return { kind: 'away', batch: number };
  const shippedOn = batches.find((batch) => batch.number === number)?.shipped?.on ?? today;
  const ready = Math.max(1, monthAfter(shippedOn, today) + monthsOfDays(turnaround.days));
  return { kind: 'away', batch: number, ready };
};

const lostWhy = (row: HeldRow, { today, terms, batches }: GatheredReturns): LostWhy | undefined => {
  const { device, modelSheet, missing } = row;
  if (missing.some(({ kinds }) => kinds.some(({ how }) => how === 'never'))) return 'condemned';
  if (row.quote === undefined && terms.get(device.modelSheetId)?.repairable === 'no') return 'not repairable';
  const end = serviceLifeEnd(device, modelSheet);
  if (end !== undefined && monthAfter(end, today) <= 0) return 'life over';
  const came = batches.flatMap(({ devices }) =>
    devices.flatMap(({ benchId, back }) => (benchId === device.benchId && back !== undefined ? [back] : [])),
  );
  const latest = came.toSorted((one, other) => (one.on < other.on ? 1 : -1))[0];
  const removedOn = device.currentTag?.issuedOn;
  return latest?.outcome === 'not repaired' && removedOn !== undefined && latest.on >= removedOn
    ? 'sent back'
    : undefined;
};

const heldDevice = (row: HeldRow, isLost: boolean, gathered: GatheredReturns): HeldDevice => {
  const { device, modelSheet } = row;
  const { today } = gathered;
  const turnaround = turnaroundOf(row, gathered);
  const end = serviceLifeEnd(device, modelSheet);
  const repairPrice = row.quote?.price ?? modelPrice(row, gathered);
  return {
    id: device.benchId,
    manufacturer: modelSheet.manufacturer,
    lengthM: modelSheet.ratedLengthM,
    repairable: !isLost,
    ...(repairPrice === undefined ? {} : { repairPrice }),
    ...(turnaround === undefined ? {} : { turnaroundMonths: monthsOfDays(turnaround.days) }),
    availableFrom: 0,
    ...lifeOf(end, isLost, today),
  };
};

/** Nothing is asked of the life of what is not repaired. */
const lifeOf = (
  end: CalendarDate | undefined,
  isLost: boolean,
  today: CalendarDate,
): Pick<HeldDevice, 'lifeMonths'> => {
  if (isLost) return { lifeMonths: 0 };
  return end === undefined ? {} : { lifeMonths: Math.max(0, monthAfter(end, today)) };
};

/** Absent where nobody has said it, or the quote ended. */
const modelPrice = ({ device }: HeldRow, { terms, today }: GatheredReturns): number | undefined => {
  const said = terms.get(device.modelSheetId);
  return said?.validUntil !== undefined && said.validUntil < today ? undefined : said?.price;
};

const newDeviceOf = ({ lengthM, newDevice }: LengthPlan): NewDevice[] =>
  newDevice === undefined
    ? []
    : [
        {
          lengthM,
          price: newDevice.price,
          leadMonths: monthsOfDays(newDevice.leadTimeDays),
          ...(newDevice.lifeYears === undefined ? {} : { lifeMonths: newDevice.lifeYears * 12 }),
        },
      ];

const needOf = (
  { lengthM, needed }: LengthPlan,
  away: readonly { readonly row: HeldRow; readonly ready: number | undefined }[],
  { basis: { months }, today, inService }: GatheredReturns,
): Need[] => {
  if (needed === undefined) return [];
  const ends = (inService.get(lengthM) ?? []).map((end) => ({ from: 0, end }));
  const coming = away.flatMap(({ row: { device, modelSheet }, ready }) =>
    ready === undefined || modelSheet.ratedLengthM !== lengthM
      ? []
      : [{ from: ready, end: serviceLifeEnd(device, modelSheet) }],
  );
  const thisMonth = Number(today.slice(5, 7)) - 1;
  const everyMonth = Array.from({ length: months }, (_, month) => month);
  return [
    {
      lengthM,
      ready: everyMonth.map(
        (month) =>
          [...ends, ...coming].filter(
            ({ from, end }) => from <= month && (end === undefined || month < monthAfter(end, today)),
          ).length,
      ),
      perMonth: everyMonth.map((month) => needed[(thisMonth + month) % 12] ?? 0),
    },
  ];
};

/** For the screens and the command line: which devices of the plan there are, and where they lie. */
export interface PlannedDevice {
  readonly benchId: BenchId;
  readonly manufacturer: string;
  readonly model: string;
  readonly serial: string;
  readonly lengthM: number;
  readonly place?: string;
}

export const plannedDevice = ({ device, modelSheet }: HeldRow): PlannedDevice => ({
  benchId: device.benchId,
  manufacturer: modelSheet.manufacturer,
  model: modelSheet.model,
  serial: device.serial,
  lengthM: modelSheet.ratedLengthM,
  ...(device.stored === undefined ? {} : { place: device.stored.place }),
});

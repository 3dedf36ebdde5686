/** What a plan of returns is made of, from a record that is put together by hand. */
import { expect, test } from 'vitest';
import { type BenchId, calendarDate, metres } from '../../../src/domain/brand.ts';
import type { EvidenceKind } from '../../../src/domain/held/release-rules.ts';
import type { GatheredReturns, HeldRow } from '../../../src/station/returns/gather-returns.ts';
import { recordedInput } from '../../../src/station/returns/record-input.ts';

const today = calendarDate('2026-11-15');

const kind = (key: string, how: EvidenceKind['how'], owner: EvidenceKind['owner']): EvidenceKind => ({
  key,
  how,
  owner,
  label: { en: key, es: key },
  missing: { en: key, es: key },
});
const certificate = kind('repair-certificate', 'certificate', 'manufacturer');
const statement = kind('doubt-settled', 'statement', 'competent person');

interface Row {
  readonly device?: Partial<HeldRow['device']>;
  readonly sheet?: Partial<HeldRow['modelSheet']>;
  readonly kinds?: readonly EvidenceKind[];
}

/** Of the Norvane Lode 6 where nothing else is said. */
const row = (id: string, { device = {}, sheet = {}, kinds = [certificate] }: Row = {}): HeldRow => ({
  device: {
    benchId: id as BenchId,
    modelSheetId: 'M002',
    serial: id,
    standing: 'quarantined',
    registeredOn: calendarDate('2024-01-10'),
    dateOfManufacture: '2023-05',
    reasons: [],
    pastTags: [],
    ...device,
  } as HeldRow['device'],
  modelSheet: {
    modelSheetId: 'M002',
    manufacturer: 'Norvane',
    model: 'Lode 6',
    ratedLengthM: metres(6),
    ...sheet,
  } as HeldRow['modelSheet'],
  missing: kinds.map((each) => ({ reason: 1, kinds: [each] })),
});

const said = {
  kind: 'repair terms',
  modelSheetId: 'M002',
  on: today,
  by: 'P001',
  repairable: 'yes',
  price: 210,
  leadTimeDays: 45,
} as const;

const gathered = (held: readonly HeldRow[], change: Partial<GatheredReturns> = {}): GatheredReturns => ({
  today,
  basis: {
    currency: 'EUR',
    months: 4,
    makers: [{ manufacturer: 'Norvane', shipmentCost: 90, priceBreaks: [{ from: 3, percentOff: 10 }] }],
    lengths: [
      {
        lengthM: metres(6),
        // Eleven and twelve in November and December, one and two in January and February.
        needed: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
        newDevice: { price: 400, leadTimeDays: 61, lifeYears: 10 },
      },
    ],
  },
  held,
  terms: new Map([['M002', said]]),
  batches: [],
  inService: new Map([[6, [undefined, calendarDate('2027-01-20')]]]),
  ...change,
});

const kindsMissing = (of: GatheredReturns): readonly string[] =>
  recordedInput(of).missing.map((each) => each.kind);

test('prices, turnarounds, needs and what is in service come from the record, by the month of the calendar', () => {
  const { input, missing } = recordedInput(
    gathered([row('A', { sheet: { serviceLife: { years: 5, from: 'manufacture' } } })]),
  );
  expect(input).toEqual({
    currency: 'EUR',
    months: 4,
    devices: [
      {
        id: 'A',
        manufacturer: 'Norvane',
        lengthM: 6,
        repairable: true,
        repairPrice: 210,
        // 45 days are more than one month of 30, so it is back in the second.
        turnaroundMonths: 2,
        availableFrom: 0,
        // Made in May 2023 and good for five years: from November 2026 to May 2028.
        lifeMonths: 18,
      },
    ],
    manufacturers: [{ name: 'Norvane', shipmentCost: 90, priceBreaks: [{ from: 3, percentOff: 10 }] }],
    newDevices: [{ lengthM: 6, price: 400, leadMonths: 3, lifeMonths: 120 }],
    // The service life of one of two ends in January.
    needs: [{ lengthM: 6, ready: [2, 2, 1, 1], perMonth: [11, 12, 1, 2] }],
  });
  expect(missing).toEqual([]);
});

test('each gap is named once with what it is about, and nothing stands in its place', () => {
  const rows = [row('A'), row('B')];
  const about = { model: { modelSheetId: 'M002', name: 'Norvane Lode 6' }, devices: 2 };
  const empty = recordedInput(
    gathered(rows, { basis: { months: 12, makers: [], lengths: [] }, terms: new Map() }),
  );
  expect(empty.missing).toEqual([
    { kind: 'currency', devices: 2 },
    { kind: 'maker', manufacturer: 'Norvane', devices: 2 },
    { kind: 'repair terms', ...about },
    { kind: 'need', lengthM: 6, devices: 2 },
    { kind: 'new device', lengthM: 6, devices: 2 },
    { kind: 'service life', ...about },
  ]);
  expect(empty.input).toMatchObject({ manufacturers: [], newDevices: [], needs: [], currency: '' });
  expect(empty.input.devices[0]).not.toHaveProperty('repairPrice');
  const { price: _price, leadTimeDays: _days, ...bare } = said;
  expect(kindsMissing(gathered(rows, { terms: new Map([['M002', bare]]) }))).toEqual([
    'repair price',
    'turnaround',
    'service life',
  ]);
});

test('a quote that ended is not used, and a price that is not fixed is used and said', () => {
  const ended = gathered([row('A')], {
    terms: new Map([['M002', { ...said, validUntil: calendarDate('2026-11-14') }]]),
  });
  expect(kindsMissing(ended)).toContain('quote ended');
  expect(recordedInput(ended).input.devices[0]).not.toHaveProperty('repairPrice');
  const today_ = gathered([row('A')], { terms: new Map([['M002', { ...said, validUntil: today }]]) });
  expect(recordedInput(today_).input.devices[0]).toMatchObject({ repairPrice: 210 });
  const asked = gathered([row('A')], {
    terms: new Map([['M002', { ...said, repairable: 'ask each time' as const }]]),
  });
  expect(kindsMissing(asked)).toContain('price not fixed');
  expect(recordedInput(asked).input.devices[0]).toMatchObject({ repairPrice: 210 });
});

test('a quote for the device itself wins over what is said of its model', () => {
  const quote = {
    kind: 'device quote' as const,
    benchId: 'A' as BenchId,
    price: 175,
    leadTimeDays: 20,
    on: today,
    by: 'P001',
  };
  const no = { ...said, repairable: 'no' as const };
  const of = gathered([{ ...row('A'), quote }, row('B')], { terms: new Map([['M002', no]]) });
  const { input, lost, missing } = recordedInput(of);
  expect(input.devices[0]).toMatchObject({ repairable: true, repairPrice: 175, turnaroundMonths: 1 });
  expect([...lost.keys()]).toEqual(['B']);
  expect(missing.map((each) => each.kind)).toEqual(['service life']);
});

test('what cannot be repaired is replaced or scrapped, and it is known why', () => {
  const never = kind('no-return', 'never', 'attendant');
  const life = { serviceLife: { years: 3, from: 'manufacture' as const } };
  const { lost, input } = recordedInput(
    gathered([row('A', { kinds: [never] }), row('B', { sheet: life }), row('C')]),
  );
  // Made in May 2023 and good for three years.
  expect([...lost]).toEqual([
    ['A', 'condemned'],
    ['B', 'life over'],
  ]);
  expect(input.devices.map(({ repairable }) => repairable)).toEqual([false, false, true]);
  const no = gathered([row('A')], { terms: new Map([['M002', { ...said, repairable: 'no' as const }]]) });
  expect([...recordedInput(no).lost]).toEqual([['A', 'not repairable']]);
});

test('devices that cannot be sent are no part of the plan, and those that are away count again when they are back', () => {
  const batch = {
    kind: 'return batch' as const,
    number: 7,
    phase: 'shipped' as const,
    manufacturer: 'Norvane',
    openedBy: 'P001',
    openedOn: today,
    devices: [{ benchId: 'A' as BenchId }],
    shipped: {
      on: calendarDate('2026-11-02'),
      by: 'P001',
      carrier: 'Harrow Freight',
      followUpOn: today,
      condition: 'Hook struck a girder.',
      contamination: 'none known' as const,
    },
    followUps: [],
  };
  const { apart, input } = recordedInput(
    gathered(
      [
        row('A', { device: { standing: 'at manufacturer', returnBatch: 7 } }),
        row('B', { device: { fallCases: [{ fallCase: 1, openedOn: today }] } }),
        row('C', { kinds: [statement] }),
        row('D', { device: { openInspection: 4 } }),
        row('E', { device: { openCheckIn: {} as NonNullable<HeldRow['device']['openCheckIn']> } }),
      ],
      { batches: [batch] },
    ),
  );
  expect(apart.map(({ why }) => why)).toEqual([
    // Shipped this month, for more than one month of 30 days.
    { kind: 'away', batch: 7, ready: 2 },
    { kind: 'fall case' },
    { kind: 'step here' },
    { kind: 'at the bench' },
    { kind: 'not here' },
  ]);
  expect(input.devices).toEqual([]);
  expect(input.needs[0]!.ready).toEqual([2, 2, 2, 2]);
});

test('where nobody says how long a repair takes, what came back so far says it, and the plan says so', () => {
  const { leadTimeDays: _days, ...bare } = said;
  const back = { on: calendarDate('2026-10-11'), by: 'P001', outcome: 'repaired' as const };
  const of = gathered([row('A')], {
    terms: new Map([['M002', bare]]),
    batches: [
      {
        kind: 'return batch',
        number: 1,
        phase: 'closed',
        manufacturer: 'Norvane',
        openedBy: 'P001',
        openedOn: calendarDate('2026-09-01'),
        devices: [{ benchId: 'Z' as BenchId, back }],
        shipped: {
          on: calendarDate('2026-09-01'),
          by: 'P001',
          carrier: 'Harrow Freight',
          followUpOn: today,
          condition: 'Worn.',
          contamination: 'none known',
        },
        followUps: [],
      },
    ],
  });
  // 1 September to 11 October are 40 days.
  expect(recordedInput(of).missing).toContainEqual({
    kind: 'observed turnaround',
    manufacturer: 'Norvane',
    devices: 1,
    days: 40,
  });
  expect(recordedInput(of).input.devices[0]).toMatchObject({ turnaroundMonths: 2 });
});

/** What every ledger must answer to its readers, and find on its register. */
import { beforeEach, describe, expect, it } from 'vitest';
import { calendarDate } from '../../src/domain/brand.ts';
import type { DomainEvent, Occasion, RecordedEvent } from '../../src/domain/event.ts';
import type { DeviceQuery, Ledger } from '../../src/ledger/ledger.ts';
import {
  benchId,
  codeBound,
  deviceRegistered,
  deviceRemoved,
  identityOpened,
  inspectedDevice,
  inspectionAbandoned,
  inspectionAnswered,
  inspectionPassed,
  inspectionStarted,
  modelSheet,
  modelSheetRecorded,
  occasion,
  occasionOn,
  personAdded,
  personDesignated,
  setUp,
  stationCreated,
} from './sample-events.ts';

/** The ledger under test, empty at the start of each test, with what a test does to it most. */
export interface Bench {
  readonly ledger: Ledger;
  /** On the usual occasion where none is given; throws where the ledger refuses. */
  record(events: readonly DomainEvent[], when?: Occasion): Promise<readonly RecordedEvent[]>;
  /** The first ten where the query says no limit. */
  found(query: Partial<DeviceQuery>): Promise<{ readonly ids: readonly string[]; readonly total: number }>;
}

export const readingConformance = (bench: () => Bench): void => {
  let ledger: Ledger;
  let record: Bench['record'];
  let found: Bench['found'];
  beforeEach(() => {
    ({ ledger, record, found } = bench());
  });

  describe('reading', () => {
    it('gives what tells each device from the others, as it is now', async () => {
      await record([...setUp, ...inspectedDevice(1)]);
      const [row] = await ledger.read((reader) => reader.registeredDevices());
      const known = await ledger.read((reader) => reader.device(benchId(1)));
      expect(row).toMatchObject({
        benchId: benchId(1),
        serial: known?.device.serial,
        dateOfManufacture: known?.device.dateOfManufacture,
        standing: known?.device.standing,
        tagNumber: known?.device.lastTagNumber,
      });
    });

    it('gives the open cases of "who is this?", and how the others ended', async () => {
      await record([...setUp, identityOpened(1), identityOpened(2)]);
      await record([{ type: 'identity.left-unidentified', identityCase: 1, keptAt: 'Shelf' }]);
      await ledger.read(async (reader) => {
        expect((await reader.openIdentityCases()).map(({ identityCase }) => identityCase)).toEqual([2]);
        expect(await reader.identityCase(1)).toMatchObject({ state: 'unidentified', keptAt: 'Shelf' });
        expect(await reader.identityCase(3)).toBeUndefined();
        expect(await reader.closedIdentityCases()).toEqual({ closed: 1, none: 1 });
        expect(await reader.nextIdentityCaseNumber()).toBe(3);
      });
    });

    it('gives the station, its people by name, and each of them by ID and by badge', async () => {
      await record([
        stationCreated,
        personAdded('p-1', 'Vera Lund', 'B-100'),
        personAdded('p-2', 'anselm Roe', 'b-100'),
        personDesignated('p-1'),
      ]);
      await ledger.read(async (reader) => {
        expect(await reader.station()).toEqual({
          stationId: 'harrow-point',
          name: 'Harrow Point depot',
          timeZone: 'Europe/Lisbon',
          lengthUnit: 'm',
          demo: true,
          printers: [],
        });
        expect((await reader.people()).map(({ name }) => name)).toEqual(['anselm Roe', 'Vera Lund']);
        expect(await reader.person('p-1')).toMatchObject({
          name: 'Vera Lund',
          designation: { designatedBy: 'Vera Lund' },
        });
        expect((await reader.personByBadge('B-100'))?.personId).toBe('p-1');
        expect((await reader.personByBadge('b-100'))?.personId).toBe('p-2');
        expect(await reader.personByBadge('B-1')).toBeUndefined();
        expect(await reader.person('p-3')).toBeUndefined();
      });
    });

    it('gives model sheets by maker and model', async () => {
      await record([
        modelSheetRecorded({
          modelSheetId: 's1',
          manufacturer: 'Tarn',
          model: 'A',
        }),
        modelSheetRecorded({
          modelSheetId: 's2',
          manufacturer: 'norfell',
          model: 'Z',
        }),
        modelSheetRecorded({
          modelSheetId: 's3',
          manufacturer: 'Norfell',
          model: 'K',
        }),
      ]);
      const sheets = await ledger.read((reader) => reader.modelSheets());
      expect(sheets.map(({ modelSheetId }) => modelSheetId)).toEqual(['s3', 's2', 's1']);
      expect(await ledger.read((reader) => reader.modelSheet('s2'))).toEqual({
        ...modelSheet,
        modelSheetId: 's2',
        manufacturer: 'norfell',
        model: 'Z',
      });
    });

    it('gives a device with its model sheet, as the events leave it', async () => {
      await record([...setUp, ...inspectedDevice(3)]);
      const row = await ledger.read((reader) => reader.device(benchId(3)));
      expect(row?.modelSheet).toEqual(modelSheet);
      expect(row?.device).toMatchObject({
        benchId: benchId(3),
        serial: 'SN-3',
        standing: 'in service',
        dueOn: '2026-09-02',
        registeredOn: '2026-03-02',
        currentTag: { kind: 'status', tagNumber: 1 },
      });
      expect(await ledger.read((reader) => reader.device(benchId(4)))).toBeUndefined();
    });

    it('finds a device by any other code: letter case matters, surrounding space does not', async () => {
      await record([...setUp, deviceRegistered(benchId(1), 'A', [{ code: 'Nf-77', kind: 'maker' }])]);
      await record([codeBound(benchId(1), '04:A2:19:FF')]);
      const byCode = (code: string) => ledger.read((reader) => reader.deviceByCode(code));
      expect(await byCode(' Nf-77\n')).toBe(benchId(1));
      expect(await byCode('04:A2:19:FF')).toBe(benchId(1));
      expect(await byCode('NF-77')).toBeUndefined();
      expect(await byCode('Nf77')).toBeUndefined();
    });

    it('finds devices by serial number, letter case aside, over all model sheets or within one', async () => {
      await record([
        ...setUp,
        modelSheetRecorded({ modelSheetId: 'tarn-2', manufacturer: 'Tarn' }),
        deviceRegistered(benchId(1), 'ab-1'),
        deviceRegistered(benchId(2), 'AB-1', [], 'tarn-2'),
        deviceRegistered(benchId(3), 'AB-10'),
      ]);
      const bySerial = (serial: string, sheet?: string) =>
        ledger.read((reader) => reader.devicesBySerial(serial, sheet));
      expect(new Set(await bySerial('Ab-1 '))).toEqual(new Set([benchId(1), benchId(2)]));
      expect(await bySerial('AB-1', 'tarn-2')).toEqual([benchId(2)]);
      expect(await bySerial('AB')).toEqual([]);
    });

    it('gives all bench IDs in their order, as many at a time as are asked for', async () => {
      await record([...setUp, ...[2, 0, 1].map((index) => deviceRegistered(benchId(index), `S-${index}`))]);
      const ids = [benchId(0), benchId(1), benchId(2)].toSorted();
      await ledger.read(async (reader) => {
        expect(await reader.benchIds(undefined, 2)).toEqual(ids.slice(0, 2));
        expect(await reader.benchIds(ids[1], 2)).toEqual(ids.slice(2));
        expect(await reader.benchIds(ids[2], 2)).toEqual([]);
      });
    });

    it('gives inspections: one, those of a device newest first, those still open, and the next number', async () => {
      await record([...setUp, deviceRegistered(benchId(1), 'A'), deviceRegistered(benchId(2), 'B')]);
      await record([
        inspectionStarted(1, benchId(1)),
        inspectionAnswered(1, benchId(1), 'brake.engages'),
        inspectionAbandoned(1, benchId(1)),
        inspectionStarted(2, benchId(2)),
        inspectionStarted(3, benchId(1)),
        inspectionPassed(3, benchId(1), '2026-09-02'),
      ]);
      await ledger.read(async (reader) => {
        expect(await reader.inspection(1)).toMatchObject({
          state: 'abandoned',
          answers: {
            'brake.engages': {
              answer: { kind: 'good' },
              by: 'p-ines',
              at: occasion.at,
            },
          },
        });
        expect((await reader.inspectionsOf(benchId(1))).map(({ inspection }) => inspection)).toEqual([3, 1]);
        expect((await reader.openInspections()).map(({ inspection }) => inspection)).toEqual([2]);
        expect(await reader.nextInspectionNumber()).toBe(4);
        expect(await reader.inspection(9)).toBeUndefined();
      });
    });

    it('gives the events that concern a device, oldest first, answers included', async () => {
      await record([...setUp, ...inspectedDevice(1), ...inspectedDevice(2)]);
      await record([deviceRemoved(benchId(1), 2)], occasionOn('2026-05-01'));
      const events = await ledger.read((reader) => reader.eventsOf(benchId(1)));
      expect(events.map(({ event }) => event)).toEqual([...inspectedDevice(1), deviceRemoved(benchId(1), 2)]);
      expect(events.map(({ seq }) => seq)).toEqual([5, 6, 7, 8, 9, 10, 17]);
      expect(events.at(-1)?.on).toBe('2026-05-01');
    });

    it('counts the fleet on a day; a due date is in time on the day itself', async () => {
      await record([
        ...setUp,
        ...[1, 2, 3, 4, 5, 6].map((n) => deviceRegistered(benchId(n), `S${n}`)),
        inspectionStarted(1, benchId(1)),
        inspectionPassed(1, benchId(1), '2026-05-31'),
        inspectionStarted(2, benchId(2)),
        inspectionPassed(2, benchId(2), '2026-06-01'),
        inspectionStarted(3, benchId(3)),
        inspectionPassed(3, benchId(3), '2026-07-01'),
        inspectionStarted(4, benchId(4)),
        inspectionPassed(4, benchId(4), '2026-07-02'),
        deviceRemoved(benchId(5)),
        inspectionStarted(5, benchId(6)),
      ]);
      const counts = await ledger.read((reader) =>
        reader.counts(calendarDate('2026-06-01'), calendarDate('2026-07-01')),
      );
      expect(counts).toEqual({
        devices: 6,
        inService: 4,
        neverInspected: 1,
        overdue: 1,
        dueSoon: 2,
        held: 1,
        openInspections: 1,
        unprovedTags: 5,
        out: 0,
        // The overdue one is not ready.
        ready: 3,
        overdueReturns: 0,
      });
    });

    it('shows a reader one state, however much is recorded meanwhile', async () => {
      await record([...setUp, deviceRegistered(benchId(1), 'A')]);
      const { before, after } = await ledger.read(async (reader) => {
        const before = await reader.device(benchId(1));
        await record([deviceRemoved(benchId(1)), deviceRegistered(benchId(2), 'B')]);
        return {
          before,
          after: [await reader.device(benchId(1)), await reader.device(benchId(2))],
        };
      });
      expect(after).toEqual([before, undefined]);
      expect((await ledger.read((reader) => reader.device(benchId(1))))?.device.standing).toBe('quarantined');
    });

    it('shows a reader nothing of a transaction that has not ended', async () => {
      await record(setUp);
      await ledger.append(
        occasion,
        async () => [deviceRegistered(benchId(1), 'A')],
        async () => {
          expect(await ledger.read((reader) => reader.device(benchId(1)))).toBeUndefined();
        },
      );
      expect(await ledger.read((reader) => reader.device(benchId(1)))).toBeDefined();
    });
  });

  describe('the register', () => {
    beforeEach(async () => {
      await record([
        ...setUp,
        modelSheetRecorded({
          modelSheetId: 'tarn',
          manufacturer: 'Tarn & Söhne',
          model: 'Drop-Stop XL',
        }),
        deviceRegistered(benchId(1), 'KX-20-b', [{ code: ']C1 NF_77%', kind: 'maker' }]),
        deviceRegistered(benchId(2), 'KX 10', [], 'tarn'),
        deviceRegistered(benchId(3), 'KX-20-A'),
        deviceRegistered(benchId(4), '4711', [], 'tarn'),
      ]);
    });

    it('is ordered by maker, model and serial number, letter case aside', async () => {
      expect(await found({})).toEqual({
        ids: [benchId(3), benchId(1), benchId(4), benchId(2)],
        total: 4,
      });
    });

    it('comes in pages, and each says how many there are in all', async () => {
      expect(await found({ limit: 3 })).toEqual({
        ids: [benchId(3), benchId(1), benchId(4)],
        total: 4,
      });
      expect(await found({ limit: 3, offset: 3 })).toEqual({
        ids: [benchId(2)],
        total: 4,
      });
      expect(await found({ limit: 2, offset: 2 })).toEqual({
        ids: [benchId(4), benchId(2)],
        total: 4,
      });
      expect(await found({ limit: 3, offset: 6 })).toEqual({
        ids: [],
        total: 4,
      });
    });

    it.each([
      ['a bench ID', (): string => benchId(2), [2]],
      ['a bench ID as it is shown', () => `${benchId(2).slice(0, 5)}-${benchId(2).slice(5)}`, [2]],
      ['a part of a bench ID in small letters', () => benchId(2).slice(3).toLowerCase(), [2]],
      ['a maker in other letter case', () => 'NORFELL', [3, 1]],
      ['a maker without its accents', () => 'sohne', [4, 2]],
      ['a model without its hyphen', () => 'dropstop', [4, 2]],
      ['a serial number with other hyphens', () => 'kx20b', [1]],
      ['the hyphens of a serial number that has spaces', () => 'KX-10', [2]],
      ['an other code in part', () => 'nf_77%', [1]],
      ['two words that both occur', () => 'tarn kx', [2]],
      ['two words of which one occurs', () => 'tarn kx20', []],
      ['one letter', () => 'B', [1]],
      ['the end of one field and the start of the next', () => '9kx20', []],
      ['only space', () => '  ', [3, 1, 4, 2]],
      ['what nobody has', () => "zzz'); --", []],
    ])('finds by %s', async (_what, search, expected) => {
      expect((await found({ search: search() })).ids).toEqual(expected.map(benchId));
    });

    it('keeps to the standings that are asked for', async () => {
      await record([
        deviceRemoved(benchId(1)),
        inspectionStarted(1, benchId(2)),
        inspectionPassed(1, benchId(2), '2026-09-02'),
      ]);
      expect((await found({ standing: ['quarantined'] })).ids).toEqual([benchId(1)]);
      expect((await found({ standing: ['new', 'in service'] })).ids).toEqual([
        benchId(3),
        benchId(4),
        benchId(2),
      ]);
      expect((await found({ standing: ['scrapped'] })).total).toBe(0);
      expect((await found({ standing: ['new'], search: 'tarn' })).ids).toEqual([benchId(4)]);
    });

    it('keeps to devices in service that are due before a date', async () => {
      await record([
        inspectionStarted(1, benchId(1)),
        inspectionPassed(1, benchId(1), '2026-06-01'),
        inspectionStarted(2, benchId(2)),
        inspectionPassed(2, benchId(2), '2026-06-02'),
        inspectionStarted(3, benchId(3)),
        inspectionPassed(3, benchId(3), '2026-05-01'),
        deviceRemoved(benchId(3), 2),
      ]);
      expect((await found({ dueBefore: calendarDate('2026-06-02') })).ids).toEqual([benchId(1)]);
    });

    it('follows a code that is bound later', async () => {
      expect((await found({ search: 'old-9' })).total).toBe(0);
      await record([codeBound(benchId(3), 'OLD 9')]);
      expect((await found({ search: 'old-9' })).ids).toEqual([benchId(3)]);
    });

    it('follows a model sheet that is recorded again under another name', async () => {
      await record([modelSheetRecorded({ manufacturer: 'Zephyr', model: 'One' })]);
      expect((await found({})).ids).toEqual([benchId(4), benchId(2), benchId(3), benchId(1)]);
      expect((await found({ search: 'zephyr' })).ids).toEqual([benchId(3), benchId(1)]);
      expect((await found({ search: 'norfell' })).total).toBe(0);
      expect((await ledger.verify()).sound).toBe(true);
    });
  });
};

/** What every ledger must do, whatever stores it. */
import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { calendarDate } from '../../src/domain/brand.ts';
import type { DomainEvent } from '../../src/domain/event.ts';
import { isRefusal, refusal } from '../../src/domain/refusal.ts';
import type { DeviceQuery, Ledger } from '../../src/ledger/ledger.ts';
import {
  benchId,
  codeBound,
  deviceRegistered,
  deviceRemoved,
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

/** A place for one ledger: `open` opens what is stored there, for the first time or again. */
export interface Place {
  open(): Promise<Ledger>;
  remove(): Promise<void>;
}

export const conformance = (name: string, newPlace: () => Promise<Place>): void => {
  describe(`the ledger in ${name}`, () => {
    let place: Place;
    let ledger: Ledger;

    beforeEach(async () => {
      place = await newPlace();
      ledger = await place.open();
    });
    afterEach(async () => {
      await ledger.close();
      await place.remove();
    });

    const reopen = async () => {
      await ledger.close();
      ledger = await place.open();
    };
    const record = async (events: readonly DomainEvent[], when = occasion) => {
      const recorded = await ledger.append(when, async () => events);
      if (isRefusal(recorded)) throw new Error(recorded.code);
      return recorded;
    };
    const found = async (query: Partial<DeviceQuery>) => {
      const { rows, total } = await ledger.read((reader) =>
        reader.devices({ limit: 10, offset: 0, ...query }),
      );
      return { ids: rows.map(({ device }) => device.benchId), total };
    };
    const exported = async () => {
      const lines: string[] = [];
      for await (const line of ledger.export()) lines.push(line);
      return lines;
    };

    describe('recording', () => {
      it('is empty at first, and sound', async () => {
        // RFC 6962 section 2.1: the hash of the empty list is SHA-256 of the empty string.
        const head = { size: 0, rootHash: createHash('sha256').digest('hex') };
        expect(await ledger.head()).toEqual(head);
        expect(await ledger.verify()).toEqual({
          sound: true,
          head,
          faults: [],
        });
        expect(await ledger.read((reader) => reader.station())).toBeUndefined();
        expect(await exported()).toEqual([]);
      });

      it('numbers events from 1 without a gap and says who and when', async () => {
        const first = await record([stationCreated, personAdded('p-ines', 'Inês Caldeira')]);
        const second = await record([personAdded('p-tomas', 'Tomás Vale')], occasionOn('2026-03-09'));
        expect([...first, ...second]).toEqual([
          { seq: 1, ...occasion, event: stationCreated },
          {
            seq: 2,
            ...occasion,
            event: personAdded('p-ines', 'Inês Caldeira'),
          },
          {
            seq: 3,
            ...occasionOn('2026-03-09'),
            event: personAdded('p-tomas', 'Tomás Vale'),
          },
        ]);
      });

      it('has after one event the root that RFC 6962 gives for its exported bytes', async () => {
        await record([stationCreated]);
        const [line] = await exported();
        // RFC 6962 section 2.1: MTH({d(0)}) = SHA-256(0x00 || d(0)).
        const expected = createHash('sha256').update(Buffer.of(0)).update(line!).digest('hex');
        expect(await ledger.head()).toEqual({ size: 1, rootHash: expected });
      });

      it('exports each event as canonical JSON: names in order, nothing between them', async () => {
        await record([personAdded('p-ines', 'Inês Caldeira')]);
        expect(await exported()).toEqual([
          '{"at":"2026-03-02T08:15:00.000Z","by":"p-ines","event":{"person":{"badge":"badge-p-ines",' +
            '"name":"Inês Caldeira","personId":"p-ines","roles":["inspector"]},"type":"person.added"},"on":"2026-03-02","seq":1}',
        ]);
      });

      it('keeps everything when it is closed and opened again', async () => {
        await record(setUp);
        await record(inspectedDevice(0));
        const before = {
          head: await ledger.head(),
          lines: await exported(),
          found: await found({}),
        };
        await reopen();
        expect({
          head: await ledger.head(),
          lines: await exported(),
          found: await found({}),
        }).toEqual(before);
        expect((await ledger.verify()).sound).toBe(true);
      });

      it('goes on from where it stood when it is opened again', async () => {
        await record(setUp);
        await reopen();
        const [next] = await record([deviceRegistered(benchId(1), 'A')]);
        expect(next?.seq).toBe(setUp.length + 1);
        expect((await ledger.verify()).sound).toBe(true);
      });

      it('records nothing of a refused decision and gives the refusal back', async () => {
        await record(setUp);
        const head = await ledger.head();
        const refused = refusal('person-unknown' as never, { personId: 'p-nobody' }, 'personId');
        expect(await ledger.append(occasion, async () => refused)).toEqual(refused);
        expect(await ledger.head()).toEqual(head);
      });

      it('records nothing of a decision that throws, and goes on', async () => {
        await record(setUp);
        const head = await ledger.head();
        await expect(
          ledger.append(occasion, async () => {
            throw new Error('broken rule');
          }),
        ).rejects.toThrow('broken rule');
        expect(await ledger.head()).toEqual(head);
        await record([deviceRegistered(benchId(1), 'A')]);
        expect((await ledger.verify()).sound).toBe(true);
      });

      it('records none of several events when one does not fit its schema', async () => {
        await record(setUp);
        const head = await ledger.head();
        const bad = {
          ...deviceRegistered(benchId(1), 'A'),
          benchId: 'no bench id',
        } as DomainEvent;
        await expect(
          ledger.append(occasion, async () => [deviceRegistered(benchId(0), 'B'), bad]),
        ).rejects.toThrow('does not fit its schema');
        expect(await ledger.head()).toEqual(head);
        expect(await ledger.read((reader) => reader.device(benchId(0)))).toBeUndefined();
      });

      it('records nothing when what is written alongside fails', async () => {
        await record(setUp);
        const head = await ledger.head();
        const attempt = ledger.append(
          occasion,
          async () => [personAdded('p-rui', 'Rui Teles')],
          async () => {
            throw new Error('no salt');
          },
        );
        await expect(attempt).rejects.toThrow('no salt');
        expect(await ledger.head()).toEqual(head);
        expect(await ledger.read((reader) => reader.person('p-rui'))).toBeUndefined();
      });

      it('records nothing where a code would mean two devices', async () => {
        await record([...setUp, deviceRegistered(benchId(1), 'A', [{ code: 'NF-77', kind: 'maker' }])]);
        const head = await ledger.head();
        await expect(
          ledger.append(occasion, async () => [
            deviceRegistered(benchId(2), 'B', [{ code: 'NF-77', kind: 'rfid' }]),
          ]),
        ).rejects.toThrow();
        expect(await ledger.head()).toEqual(head);
        expect(await ledger.read((reader) => reader.deviceByCode('NF-77'))).toBe(benchId(1));
      });

      it('lets one decision at a time see the state, so that none acts on what another is changing', async () => {
        await record([...setUp, deviceRegistered(benchId(0), 'A')]);
        const starts = Array.from({ length: 20 }, () =>
          ledger.append(occasion, async (reader) => {
            const number = await reader.nextInspectionNumber();
            return [inspectionStarted(number, benchId(0))];
          }),
        );
        const numbers = (await Promise.all(starts)).flatMap((recorded) => {
          if (isRefusal(recorded)) throw new Error(recorded.code);
          return recorded.map(({ event }) => (event.type === 'inspection.started' ? event.inspection : 0));
        });
        expect(numbers.toSorted((a, b) => a - b)).toEqual(
          Array.from({ length: 20 }, (_, index) => index + 1),
        );
        expect((await ledger.verify()).sound).toBe(true);
      });
    });

    describe('loading many decisions', () => {
      it('lets each see what the ones before it left, and counts the events', async () => {
        const count = await ledger.appendAll(
          (async function* () {
            yield { occasion, decide: async () => setUp };
            for (let n = 0; n < 5; n += 1) {
              yield {
                occasion: occasionOn(`2026-04-0${n + 1}`),
                decide: async (reader) => {
                  expect(await reader.nextInspectionNumber()).toBe(n + 1);
                  return inspectedDevice(n);
                },
              };
            }
          })(),
        );
        expect(count).toBe(setUp.length + 5 * 6);
        expect(await ledger.verify()).toMatchObject({
          sound: true,
          head: { size: count },
        });
      });

      it('records nothing at all when one decision is refused', async () => {
        const refused = refusal('person-unknown' as never);
        let asked = 0;
        const outcome = await ledger.appendAll(
          (async function* () {
            yield { occasion, decide: async () => setUp };
            yield { occasion, decide: async () => refused };
            asked += 1;
            yield { occasion, decide: async () => inspectedDevice(0) };
          })(),
        );
        expect(outcome).toEqual(refused);
        expect(asked).toBe(0);
        expect((await ledger.head()).size).toBe(0);
        expect(await ledger.read((reader) => reader.people())).toEqual([]);
      });

      it('takes more events at once than it handles at a time', async () => {
        await record(setUp);
        await record(Array.from({ length: 250 }, (_, n) => inspectedDevice(n)).flat());
        expect((await found({})).total).toBe(250);
        expect(await ledger.verify()).toMatchObject({
          sound: true,
          head: { size: setUp.length + 1500 },
        });
      });
    });

    describe('reading', () => {
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
          expect((await reader.inspectionsOf(benchId(1))).map(({ inspection }) => inspection)).toEqual([
            3, 1,
          ]);
          expect((await reader.openInspections()).map(({ inspection }) => inspection)).toEqual([2]);
          expect(await reader.nextInspectionNumber()).toBe(4);
          expect(await reader.inspection(9)).toBeUndefined();
        });
      });

      it('gives the events that concern a device, oldest first, answers included', async () => {
        await record([...setUp, ...inspectedDevice(1), ...inspectedDevice(2)]);
        await record([deviceRemoved(benchId(1), 2)], occasionOn('2026-05-01'));
        const events = await ledger.read((reader) => reader.eventsOf(benchId(1)));
        expect(events.map(({ event }) => event)).toEqual([
          ...inspectedDevice(1),
          deviceRemoved(benchId(1), 2),
        ]);
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
        expect((await ledger.read((reader) => reader.device(benchId(1))))?.device.standing).toBe(
          'quarantined',
        );
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

    describe('what is kept beside the record', () => {
      const credential = {
        personId: 'p-ines',
        salt: '5a17',
        hash: 'c0ffee',
        failures: 0,
        lockedUntil: null,
      };

      it('is written with the events or by itself, and never exported', async () => {
        await ledger.append(
          occasion,
          async () => setUp,
          (writer) => writer.putCredential(credential),
        );
        expect(await ledger.read((reader) => reader.credential('p-ines'))).toEqual(credential);
        const locked = {
          ...credential,
          failures: 5,
          lockedUntil: '2026-03-02T08:16:00.000Z',
        };
        const head = await ledger.head();
        await ledger.writeAside((writer) => writer.putCredential(locked));
        expect(await ledger.read((reader) => reader.credential('p-ines'))).toEqual(locked);
        expect(await ledger.head()).toEqual(head);
        expect((await exported()).join('\n')).not.toContain('c0ffee');
      });

      it('survives a rebuild', async () => {
        await record(setUp);
        await ledger.writeAside((writer) => writer.putCredential(credential));
        await ledger.rebuild();
        expect(await ledger.read((reader) => reader.credential('p-ines'))).toEqual(credential);
      });
    });

    describe('rebuilding', () => {
      it('fills the same projections again and says from how many events', async () => {
        await record(setUp);
        await record(Array.from({ length: 120 }, (_, n) => inspectedDevice(n)).flat());
        const before = await found({ limit: 200 });
        expect(await ledger.rebuild()).toBe(setUp.length + 720);
        expect(await found({ limit: 200 })).toEqual(before);
        expect((await ledger.verify()).sound).toBe(true);
      });
    });
  });
};

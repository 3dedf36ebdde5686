/** What every ledger must do, whatever stores it. */
import { createHash } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { DomainEvent } from '../../src/domain/event.ts';
import { isRefusal, refusal } from '../../src/domain/refusal.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { provingConformance } from './conformance-proving.ts';
import { type Bench, readingConformance } from './conformance-reading.ts';
import {
  benchId,
  deviceRegistered,
  inspectedDevice,
  inspectionStarted,
  occasion,
  occasionOn,
  personAdded,
  setUp,
  stationCreated,
} from './sample-events.ts';

/** A place for one ledger: `open` opens what is stored there, for the first time or again. */
export interface Place {
  open(): Promise<Ledger>;
  /** A file for `copyTo` that is not there yet, and the ledger that is copied into it. */
  readonly copy: { readonly file: string; open(): Promise<Ledger> };
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
    const record: Bench['record'] = async (events, when = occasion) => {
      const recorded = await ledger.append(when, async () => events);
      if (isRefusal(recorded)) throw new Error(recorded.code);
      return recorded;
    };
    const found: Bench['found'] = async (query) => {
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

    describe('a copy', () => {
      it('is the whole record of one moment, and a ledger of its own', async () => {
        await record(setUp);
        await ledger.writeAside((writer) => writer.keepSecret('seal', 'kept'));
        const before = await exported();
        await ledger.copyTo(place.copy.file);
        await record(inspectedDevice(1));
        const copy = await place.copy.open();
        try {
          const lines: string[] = [];
          for await (const line of copy.export()) lines.push(line);
          expect(lines).toEqual(before);
          expect(await copy.verify()).toMatchObject({ sound: true, head: { size: setUp.length } });
          expect(await copy.read((reader) => reader.secret('seal'))).toBe('kept');
          await copy.append(occasion, async () => inspectedDevice(2));
          expect((await copy.head()).rootHash).not.toBe((await ledger.head()).rootHash);
        } finally {
          await copy.close();
        }
      });
    });

    describe('recording', () => {
      it('is empty at first, and sound', async () => {
        // RFC 6962 section 2.1: the hash of the empty list is SHA-256 of the empty string.
        const head = { size: 0, rootHash: createHash('sha256').digest('hex') };
        expect(await ledger.head()).toEqual(head);
        expect(await ledger.verify()).toEqual({
          sound: true,
          head,
          checkpoints: 0,
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
        const refused = refusal('person-unknown', { personId: 'p-nobody' }, 'personId');
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
        const refused = refusal('person-unknown');
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

    readingConformance(() => ({ ledger, record, found }));

    provingConformance(() => ({
      ledger,
      record,
      exported,
      reopen: async () => {
        await reopen();
        return ledger;
      },
    }));

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

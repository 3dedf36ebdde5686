/** The due date of a device as the register has it: by the program, the model sheet and the device as they are now. */
import { rm } from 'node:fs/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type CalendarDate, calendarDate } from '../../src/domain/brand.ts';
import type { TypeOfUse } from '../../src/domain/due/type-of-use.ts';
import type { DomainEvent } from '../../src/domain/event.ts';
import type { Program } from '../../src/domain/program.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { program } from '../support/shipped-rules.ts';
import { benchId, inspectedDevice, modelSheetRecorded, occasion, setUp } from './sample-events.ts';
import { newFolder, opened } from './sqlite-places.ts';

const day = calendarDate('2026-03-02');
const { source } = program.inspectionInterval;

const adopted = (changed: Partial<Program>): DomainEvent => ({
  type: 'program.adopted',
  program: { ...program, key: 'depot', ...changed },
  effectiveFrom: day,
});
const every = (months: number) => adopted({ inspectionInterval: { months, source } });
const useSet = (n: number, typeOfUse: TypeOfUse): DomainEvent => ({
  type: 'device.use-set',
  benchId: benchId(n),
  typeOfUse,
  from: day,
});

describe('the due date in the register', () => {
  let folder: string;
  let ledger: Ledger;
  beforeEach(async () => {
    folder = await newFolder();
    ledger = await opened(folder);
  });
  afterEach(async () => {
    await ledger.close();
    await rm(folder, { recursive: true, force: true });
  });

  const record = async (...events: readonly DomainEvent[]): Promise<void> => {
    const result = await ledger.append(occasion, async () => events);
    if (isRefusal(result)) throw new Error(result.code);
  };
  const dueOf = async (n: number): Promise<readonly [CalendarDate | undefined, string | undefined]> => {
    const row = await ledger.read((reader) => reader.device(benchId(n)));
    return [row?.device.dueOn, row?.device.dueWhat];
  };
  const sound = async () => expect((await ledger.verify()).faults).toEqual([]);

  test('comes forward under a stricter program, and goes back under a laxer one no further than the tag', async () => {
    await record(...setUp, ...inspectedDevice(0));
    const [tagged] = await dueOf(0);
    await record(every(3));
    expect(await dueOf(0)).toEqual(['2026-06-02', 'documented inspection']);
    await record(every(12));
    expect(await dueOf(0)).toEqual([tagged, 'documented inspection']);
    await sound();
  });

  test('follows the model sheet', async () => {
    await record(...setUp, ...inspectedDevice(0));
    await record(modelSheetRecorded({ manufacturerIntervalMonths: 2 }));
    expect(await dueOf(0)).toEqual(['2026-05-02', 'documented inspection']);
    await record(modelSheetRecorded({ serviceLife: { years: 3, from: 'manufacture' } }));
    expect(await dueOf(0)).toEqual(['2026-05-01', 'service life']);
    await sound();
  });

  test('follows the type of use and the first use of the device', async () => {
    await record(...setUp, ...inspectedDevice(0));
    await record(useSet(0, 'severe to continuous'));
    expect(await dueOf(0)).toEqual(['2024-05-01', 'revalidation']);
    await record({ type: 'device.facts-recorded', benchId: benchId(0), firstUsedOn: '2026-01-15' });
    expect(await dueOf(0)).toEqual(['2026-06-02', 'documented inspection']);
    await sound();
  });

  test('is the same when everything is derived again, in whatever batches it came', async () => {
    const many = Array.from({ length: 1200 }, (_, n) => n);
    await record(...setUp, every(6), ...many.slice(0, 300).flatMap((n) => inspectedDevice(n)));
    await record(...many.slice(300).flatMap((n) => inspectedDevice(n)));
    await record(...many.filter((n) => n % 3 === 0).map((n) => useSet(n, 'moderate to heavy')));
    await record(every(2), modelSheetRecorded({ manufacturerIntervalMonths: 1 }), every(4));
    const before = await ledger.read((reader) => reader.devices({ limit: 2000, offset: 0 }));
    await sound();
    await ledger.rebuild();
    expect(await ledger.read((reader) => reader.devices({ limit: 2000, offset: 0 }))).toEqual(before);
    await sound();
  });

  test('of a reprinted tag is held to, once the tag says an earlier one', async () => {
    await record(...setUp, ...inspectedDevice(0));
    await record(every(3));
    const row = await ledger.read((reader) => reader.device(benchId(0)));
    await record({
      type: 'tag.issued',
      benchId: benchId(0),
      tagNumber: row!.device.currentTag!.tagNumber,
      kind: 'status',
      pdfSha256: '00',
      reprintBecause: 'damaged',
      dueOn: calendarDate('2026-06-02'),
    });
    await record(every(12));
    expect(await dueOf(0)).toEqual(['2026-06-02', 'documented inspection']);
    await sound();
  });
});

/** Ten thousand damaged lists: each ends in a preview or in a sentence, never in an exception, and never in half an import. */
import { beforeAll, describe, expect, test } from 'vitest';
import writeExcel from 'write-excel-file/node';
import modelSheets from '../../../demo-data/model-sheets.json' with { type: 'json' };
import { planFleet } from '../../../src/domain/fleet-import/plan-fleet.ts';
import { proposeColumns } from '../../../src/domain/fleet-import/propose-columns.ts';
import { isRefusal } from '../../../src/domain/refusal.ts';
import { readTable } from '../../../src/intake/table/read-table.ts';
import { packWorkbook, unpackWorkbook } from '../../../src/intake/table/unpack-workbook.ts';
import { sentenceOf } from '../../../src/station/sentence.ts';
import { columnWords, valueWords } from '../../support/import-words.ts';
import { seededRandom } from '../../support/seeded-random.ts';
import { demoStation } from '../../support/station-fixture.ts';
import { endOf, fleet, headings } from './import-support.ts';
import { encoded, mutated, withOtherValues } from './mutate-file.ts';

const csvFiles = 6000;
const workbooks = 4000;
/** Through the whole contract, and with the record looked at before and after. */
const imports = 100;

let sheet: Buffer;
let parts: ReadonlyMap<string, Buffer>;

beforeAll(async () => {
  const rows = fleet.trim().split('\n').slice(1);
  sheet = await writeExcel([
    headings.split(',').map((value) => ({ value })),
    ...rows.map((row) =>
      row
        .split(',')
        .map((value) =>
          /^\d{4}-\d\d-\d\d$/.test(value)
            ? { value: new Date(`${value}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' }
            : { value },
        ),
    ),
  ]).toBuffer();
  parts = await unpackWorkbook(sheet);
});

/** A third damaged as archives, a third sound archives with damaged parts, a third sound workbooks with damaged values. */
const damagedWorkbook = async (seed: number): Promise<Buffer> => {
  const random = seededRandom(seed);
  if (seed % 3 === 0) return mutated(sheet, random);
  const hit = random.pick([...parts.keys()].filter((path) => path.startsWith('xl/')));
  const damage = (path: string, part: Buffer): Buffer => {
    if (seed % 3 === 1) return path === hit ? mutated(part, random) : part;
    return /sheet1|sharedStrings/.test(path) ? withOtherValues(part, random) : part;
  };
  return packWorkbook(new Map([...parts].map(([path, part]) => [path, damage(path, part)])));
};

const damagedCsv = (seed: number): Buffer => {
  const random = seededRandom(seed);
  return mutated(encoded(fleet, random), random);
};

/** Reads and plans as the station does; returns how it ended, after looking at every sentence. */
const previewed = async (bytes: Buffer): Promise<string> => {
  const table = await readTable(bytes);
  if (isRefusal(table)) {
    expect(sentenceOf(table, 'es')).not.toBe(table.code);
    return table.code;
  }
  const columns = proposeColumns(table, columnWords, valueWords);
  const plan = planFleet(table, {
    today: '2026-03-10' as never,
    currentYear: 2026,
    words: valueWords,
    columns,
    knownSheets: modelSheets as never,
    newSheetId: () => 'M001',
    personMeant: () => undefined,
    withoutUnknownPeople: false,
  });
  for (const { refusal } of plan.faults) {
    const sentence = sentenceOf(refusal, 'en');
    expect(sentence).not.toMatch(/\{\{|undefined|\[object/);
    expect(sentence.isWellFormed()).toBe(true);
  }
  for (const device of plan.devices) expect(JSON.stringify(device).isWellFormed()).toBe(true);
  return plan.faults.length + plan.questions.length === 0 ? 'importable' : 'faults';
};

const endsOf = async (count: number, fileOf: (seed: number) => Buffer | Promise<Buffer>) => {
  const ends = new Map<string, number>();
  for (let seed = 1; seed <= count; seed += 1) {
    const end = await previewed(await fileOf(seed)).catch((error: unknown) => {
      throw new Error(`File ${seed} ended in an exception.`, { cause: error });
    });
    ends.set(end, (ends.get(end) ?? 0) + 1);
  }
  return ends;
};

describe('a damaged list ends in a preview or in a sentence', () => {
  test(`${csvFiles} texts`, async () => {
    const ends = await endsOf(csvFiles, damagedCsv);
    expect(ends.get('importable')).toBeGreaterThan(100);
    expect(ends.get('faults')).toBeGreaterThan(100);
    expect(ends.size).toBeGreaterThan(5);
  }, 120_000);

  test(`${workbooks} workbooks`, async () => {
    const ends = await endsOf(workbooks, damagedWorkbook);
    expect(ends.get('importable')).toBeGreaterThan(100);
    expect(ends.get('workbook-not-read')).toBeGreaterThan(100);
    expect(ends.get('faults')).toBeGreaterThan(100);
    expect(ends.size).toBeGreaterThan(4);
  }, 120_000);
});

test(`${imports} damaged lists are imported whole, or leave the record as it was`, async () => {
  const station = await demoStation();
  const headOf = async () => {
    const { events, rootHash } = await station.expectOutput('ledger.export', {});
    return { events, rootHash };
  };
  const ends = { imported: 0, refused: 0 };
  for (let seed = 10_001; seed <= 10_000 + imports; seed += 1) {
    const bytes = seed % 3 === 0 ? await damagedWorkbook(seed) : damagedCsv(seed);
    const request = { fileName: `damaged ${seed}`, contentBase64: bytes.toString('base64') };
    const before = await headOf();
    const { devices: known } = await station.expectOutput('device.list', { limit: 1 });
    expect(known).toHaveLength(1);
    const { job } = await station.expectOutput('import.preview', request);
    const preview = await endOf(station, job);
    expect(await headOf()).toEqual(before);
    if (preview.state !== 'previewed') continue;
    const columns = preview.preview.columns.map(({ column, meaning, unit }) => ({
      column,
      meaning,
      ...(unit === undefined ? {} : { unit }),
    }));
    const run = await station.expectOutput('import.run', { ...request, columns });
    const end = await endOf(station, run.job);
    const after = await headOf();
    if (end.state === 'imported') {
      ends.imported += 1;
      expect(preview.preview.importable).toBe(true);
      expect(after.events - before.events).toBe(end.events);
      expect(end.devices).toBe(preview.preview.counts.devices);
    } else {
      ends.refused += 1;
      expect(end.state === 'refused' && end.code).not.toBe('internal-error');
      expect(after).toEqual(before);
    }
  }
  expect(ends.imported).toBeGreaterThan(0);
  expect(ends.refused).toBeGreaterThan(20);
  expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
}, 120_000);

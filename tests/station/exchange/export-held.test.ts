/** The tables of an export, and the lists, that say what was done while devices were held. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import readWorkbook from 'read-excel-file/node';
import { expect, test, vi } from 'vitest';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { canReadPdf, madeReport, textOf } from '../../support/report-text.ts';
import { demo } from '../../support/station-fixture.ts';
import { scrappedDevice, today } from '../scrapped-device.ts';

test('evidence, its documents, fall cases and return batches are exported as tables and made as lists', async () => {
  const { station, benchId } = await scrappedDevice();
  const shown = formatBenchId(benchId);
  await station.expectOutput('session.sign-in', { badge: demo.inspector });
  const { job } = await station.expectOutput('record.export', {});
  const { folder } = await vi.waitFor(async () => {
    const status = await station.expectOutput('export.status', { job });
    if (status.state !== 'exported') throw new Error(status.state);
    return status;
  }, 20_000);
  const rowsOf = async (table: string): Promise<Record<string, string>[]> =>
    parse(await readFile(join(folder, `${table}.csv`)), { columns: true, bom: true });

  // As `scrappedDevice` recorded it: a certificate for both reasons, then a statement that nobody agreed to.
  expect(await rowsOf('evidence')).toMatchObject([
    {
      'Bench ID': shown,
      Kind: 'repair-certificate',
      'For reasons': 'check-in.fall.fall\nremoval.other',
      Certificate: 'R-88',
      'Certificate date': today,
      'Issued by': 'Quillmoor',
      Documents: '1',
      'Recorded by': 'Teo Arandal',
      'Agreed by': '',
    },
    {
      Kind: 'doubt-settled',
      'For reasons': 'removal.other',
      Statement: 'A loose tag wire rattled.',
      'Agreed on': '',
      'Withdrawn on': '',
    },
  ]);
  const documents = await rowsOf('documents');
  expect(documents.map(({ Of, Name, 'Media type': type }) => [Of, Name, type])).toEqual([
    ['evidence', 'certificate.pdf', 'application/pdf'],
    ['scrap', 'cut.jpg', 'image/jpeg'],
  ]);
  for (const [index, ending] of ['pdf', 'jpg'].entries()) {
    const file = await readFile(join(folder, 'evidence', `${documents[index]!['SHA-256']}.${ending}`));
    expect(file.length).toBe(Number(documents[index]!.Bytes));
  }
  expect(await rowsOf('fall-cases')).toMatchObject([
    {
      'Fall case': '1',
      State: 'closed',
      'Day of the fall': today,
      User: 'Nadia Solheim',
      'Sealed bag': 'B-17',
      Devices: shown,
      'Opened by': 'Bram Kestrin',
      'Closed by': 'Ilse Marrowby',
      Findings: 'A slip.',
    },
  ]);
  expect(await rowsOf('return-batches')).toMatchObject([
    {
      'Return batch': '1',
      Manufacturer: 'Quillmoor',
      State: 'closed',
      'Bench ID': shown,
      Carrier: 'Harrow Freight',
      Outcome: 'repaired',
      Certificate: 'R-88',
    },
  ]);

  const batches = await madeReport(station, {
    of: { kind: 'held', list: 'return batches' },
    format: 'csv',
    language: 'en',
  });
  expect(parse(await readFile(batches.path), { columns: true, bom: true })).toMatchObject([
    { 'No.': '1', Manufacturer: 'Quillmoor', State: 'All back', 'Bench ID': shown, Outcome: 'Repaired' },
  ]);
  const cases = await madeReport(station, {
    of: { kind: 'held', list: 'fall cases' },
    format: 'xlsx',
    language: 'es',
  });
  const [sheet] = await readWorkbook(await readFile(cases.path));
  expect(JSON.stringify(sheet)).toContain('Nadia Solheim');
  if (!canReadPdf) return;
  const paper = await madeReport(station, { of: { kind: 'held', list: 'fall cases' }, language: 'both' });
  const text = textOf(paper.path);
  for (const words of ['Fall cases / Casos de caída', 'Gantry 4', 'A slip.']) expect(text).toContain(words);
});

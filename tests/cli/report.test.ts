/** Reports from the command line. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { canReadPdf, infoOf, textOf } from '../support/report-text.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { runCli } from './run-cli.ts';

const depot = async () => {
  const { folder, close } = await demoStation();
  await close();
  return { folder, args: ['--data', folder, '--badge', demo.inspector] };
};

test('every report comes out as a file of the name that was given, in the words and on the paper asked for', async () => {
  const { folder, args } = await depot();
  const out = (name: string) => join(folder, 'out', name);
  const made = async (...what: readonly string[]) => {
    const run = await runCli([...args, 'report', ...what, '--json']);
    expect([run.stderr, run.code]).toEqual(['', 0]);
    return run.json();
  };
  await made('inspection', '3', '--in', 'both', '--paper', 'letter', '--out', out('inspection.pdf'));
  await made('device', 'GJQ81-T5WX2', '--in', 'es', '--out', out('device.pdf'));
  await made('due', '--until', '2026-12-31', '--format', 'xlsx', '--out', out('due.xlsx'));
  const held = await runCli([...args, 'device', 'list', '--standing', 'quarantined', '--json']);
  const norvane = held
    .json()
    .devices.filter(({ manufacturer }: { manufacturer: string }) => manufacturer === 'Norvane')
    .map(({ benchId }: { benchId: string }) => benchId);
  await made('return', ...norvane, '--ask', 'replacement', '--out', out('return.pdf'));
  const { rows } = await made(
    'register',
    '--format',
    'csv',
    '--search',
    'lode 2',
    '--out',
    out('register.csv'),
  );
  expect((await readdir(join(folder, 'out'))).sort()).toEqual(
    ['device.pdf', 'due.xlsx', 'inspection.pdf', 'register.csv', 'return.pdf'].sort(),
  );
  expect(parse(await readFile(out('register.csv')), { bom: true })).toHaveLength(rows + 1);
  if (!canReadPdf) return;
  expect(infoOf(out('inspection.pdf'))['Page size']).toContain('letter');
  expect(textOf(out('inspection.pdf'))).toContain('Inspection report 3 / Informe de inspección 3');
  expect(textOf(out('device.pdf'))).toContain('Historial del equipo GJQ81-T5WX2');
  expect(textOf(out('return.pdf'))).toContain('Replace each device.');
});

test('a report without a name goes to the reports of the data folder, in the language of the terminal', async () => {
  const { folder, args } = await depot();
  const run = await runCli([...args, '--language', 'es', 'report', 'register', '--format', 'csv']);
  expect(run.code).toBe(0);
  const [file = ''] = await readdir(join(folder, 'reports'));
  expect(run.stdout).toContain(join(folder, 'reports', file));
  expect(await readFile(join(folder, 'reports', file), 'utf8')).toContain('Número de serie');
});

test('what cannot be made is refused with a sentence, and wrong usage with another', async () => {
  const { args } = await depot();
  const csv = await runCli([...args, 'report', 'device', 'GJQ81-T5WX2', '--format', 'csv']);
  expect(csv.code).toBe(1);
  expect(csv.stderr).toContain('Choose PDF.');
  expect((await runCli([...args, 'report', 'inspection', '99999'])).code).toBe(1);
  for (const wrong of [
    ['inspection', 'three'],
    ['due', '--until', '31.12.2026'],
    ['register', '--paper', 'a5'],
  ])
    expect((await runCli([...args, 'report', ...wrong])).code).toBe(2);
});

test('the purchase and the first use of a device, and the contact of its maker, are entered by command', async () => {
  const { args } = await depot();
  const facts = ['device', 'facts', 'GJQ81-T5WX2'];
  const entered = await runCli([
    ...args,
    ...facts,
    '--purchased',
    '2018-11',
    '--first-used',
    '2019',
    '--json',
  ]);
  expect(entered.json()).toMatchObject({ purchasedOn: '2018-11', firstUsedOn: '2019' });
  const taken = await runCli([...args, ...facts, '--purchased', 'unknown', '--json']);
  expect(taken.json()).not.toHaveProperty('purchasedOn');
  const contact = await runCli([
    ...args,
    'device',
    'maker-contact',
    'Norvane',
    'Returns, 1 Mole End',
    '--json',
  ]);
  expect(contact.json()).toEqual({ modelSheets: 2 });
});

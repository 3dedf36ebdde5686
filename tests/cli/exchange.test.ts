/** Import and export from the command line. */
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { demo, demoStation } from '../support/station-fixture.ts';
import { productFolder, runCli } from './run-cli.ts';

const example = (name: string) => join(productFolder, 'demo-data', 'import', name);

const depot = async () => {
  const { folder, close } = await demoStation();
  await close();
  return { folder, args: ['--data', folder, '--badge', demo.administrator] };
};

test('the example list is previewed, imported, and exported with the rest', async () => {
  const { folder, args } = await depot();
  const preview = await runCli([...args, 'import', example('fleet.xlsx'), '--preview', '--json']);
  expect(preview.json()).toMatchObject({ importable: true, counts: { devices: 6, removed: 1 } });
  const imported = await runCli([...args, 'import', example('fleet.csv'), '--json']);
  expect(imported.json()).toMatchObject({ state: 'imported', devices: 6, inspections: 5 });
  const exported = await runCli([...args, 'export', join(folder, 'out'), '--json']);
  expect(exported.code).toBe(0);
  expect(await readdir(join(folder, 'out'))).toContain('devices.csv');
  expect((await runCli([...args, 'export', join(folder, 'out')])).code).toBe(1);
});

test('the example with faults is refused row by row, after its dates were asked for', async () => {
  const { args } = await depot();
  const asked = await runCli([...args, 'import', example('fleet-with-faults.csv')]);
  expect(asked.code).toBe(1);
  expect(asked.stderr).toContain('--dates dmy, mdy');
  const answered = await runCli([...args, 'import', example('fleet-with-faults.csv'), '--dates', 'dmy']);
  expect(answered.stderr).not.toContain('--dates');
  expect(answered.stderr.match(/^Row \d/gm)).toHaveLength(8);
});

test('what a column means is taken from a mapping where its contents alone would say it', async () => {
  const { folder, args } = await depot();
  const list = join(folder, 'list.csv');
  await writeFile(list, 'Maker,Model,Serial,Largo aprox,Rope\nNorvane,Lode 6,CLI-1,6,galv\n');
  const guessed = await runCli([...args, 'import', list, '--json']);
  expect(guessed.json().error.code).toBe('import-meaning-guessed');
  const mapping = join(folder, 'mapping.json');
  const columns = [
    { heading: 'Maker', meaning: 'manufacturer' },
    { heading: 'Model', meaning: 'model' },
    { heading: 'Serial', meaning: 'serial' },
    { heading: 'Largo aprox', meaning: 'ratedLength' },
  ];
  await writeFile(mapping, JSON.stringify({ columns }));
  const unasked = await runCli([...args, 'import', list, '--mapping', mapping]);
  expect(unasked.stderr).toContain('--unit');
  const done = await runCli([...args, 'import', list, '--mapping', mapping, '--unit', 'm', '--json']);
  expect(done.json()).toMatchObject({ state: 'imported', devices: 1 });
  await writeFile(mapping, JSON.stringify({ columns: [{ heading: 'Nowhere', meaning: 'model' }] }));
  const wrong = await runCli([...args, 'import', list, '--mapping', mapping, '--json']);
  expect(wrong.json().error.code).toBe('import-heading-unknown');
});

/** `bench-card`: a page for the bench, without a station and without touching anybody's data folder. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../support/station-fixture.ts';
import { runCli } from './run-cli.ts';

test('the bench card is written as PDF in the languages and on the paper that were asked for', async () => {
  const file = join(await temporaryFolder(), 'card.pdf');
  const run = await runCli(['bench-card', '--out', file, '--paper', 'Letter', '--in', 'es', '--json']);
  expect({ code: run.code, said: run.json() }).toEqual({
    code: 0,
    said: { file, paper: 'Letter', languages: 'es' },
  });
  const pdf = (await readFile(file)).toString('latin1');
  expect(pdf.startsWith('%PDF-')).toBe(true);
});

test('a paper that there is none of is wrong usage', async () => {
  expect((await runCli(['bench-card', '--out', 'card.pdf', '--paper', 'A7'])).code).toBe(2);
});

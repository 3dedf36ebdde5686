/** Manufacturers' notices from the command line: preview, record, list, show. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DemoBench, expectRefused, inspector } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open();
}, 240_000);
afterAll(() => bench.close());

const signedIn = ['--badge', inspector];
const notice = {
  manufacturer: 'Norvane',
  reference: 'SN 2026-02',
  issuedOn: '2026-03-02',
  instruction: { en: 'Return to Norvane.', es: 'Devolver a Norvane.' },
  affected: [{ models: ['Lode 2'], serials: ['N2-24-1000…N2-25-1999'] }],
};

test('a notice is looked at, recorded with a PIN, listed and shown, to a person in both languages', async () => {
  const file = await bench.write('notice.json', notice);
  const preview = await bench.run(['notice', 'preview', file, ...signedIn]);
  expect(preview.json()).toMatchObject({ certain: 2, possible: 0, out: 0 });
  const before = await bench.run(['notice', 'list', ...signedIn]);
  expect(before.json()).toEqual({ notices: [] });
  expectRefused(await bench.run(['notice', 'record', file, ...signedIn]), 'pin-needed');
  const pin = await bench.write('pin.txt', 271828);
  const recorded = await bench.run(['notice', 'record', file, '--pin-file', pin, ...signedIn]);
  expect(recorded.json()).toMatchObject({ notice: 1, held: 2 });
  const shown = (language: string) =>
    runCli(['notice', 'show', '1', '--data', bench.station, ...signedIn, '--language', language]);
  expect((await shown('en')).stdout).toMatch(/Return to Norvane\.\nCertain: 2\. Possible: 0\./);
  expect((await shown('es')).stdout).toMatch(/Devolver a Norvane\.\nSeguros: 2\. Posibles: 0\./);
  expectRefused(await bench.run(['notice', 'show', '9', ...signedIn]), 'notice-unknown');
  const device = await bench.run(['device', 'show', 'MM68G-V91MM', ...signedIn]);
  expect(JSON.stringify(device.json())).toContain('removal.recall');
}, 240_000);

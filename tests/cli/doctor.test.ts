/** `doctor` where a station is sound, damaged, in use, not there, or on a PC that was changed. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { access, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { demoFolderOfToday, temporaryFolder } from '../support/station-fixture.ts';
import { productFolder, type Run, runCli, spawnCli } from './run-cli.ts';

const doctor = (folder: string, ...more: string[]) => runCli(['doctor', '--data', folder, ...more]);

const saysOf = (run: Run, subject: string): readonly string[] =>
  run
    .json()
    .findings.filter((found: { subject: string }) => found.subject === subject)
    .map(({ state, says }: { state: string; says: string }) => `${state}: ${says}`);

test('a sound station has nothing wrong: exit 0, a line for each finding, and a report without any name or place', async () => {
  const folder = await demoFolderOfToday();
  const file = join(await temporaryFolder(), 'report.txt');
  const run = await doctor(folder, '--out', file);
  expect(run.stderr).toBe('');
  expect({ code: run.code, last: run.stdout.trimEnd().split('\n').at(-2) }).toEqual({
    code: 0,
    last: expect.stringMatching(/^0 wrong, \d+ to be seen to, \d+ not known, \d+ good\.$/),
  });
  expect(run.stdout).toContain(folder);
  const report = await readFile(file, 'utf8');
  expect(report).toMatch(/^Good: Node\. Node \d+/m);
  for (const secret of [folder, productFolder, 'Harrow Point', 'HP100', 'Marrowby'])
    expect(report).not.toContain(secret);
});

test('a folder that is not there is a finding, and is not made', async () => {
  const folder = join(await temporaryFolder(), 'unplugged');
  const run = await doctor(folder, '--json');
  expect({ code: run.code, says: saysOf(run, 'data folder') }).toEqual({
    code: 1,
    says: ['wrong: folder-missing'],
  });
  await expect(access(folder)).rejects.toThrow();
});

test('a folder without a station is told as such, and stays empty', async () => {
  const folder = await temporaryFolder();
  const run = await doctor(folder, '--json');
  expect(saysOf(run, 'data folder')).toEqual(['attention: folder-empty']);
  await expect(access(join(folder, 'ledger.sqlite'))).rejects.toThrow();
});

test('a damaged file of the record is a finding among the others, in words that say what to do', async () => {
  const folder = await demoFolderOfToday();
  await writeFile(join(folder, 'ledger.sqlite'), Buffer.alloc(40_000, 7));
  const run = await doctor(folder, '--json');
  expect({ code: run.code, record: saysOf(run, 'record') }).toEqual({
    code: 1,
    record: ['wrong: record-damaged'],
  });
  expect(saysOf(run, 'assets')).toEqual(['good: assets-good']);
  expect(saysOf(run, 'printers')).toEqual(['not known: no-record']);
  const spoken = await doctor(folder, '--language', 'es');
  expect(spoken.stdout).toContain('El archivo del registro está dañado.');
  expect(spoken.stderr).toBe('');
});

test('a station that another program has open is told as such, and is left alone', async () => {
  const folder = await demoFolderOfToday();
  const holder = spawn(process.execPath, ['--import', 'tsx', 'tests/cli/hold-station.ts', folder], {
    cwd: productFolder,
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  onTestFinished(() => void holder.kill('SIGKILL'));
  const [said] = await once(holder.stdout, 'data');
  expect(String(said).trim()).toBe('open');
  const run = await doctor(folder, '--json');
  expect({ code: run.code, record: saysOf(run, 'record') }).toEqual({
    code: 0,
    record: ['attention: record-in-use'],
  });
  expect(holder.exitCode).toBe(null);
});

test('a PC whose time zone was changed since the last start is told so, as the command is really run', async () => {
  const folder = await demoFolderOfToday();
  const args = ['doctor', '--data', folder, '--json'];
  const before = await spawnCli(args, { TZ: 'Europe/Madrid' });
  expect(before.json().findings.map(({ says }: { says: string }) => says)).not.toContain('zone-differs');
  const after = await spawnCli(args, { TZ: 'Asia/Tokyo' });
  expect(saysOf(after, 'clock')).toEqual(
    expect.arrayContaining(['attention: zone-changed', 'attention: zone-differs']),
  );
}, 60_000);

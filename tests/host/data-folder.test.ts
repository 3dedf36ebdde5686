import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { dataFolder, windowFolder } from '../../src/host/data-folder.ts';

test('the folder of --data goes before that of the environment, and that before the one of the operating system', () => {
  const environment = { SRL_BENCH_DATA: 'from-environment' };
  expect(dataFolder('from-option', environment)).toEqual({ folder: resolve('from-option'), named: true });
  expect(dataFolder(undefined, environment)).toEqual({ folder: resolve('from-environment'), named: true });
  expect(dataFolder(undefined, { SRL_BENCH_DATA: ' ' }).named).toBe(false);
});

/** Source: XDG Base Directory Specification 0.8; Apple, File System Programming Guide; Microsoft, Known Folders. */
const places: Partial<Record<NodeJS.Platform, RegExp>> = {
  linux: /\/srl-bench$/,
  darwin: /\/Library\/Application Support\/srl-bench$/,
  win32: /\\AppData\\Local\\srl-bench\\Data$/,
};

test('the folder of the operating system is where its convention says', () => {
  expect(dataFolder(undefined, {}).folder).toMatch(places[process.platform] ?? /srl-bench/);
});

test('each data folder has a window folder of its own, apart from the data', () => {
  expect(windowFolder('/one')).toBe(windowFolder('/one/'));
  expect(windowFolder('/one')).not.toBe(windowFolder('/two'));
  expect(windowFolder('/one').startsWith(resolve('/one'))).toBe(false);
});

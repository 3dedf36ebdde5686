/** Data folders with a large register, each loaded once in a run and shared by the benchmarks that only read it. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BenchId } from '../../src/domain/brand.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openStation } from '../../src/station/station.ts';
import { loadRegister } from './desk/load-register.ts';

export interface LoadedRegister {
  readonly folder: string;
  /** Bench IDs to scan, from all over the register. */
  readonly scanned: readonly BenchId[];
}

const loaded = new Map<string, Promise<LoadedRegister>>();

export const registerFolder = (devices: number, inspectionsPerDevice: number): Promise<LoadedRegister> => {
  const key = `${devices} × ${inspectionsPerDevice}`;
  const known = loaded.get(key) ?? load(devices, inspectionsPerDevice);
  loaded.set(key, known);
  return known;
};

const load = async (devices: number, inspectionsPerDevice: number): Promise<LoadedRegister> => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-register-'));
  return { folder, scanned: await loadRegister(folder, devices, inspectionsPerDevice) };
};

/** The invented depot, in a folder that is there or is made. */
export const loadDemo = async (folder: string): Promise<void> => {
  const station = await openStation({ folder });
  if (isRefusal(station)) throw new Error(station.code);
  const loading = { session: 'load', operation: 'station.load-demo', input: {}, language: 'en' } as const;
  const loaded = await station.call(loading);
  await station.close();
  if (!loaded.ok) throw new Error(loaded.error.sentence);
};

export const removeRegisters = async (): Promise<void> => {
  for (const each of loaded.values())
    await each.then(({ folder }) => rm(folder, { recursive: true, force: true })).catch(() => undefined);
  loaded.clear();
};

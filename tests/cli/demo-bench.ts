/** A bench with the demo station, at which commands are given. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { productFolder, type Run, runCli } from './run-cli.ts';

export const inspector = 'HP10024';
export const pin = '271828';

export class DemoBench {
  readonly folder: string;
  /** The data folder. */
  readonly station: string;
  /** How `demo` ended. */
  readonly demo: Run;

  private constructor(folder: string, demo: Run) {
    this.folder = folder;
    this.station = join(folder, 'demo', 'station');
    this.demo = demo;
  }

  static async open(run = runCli): Promise<DemoBench> {
    const folder = await mkdtemp(join(tmpdir(), 'srl-bench-cli-'));
    const demo = await run(['demo', '--out', join(folder, 'demo'), '--json']);
    return new DemoBench(folder, demo);
  }

  close(): Promise<void> {
    return rm(this.folder, { recursive: true });
  }

  /** Runs a command at the station, for JSON. */
  run(args: readonly string[], environment: NodeJS.ProcessEnv = {}): Promise<Run> {
    return runCli([...args, '--data', this.station, '--json'], environment);
  }

  async eventCount(): Promise<number> {
    return (await this.run(['ledger', 'verify'])).json().head.size;
  }

  async write(name: string, content: unknown): Promise<string> {
    const path = join(this.folder, name);
    await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content));
    return path;
  }

  async addDevice(serial: string, code: string): Promise<string> {
    const file = await this.write(`${serial}.json`, registration(serial, code));
    return (await this.run(['device', 'add', file, '--badge', inspector])).json().benchId;
  }
}

/** Exit 1 with an error of this code, a sentence, and nothing of the inside of the program. */
export const expectRefused = (run: Run, code: string): void => {
  expect({ exit: run.code, code: run.json().error?.code }, run.stdout + run.stderr).toEqual({
    exit: 1,
    code,
  });
  expect(run.json().error.sentence).toMatch(/\S/);
  expect(run.stdout + run.stderr).not.toMatch(/\n\s+at |node_modules/);
};

export const example = async (name: string) =>
  JSON.parse(await readFile(join(productFolder, 'demo-data', 'answers', name), 'utf8'));

const modelSheet = {
  manufacturer: 'Quillmoor',
  model: 'Stayline 50 ft',
  ratedLengthM: 15.24,
  lifelineMaterial: 'stainless',
  lifelineDiameterMm: 4.8,
  capacityKg: { from: 59, to: 140 },
  standard: 'ANSI/ASSP Z359.14',
  loadIndicatorFitted: true,
};
const elements = [
  'manufacturer',
  'model',
  'serialNumber',
  'dateOfManufacture',
  'lifelineMaterialAndSize',
  'ratedLength',
  'capacityRange',
  'standard',
  'warnings',
];
export const registration = (serial: string, code: string) => ({
  modelSheet,
  serial,
  dateOfManufacture: '2026-02',
  marking: elements.map((element) => ({ element, state: 'legible' })),
  otherCodes: [{ code, kind: 'maker' }],
});

/** The whole job without a window: `npm run cli -- demo`, from the start of its process to its end. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawnCli } from '../cli/run-cli.ts';
import type { Benchmark } from './measurement.ts';

export const peer = 'none: by the clock alone';

export const benchmark: Benchmark = async () => {
  const folder = await mkdtemp(join(tmpdir(), 'srl-bench-demo-'));
  try {
    const started = performance.now();
    const { code, stderr } = await spawnCli(['demo', '--out', folder, '--json']);
    const seconds = (performance.now() - started) / 1000;
    if (code !== 0) throw new Error(`The demo ended with ${code}: ${stderr}`);
    return [{ name: 'demo, from start to end', value: seconds, unit: 's', budget: 20 }];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
};

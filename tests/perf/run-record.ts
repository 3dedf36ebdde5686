/** A run of the benchmarks as a file, so that the runs of two commits can be held against each other. */
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { type Machine, machineSchema } from './machine.ts';
import type { Figure } from './measurement.ts';

const figureSchema = z.object({
  name: z.string(),
  value: z.number(),
  unit: z.string(),
  budget: z.number().optional(),
  atLeast: z.number().optional(),
  noise: z.number().optional(),
});

const runRecordSchema = z.object({
  machine: machineSchema,
  /** How often per processor the machine had work waiting when the run began (load average of a minute). */
  busyBefore: z.number(),
  long: z.boolean(),
  seconds: z.number(),
  benchmarks: z.array(z.object({ name: z.string(), peer: z.string(), figures: z.array(figureSchema) })),
});
type ReadRecord = z.infer<typeof runRecordSchema>;

export interface MeasuredBenchmark {
  readonly name: string;
  readonly peer: string;
  readonly figures: readonly Figure[];
}

export interface RunRecord {
  readonly machine: Machine;
  readonly busyBefore: number;
  readonly long: boolean;
  readonly seconds: number;
  readonly benchmarks: readonly MeasuredBenchmark[];
}

/** Throws where it is no run of ours. */
export const readRunRecord = async (path: string): Promise<ReadRecord> =>
  runRecordSchema.parse(JSON.parse(await readFile(path, 'utf8')));

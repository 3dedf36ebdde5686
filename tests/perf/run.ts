/**
 * Runs the benchmarks that are named, or all: `npm run perf -- tags`. At the end it prints one table, and writes the run as
 * JSON (`dist/perf/COMMIT.json`, or `--json FILE`). `npm run perf -- compare BEFORE.json AFTER.json` holds two runs
 * against each other.
 *
 * `--long` takes the whole sizes: 1,000,000 inspections and events, 300 pictures a level. `--pictures N` takes N pictures for
 * each level of wear, `--series` and `--levels`, with commas between, take only some; `--first N` begins with that picture.
 * `--events N` leaves out records that are longer. Exit 1 where a figure is outside its limits, 2 where a name is unknown.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { cpus, loadavg } from 'node:os';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { productFolder } from '../../src/host/product-folder.ts';
import { benchmarks, knownNames, namesOf } from './benchmarks.ts';
import { compareFiles } from './compare.ts';
import { thisMachine } from './machine.ts';
import type { BenchmarkOptions } from './measurement.ts';
import { removeRegisters } from './register-folder.ts';
import type { MeasuredBenchmark, RunRecord } from './run-record.ts';
import { isOutside, machineLines, peerLines, runTable } from './table.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'string' },
    long: { type: 'boolean', default: false },
    pictures: { type: 'string' },
    first: { type: 'string' },
    series: { type: 'string' },
    levels: { type: 'string' },
    events: { type: 'string' },
  },
});

const wrong = (sentence: string): never => {
  console.error(sentence);
  process.exit(2);
};

const countOf = (option: 'pictures' | 'first' | 'events'): number | undefined => {
  const count = values[option] === undefined ? undefined : Number(values[option]);
  if (count === undefined || (Number.isInteger(count) && count > 0)) return count;
  return wrong(`--${option} takes a whole number above 0.`);
};

const optionsOf = (): BenchmarkOptions => {
  const counts = { pictures: countOf('pictures'), first: countOf('first'), events: countOf('events') };
  const given = Object.entries(counts).filter(([, count]) => count !== undefined);
  return {
    long: values.long,
    ...Object.fromEntries(given),
    ...(values.series === undefined ? {} : { series: values.series.split(',') }),
    ...(values.levels === undefined ? {} : { levels: values.levels.split(',') }),
  };
};

const measure = async (names: readonly string[]): Promise<RunRecord> => {
  const options = optionsOf();
  const machine = await thisMachine();
  const busyBefore = (loadavg()[0] ?? 0) / cpus().length;
  const started = performance.now();
  const measured: MeasuredBenchmark[] = [];
  try {
    for (const name of names) {
      const load = benchmarks[name];
      if (load === undefined) continue;
      const begun = performance.now();
      process.stderr.write(`${name} …\n`);
      const { peer, benchmark } = await load();
      measured.push({ name, peer, figures: await benchmark(options) });
      process.stderr.write(`${name}: ${Math.round((performance.now() - begun) / 1000)} s\n`);
    }
  } finally {
    await removeRegisters();
  }
  const seconds = (performance.now() - started) / 1000;
  return { machine, busyBefore, long: options.long, seconds, benchmarks: measured };
};

const write = async (run: RunRecord): Promise<string> => {
  const file = values.json ?? join(productFolder, 'dist', 'perf', `${run.machine.commit}.json`);
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, `${JSON.stringify(run, null, 2)}\n`);
  return file;
};

if (positionals[0] === 'compare') {
  const [, before, after] = positionals;
  if (before === undefined || after === undefined) wrong('compare takes the files of two runs.');
  else console.log(await compareFiles(before, after));
} else {
  const names = namesOf(positionals, values.long);
  const unknown = names.filter((name) => !(name in benchmarks));
  if (unknown.length > 0)
    wrong(`No benchmark ${unknown.join(', ')}. There are: ${knownNames.join(', ')}; or compare.`);
  const run = await measure(names);
  console.log(
    `\n${machineLines(run)}\n\n${runTable(run)}\n\nHeld against, in the same run:\n${peerLines(run)}\n`,
  );
  console.log(`Written to ${await write(run)}`);
  process.exitCode = run.benchmarks.flatMap(({ figures }) => figures).some(isOutside) ? 1 : 0;
}

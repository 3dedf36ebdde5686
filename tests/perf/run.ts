/**
 * Runs the benchmarks that are named, or all: `npm run perf -- tags`. Prints a table; `--json FILE` writes the figures too.
 * Exit 1 where a figure is over its budget, 2 where a name is unknown.
 */
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import type { Benchmark, Figure } from './measurement.ts';

const benchmarks: Readonly<Record<string, () => Promise<{ readonly benchmark: Benchmark }>>> = {
  identity: () => import('./identity.ts'),
  tags: () => import('./tags.ts'),
};

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { json: { type: 'string' } },
});

const names = positionals.length === 0 ? Object.keys(benchmarks) : positionals;
const unknown = names.filter((name) => !(name in benchmarks));
if (unknown.length > 0) {
  console.error(`No benchmark ${unknown.join(', ')}. There are: ${Object.keys(benchmarks).join(', ')}.`);
  process.exit(2);
}

const overBudget = ({ value, budget }: Figure): boolean => budget !== undefined && value > budget;

const rounded = (value: number): number => Number(value.toPrecision(4));

const results: Record<string, readonly Figure[]> = {};
for (const name of names) {
  const load = benchmarks[name];
  if (load === undefined) continue;
  const figures = await (await load()).benchmark();
  results[name] = figures;
  console.log(`\n${name}`);
  console.table(
    figures.map((figure) => ({
      figure: figure.name,
      value: rounded(figure.value),
      unit: figure.unit,
      budget: figure.budget ?? '',
      '': figure.budget === undefined ? '' : overBudget(figure) ? 'OVER' : 'ok',
    })),
  );
}

if (values.json !== undefined) {
  const machine = { node: process.version, processor: cpus()[0]?.model ?? '', processors: cpus().length };
  writeFileSync(values.json, `${JSON.stringify({ machine, results }, null, 2)}\n`);
}
process.exitCode = Object.values(results).flat().some(overBudget) ? 1 : 0;

/**
 * Runs the benchmarks that are named, or all: `npm run perf -- tags`. Prints a table; `--json FILE` writes the figures too.
 * `--pictures N` makes a benchmark that goes through pictures take N of them for each level of wear, `--series` and `--levels`,
 * with commas between, take only some; `--first N` begins with that picture. `--events N` leaves out records that are longer.
 * Exit 1 where a figure is outside its limits, 2 where a name is unknown.
 */
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import type { Benchmark, BenchmarkOptions, Figure } from './measurement.ts';

const benchmarks: Readonly<Record<string, () => Promise<{ readonly benchmark: Benchmark }>>> = {
  identity: () => import('./identity.ts'),
  demo: () => import('./demo.ts'),
  desk: () => import('./desk.ts'),
  ledger: () => import('./ledger.ts'),
  program: () => import('./program.ts'),
  tags: () => import('./tags.ts'),
  notices: () => import('./notices.ts'),
  plan: () => import('./plan.ts'),
  returns: () => import('./returns.ts'),
  'worn-levels': () => import('./worn-levels.ts'),
  'worn-tags': () => import('./worn-tags.ts'),
};

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'string' },
    pictures: { type: 'string' },
    first: { type: 'string' },
    series: { type: 'string' },
    levels: { type: 'string' },
    events: { type: 'string' },
  },
});

const names = positionals.length === 0 ? Object.keys(benchmarks) : positionals;
const unknown = names.filter((name) => !(name in benchmarks));
if (unknown.length > 0) {
  console.error(`No benchmark ${unknown.join(', ')}. There are: ${Object.keys(benchmarks).join(', ')}.`);
  process.exit(2);
}

const countOf = (option: 'pictures' | 'first' | 'events'): number | undefined => {
  const count = values[option] === undefined ? undefined : Number(values[option]);
  if (count === undefined || (Number.isInteger(count) && count > 0)) return count;
  console.error(`--${option} takes a whole number above 0.`);
  process.exit(2);
};
const pictures = countOf('pictures');
const first = countOf('first');
const events = countOf('events');

const options: BenchmarkOptions = {
  ...(pictures === undefined ? {} : { pictures }),
  ...(first === undefined ? {} : { first }),
  ...(events === undefined ? {} : { events }),
  ...(values.series === undefined ? {} : { series: values.series.split(',') }),
  ...(values.levels === undefined ? {} : { levels: values.levels.split(',') }),
};

const outside = ({ value, budget, atLeast }: Figure): boolean =>
  (budget !== undefined && value > budget) || (atLeast !== undefined && value < atLeast);

const limited = ({ budget, atLeast }: Figure): boolean => budget !== undefined || atLeast !== undefined;

const limitOf = ({ budget, atLeast }: Figure): string =>
  [atLeast === undefined ? '' : `≥ ${atLeast}`, budget === undefined ? '' : `≤ ${budget}`]
    .filter((limit) => limit !== '')
    .join(', ');

const rounded = (value: number): number => Number(value.toPrecision(4));

const results: Record<string, readonly Figure[]> = {};
for (const name of names) {
  const load = benchmarks[name];
  if (load === undefined) continue;
  const figures = await (await load()).benchmark(options);
  results[name] = figures;
  console.log(`\n${name}`);
  console.table(
    figures.map((figure) => ({
      figure: figure.name,
      value: rounded(figure.value),
      unit: figure.unit,
      limit: limitOf(figure),
      '': limited(figure) ? (outside(figure) ? 'OUTSIDE' : 'ok') : '',
    })),
  );
}

if (values.json !== undefined) {
  const machine = { node: process.version, processor: cpus()[0]?.model ?? '', processors: cpus().length };
  writeFileSync(values.json, `${JSON.stringify({ machine, results }, null, 2)}\n`);
}
process.exitCode = Object.values(results).flat().some(outside) ? 1 : 0;

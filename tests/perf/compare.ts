/** Two runs beside each other, and what moved by more than the noise of both. */

import { readRunRecord } from './run-record.ts';
import { machineLines, percent, shortNumber, tableOf } from './table.ts';

/** What runs of one commit differ by on a machine that does other things too, at the least (common practice, no source). */
const leastNoise = 0.05;
/** Of a figure without repeats in either run (common practice, no source). */
const noiseWithoutRepeats = 0.2;

export interface Compared {
  readonly name: string;
  readonly unit: string;
  readonly before?: number;
  readonly after?: number;
  /** The share by which it grew; absent where one of the runs does not have it. */
  readonly change?: number;
  readonly noise: number;
  readonly moved: boolean;
}

type Run = Awaited<ReturnType<typeof readRunRecord>>;

export const comparedRuns = (before: Run, after: Run): readonly Compared[] => {
  const figuresOf = ({ benchmarks }: Run) =>
    new Map(
      benchmarks.flatMap(({ name, figures }) =>
        figures.map((figure) => [`${name}: ${figure.name}`, figure] as const),
      ),
    );
  const [old, now] = [figuresOf(before), figuresOf(after)];
  return [...new Set([...old.keys(), ...now.keys()])].map((name): Compared => {
    const [a, b] = [old.get(name), now.get(name)];
    const unit = (b ?? a)?.unit ?? '';
    const noise = noiseOfBoth(a?.noise, b?.noise);
    if (a === undefined || b === undefined)
      return {
        name,
        unit,
        ...(a === undefined ? {} : { before: a.value }),
        ...(b === undefined ? {} : { after: b.value }),
        noise,
        moved: false,
      };
    const change = a.value === 0 ? (b.value === 0 ? 0 : Number.POSITIVE_INFINITY) : b.value / a.value - 1;
    return { name, unit, before: a.value, after: b.value, change, noise, moved: Math.abs(change) > noise };
  });
};

/** Each run adds its own. */
const noiseOfBoth = (before: number | undefined, after: number | undefined): number =>
  before === undefined || after === undefined ? noiseWithoutRepeats : Math.max(leastNoise, before + after);

export const compareFiles = async (before: string, after: string): Promise<string> => {
  const runs = [await readRunRecord(before), await readRunRecord(after)] as const;
  const compared = comparedRuns(...runs);
  const rows = compared.map(({ name, unit, before: a, after: b, change, noise, moved }) => [
    name,
    a === undefined ? '–' : shortNumber(a),
    b === undefined ? '–' : shortNumber(b),
    unit,
    change === undefined ? '' : percent(change),
    `${(noise * 100).toFixed(0)} %`,
    moved ? 'MOVED' : '',
  ]);
  const moved = compared.filter((each) => each.moved);
  const said =
    moved.length === 0
      ? 'Nothing moved by more than the noise.'
      : `Moved by more than the noise: ${moved.length} of ${compared.length}.\n${moved.map(({ name, change = 0 }) => `  ${name} ${percent(change)}`).join('\n')}`;
  return [
    `before: ${machineLines(runs[0])}`,
    `after:  ${machineLines(runs[1])}`,
    tableOf(['figure', 'before', 'after', 'unit', 'change', 'noise', ''], rows, [1, 2, 4, 5]),
    said,
  ].join('\n\n');
};

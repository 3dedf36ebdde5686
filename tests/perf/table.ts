/** Rows of words as one table for a terminal, and the figures of a run as such rows. */
import type { Figure } from './measurement.ts';
import type { RunRecord } from './run-record.ts';

/** Numbers stand to the right; a column of the named places is one of numbers. */
export const tableOf = (
  head: readonly string[],
  rows: readonly (readonly string[])[],
  numbers: readonly number[],
): string => {
  const widths = head.map((title, place) =>
    Math.max(title.length, ...rows.map((row) => row[place]?.length ?? 0)),
  );
  const line = (row: readonly string[]): string =>
    widths
      .map((width, place) =>
        numbers.includes(place) ? (row[place] ?? '').padStart(width) : (row[place] ?? '').padEnd(width),
      )
      .join('  ')
      .trimEnd();
  return [
    line(head),
    widths
      .map((width) => '─'.repeat(width))
      .join('  ')
      .trimEnd(),
    ...rows.map(line),
  ].join('\n');
};

export const isOutside = ({ value, budget, atLeast }: Figure): boolean =>
  (budget !== undefined && value > budget) || (atLeast !== undefined && value < atLeast);

const isLimited = ({ budget, atLeast }: Figure): boolean => budget !== undefined || atLeast !== undefined;

const limitOf = ({ budget, atLeast }: Figure): string =>
  [atLeast === undefined ? '' : `≥ ${atLeast}`, budget === undefined ? '' : `≤ ${budget}`]
    .filter((limit) => limit !== '')
    .join(', ');

export const shortNumber = (value: number): string =>
  Math.abs(value) >= 1000 ? String(Math.round(value)) : String(Number(value.toPrecision(3)));

export const percent = (share: number): string => `${share > 0 ? '+' : ''}${(share * 100).toFixed(1)} %`;

export const machineLines = ({ machine, busyBefore, long, seconds }: Omit<RunRecord, 'benchmarks'>): string =>
  [
    `${machine.processor}, ${machine.cores} cores, ${machine.memoryGb} GB, ${machine.system}`,
    `Node ${machine.node}, SQLite ${machine.sqlite}, ${machine.chromium}, commit ${machine.commit}`,
    `${long ? 'long' : 'short'} run of ${Math.round(seconds)} s; load before it ${shortNumber(busyBefore)} a core`,
  ].join('\n');

export const runTable = ({ benchmarks }: RunRecord): string =>
  tableOf(
    ['benchmark', 'figure', 'value', 'unit', '±', 'limit', ''],
    benchmarks.flatMap(({ name, figures }) =>
      figures.map((figure) => [
        name,
        figure.name,
        shortNumber(figure.value),
        figure.unit,
        figure.noise === undefined ? '' : `${(figure.noise * 100).toFixed(0)} %`,
        limitOf(figure),
        isLimited(figure) ? (isOutside(figure) ? 'OUTSIDE' : 'ok') : '',
      ]),
    ),
    [2, 4],
  );

export const peerLines = ({ benchmarks }: RunRecord): string =>
  benchmarks.map(({ name, peer }) => `${name}: ${peer}`).join('\n');

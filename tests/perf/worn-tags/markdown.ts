/**
 * The tables of the section "Worn tags" of DEVELOPERS.md: `node --import tsx tests/perf/worn-tags/markdown.ts FILE`, where
 * FILE is what `npm run perf -- worn-tags --json FILE` wrote. Without FILE, the table of wear alone.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { rangeAt, severityOf, wearLevels, wearScales } from './wear-amounts.ts';

const reportSchema = z.object({
  results: z.object({ 'worn-tags': z.array(z.object({ name: z.string(), value: z.number() })) }),
});

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');

const wearKinds: Readonly<Record<keyof typeof wearScales, string>> = {
  inkLeft: 'ink left, share',
  fadingUnevenness: 'swing of that share across the tag, ±',
  abradedShare: 'face rubbed, share',
  abrasionDepth: 'ink gone where rubbed hardest, share',
  abrasionGrainMm: 'size of rubbed blobs, mm',
  scratchesAcrossBars: 'scratches across the bars',
  scratchesAlongBars: 'scratches along the bars',
  scratchWidestMm: 'widest scratch, mm',
  scratchLongestMm: 'longest scratch, mm',
  stains: 'stains of 4 to 30 mm',
  stainDepth: 'light that a stain takes, share',
  grease: 'light that grease takes, share',
  grains: 'face under grains of dirt, share',
  tearMm: 'corner torn off, mm deep (below 0: none)',
  wrapDegrees: 'ends turned away round the housing, °',
  pitchDegrees: 'tilt forward or back, °',
  yawDegrees: 'tilt sideways, °',
  rollDegrees: 'turned in the picture, °',
  darkestShare: 'light on the darkest side, share of the brightest',
  glare: 'glare of a lamp, share of full white',
  exposure: 'luminance of white in full light, share',
  defocusMm: 'blur, standard deviation on the tag, mm',
  motionMm: 'motion while exposed, mm on the tag',
  noise: 'noise, standard deviation of 255',
  jpegQuality: 'JPEG quality',
};

const rounded = (value: number): string =>
  String(Number(Math.abs(value) < 2 ? value.toFixed(2) : value.toFixed(Math.abs(value) < 10 ? 1 : 0)));

const wearTable = (): string =>
  table(
    ['Each picture draws, evenly', ...wearLevels],
    Object.entries(wearScales).map(([kind, scale]) => [
      wearKinds[kind as keyof typeof wearScales],
      ...wearLevels.map((level) => rangeAt(scale, severityOf[level]).map(rounded).join(' … ')),
    ]),
  );

const seriesTable = (series: string, values: ReadonlyMap<string, number>): string => {
  const readers = [
    ...new Set(
      [...values.keys()]
        .filter((name) => name.startsWith(`${series} · `))
        .map((name) => name.split(' · ')[2] ?? ''),
    ),
  ];
  const figure = (level: string, reader: string, what: string): number | undefined =>
    values.get(`${series} · ${level} · ${reader} · ${what}`);
  const cell = (level: string, reader: string): string => {
    const right = figure(level, reader, 'right');
    const wrong = figure(level, reader, 'wrong') ?? 0;
    return right === undefined ? '' : `${rounded(right)}${wrong === 0 ? '' : ` (${wrong} wrong)`}`;
  };
  const seconds = (level: string, reader: string): string =>
    ['median time', '95th percentile of time', 'longest time']
      .map((what) => ((figure(level, reader, what) ?? 0) / 1000).toFixed(1))
      .join(' / ');
  const ours = readers.filter((reader) => reader.startsWith('ours'));
  return table(
    [`${series}: right in 100`, ...wearLevels],
    [
      ...readers.map((reader) => [reader, ...wearLevels.map((level) => cell(level, reader))]),
      ...ours.map((reader) => [
        `${reader}: median / 95th percentile / longest, s`,
        ...wearLevels.map((level) => seconds(level, reader)),
      ]),
    ],
  );
};

const [file] = process.argv.slice(2);
if (file !== undefined) {
  const figures = reportSchema.parse(JSON.parse(readFileSync(file, 'utf8'))).results['worn-tags'];
  const values = new Map(figures.map(({ name, value }) => [name, value]));
  for (const series of ['status tag', 'ID label', 'two tags', 'none of ours'])
    console.log(`${seriesTable(series, values)}\n`);
}
console.log(wearTable());

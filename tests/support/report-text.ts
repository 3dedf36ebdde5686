/** Reports made through the contract, and read by poppler, which knows nothing of how they were made. */

import type { InputOf, OutputOf } from '../../src/station/contract.ts';
import { requireTool, runTool } from './debian-tools.ts';
import type { TestStation } from './station-fixture.ts';

export const canReadPdf = ['pdftotext', 'pdffonts', 'pdfinfo'].map(requireTool).every((found) => found);

type Expecting = Pick<TestStation, 'expectOutput'>;

/** The end of a report job, whatever it is. */
export const reportEnd = async (
  { expectOutput }: Expecting,
  request: InputOf<'report.make'>,
): Promise<Exclude<OutputOf<'report.status'>, { state: 'working' }>> => {
  const { job } = await expectOutput('report.make', request);
  return endOfReport({ expectOutput }, job);
};

export const endOfReport = async ({ expectOutput }: Expecting, job: number) => {
  for (;;) {
    const status = await expectOutput('report.status', { job });
    if (status.state !== 'working') return status;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
};

export const madeReport = async (station: Expecting, request: InputOf<'report.make'>) => {
  const end = await reportEnd(station, request);
  if (end.state !== 'made') throw new Error(`${end.code}: ${end.sentence}`);
  return end;
};

/** In the order in which it was drawn: cell after cell, each with all of its lines; every space is one. */
export const textOf = (path: string): string =>
  runTool('pdftotext', ['-raw', path, '-']).replace(/\s+/g, ' ');

/** As it stands on the page, row by row. */
export const linesOf = (path: string): readonly string[] =>
  runTool('pdftotext', ['-layout', path, '-'])
    .split(/[\n\f]/)
    .map((line) => line.replace(/\s+/g, ' ').trim());

export const infoOf = (path: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    runTool('pdfinfo', [path])
      .split('\n')
      .map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]),
  );

/** Name, and whether it is embedded, of each font. */
export const fontsOf = (path: string): readonly { readonly name: string; readonly embedded: boolean }[] =>
  runTool('pdffonts', [path])
    .split('\n')
    .slice(2)
    .filter((line) => line.trim() !== '')
    .map((line) => {
      const [, embedded] = /\s(yes|no)\s+(?:yes|no)\s+(?:yes|no)\s+\d+\s+\d+\s*$/.exec(line) ?? [];
      return { name: line.split(/\s/)[0] ?? '', embedded: embedded === 'yes' };
    });

/** `markings`: what to ask of each manufacturer: markings to replace, as lines or as a CSV file (RFC 4180). */
import type { Command } from 'commander';
import { stringify } from 'csv-stringify/sync';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../station/contract.ts';
import { writeBytes } from '../files.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { columns } from '../wording.ts';

const header = [
  'manufacturer',
  'model',
  'serial',
  'serialIsPresumed',
  'dateOfManufacture',
  'benchId',
  'elements',
] as const;

export const addMarkings = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('markings')
    .option('--csv <file>', words('help-markings-csv'))
    .description(words('help-markings'))
    .action(async ({ csv }: { csv?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const found = await withStation(job, (call) => call('marking-request.list', {}));
      const rows = rowsOf(found);
      if (csv !== undefined)
        await writeBytes(csv, Buffer.from(csvOf([header, ...rows]), 'utf8'), job.language);
      job.give(found, [
        ...(rows.length === 0 ? [words('markings-none')] : columns(rows)),
        ...(csv === undefined ? [] : [csv]),
      ]);
    });
};

const rowsOf = ({ requests }: OutputOf<'marking-request.list'>): readonly (readonly string[])[] =>
  requests.flatMap(({ manufacturer, devices }) =>
    devices.map(({ benchId, model, serial, presumed, dateOfManufacture, elements }) => [
      manufacturer,
      model,
      serial,
      presumed ? 'yes' : 'no',
      dateOfManufacture,
      formatBenchId(benchId),
      elements.join(' '),
    ]),
  );

const csvOf = (rows: readonly (readonly string[])[]): string =>
  stringify([...rows], { quoted: true, record_delimiter: 'windows', escape_formulas: true });

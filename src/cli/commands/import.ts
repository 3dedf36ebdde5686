/** `import FILE`: takes a fleet list into the register, or says everything that speaks against it. */
import { basename } from 'node:path';
import { type Command, Option } from 'commander';
import { z } from 'zod';
import {
  type ColumnChoice,
  columnMeaningSchema,
  dateOrderSchema,
  dateOrders,
  importUnitSchema,
  isDateMeaning,
} from '../../domain/fleet-import/column-meaning.ts';
import { refusal } from '../../domain/refusal.ts';
import type { InputOf, OutputOf } from '../../station/contract.ts';
import { Failure, failureOf } from '../failure.ts';
import { readBytes, readJson } from '../files.ts';
import { type Job, jobOf, type StationCall, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { untilEnded } from '../until-ended.ts';
import { columns as inColumns } from '../wording.ts';

interface Options {
  readonly mapping?: string;
  readonly dates?: (typeof dateOrders)[number];
  readonly unit?: 'ft' | 'm';
  readonly preview?: boolean;
  readonly sheet?: string;
}

export const addImport = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('import')
    .argument('<file>', words('help-import-file'))
    .description(words('help-import'))
    .option('--mapping <file.json>', words('help-import-mapping'))
    .addOption(new Option('--dates <order>', words('help-import-dates')).choices(dateOrders))
    .addOption(new Option('--unit <unit>', words('help-import-unit')).choices(['ft', 'm']))
    .option('--sheet <name>', words('help-import-sheet'))
    .option('--preview', words('help-import-preview'))
    .addHelpText(
      'after',
      `\n${words('help-import-more', { meanings: columnMeaningSchema.options.join(', ') })}`,
    )
    .action(async (file: string, options: Options, command: Command) => {
      const job = jobOf(command, terminal);
      const mapping = options.mapping === undefined ? {} : await readMapping(options.mapping, job);
      const sheet = options.sheet ?? mapping.sheet;
      const request = {
        fileName: basename(file),
        contentBase64: (await readBytes(file, job.language)).toString('base64'),
        withoutUnknownPeople: mapping.withoutUnknownPeople ?? false,
        ...(sheet === undefined ? {} : { sheet }),
      };
      await withStation(job, async (call) => {
        const proposed = await previewed(call, request, job);
        const columns = choicesOf(proposed, mapping, options, job);
        const preview = await previewed(call, { ...request, columns }, job);
        if (options.preview) {
          job.give(preview, previewLines(preview, job));
          return;
        }
        if (!preview.importable) throw notImportable(preview, job);
        if (mapping.columns === undefined) checkCertain(preview, job);
        const { job: number } = await call('import.run', { ...request, columns });
        const end = await ended(call, number);
        if (end.state !== 'imported') throw failedWith(end, job);
        const { devices, inspections, removed } = end;
        job.give(end, [words('import-done', { devices, inspections, removed, fresh: devices - removed })]);
      });
    });
};

const mappingSchema = z.object({
  columns: z
    .array(
      z.object({
        heading: z.string(),
        meaning: columnMeaningSchema,
        unit: importUnitSchema.optional(),
        dates: dateOrderSchema.optional(),
      }),
    )
    .optional(),
  sheet: z.string().optional(),
  withoutUnknownPeople: z.boolean().optional(),
});
type Mapping = z.output<typeof mappingSchema>;

const readMapping = async (file: string, { language }: Job): Promise<Mapping> => {
  const read = mappingSchema.safeParse(await readJson(file, language));
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const field = issue?.path.join('.') || 'JSON';
  throw failureOf(refusal('input-invalid', { field, why: issue?.message ?? '' }, field), language);
};

type Status = OutputOf<'import.status'>;
type Ended = Exclude<Status, { readonly state: 'working' }>;
type Preview = Extract<Status, { readonly state: 'previewed' }>['preview'];

const ended = (call: StationCall, job: number): Promise<Ended> =>
  untilEnded(() => call('import.status', { job }));

const previewed = async (
  call: StationCall,
  request: InputOf<'import.preview'>,
  job: Job,
): Promise<Preview> => {
  const { job: number } = await call('import.preview', request);
  const end = await ended(call, number);
  if (end.state !== 'previewed') throw failedWith(end, job);
  return end.preview;
};

const failedWith = (end: Ended, { language }: Job): Failure =>
  end.state === 'refused'
    ? new Failure({
        code: end.code,
        sentence: end.sentence,
        ...(end.field === undefined ? {} : { field: end.field }),
      })
    : failureOf(refusal('internal-error'), language);

/** What the mapping says of a heading, else what is proposed; the options stand for columns of which nothing is said. */
const choicesOf = (
  { columns }: Preview,
  mapping: Mapping,
  { dates, unit }: Options,
  { language }: Job,
): ColumnChoice[] => {
  for (const { heading } of mapping.columns ?? []) {
    if (columns.some((column) => column.heading === heading)) continue;
    throw failureOf(refusal('import-heading-unknown', { heading }, 'mapping'), language);
  }
  return columns.map((column) => {
    const said = mapping.columns?.find(({ heading }) => heading === column.heading);
    const meaning = said?.meaning ?? (mapping.columns === undefined ? column.proposed : 'ignore');
    const ownUnit = said?.unit ?? (meaning === column.proposed ? column.unit : undefined);
    const lengthUnit = meaning === 'ratedLength' ? unit : undefined;
    const chosenUnit = ownUnit ?? lengthUnit;
    const chosenDates = said?.dates ?? (isDateMeaning(meaning) ? dates : undefined);
    return {
      column: column.column,
      meaning,
      ...(chosenUnit === undefined ? {} : { unit: chosenUnit }),
      ...(chosenDates === undefined ? {} : { dates: chosenDates }),
    };
  });
};

/** A meaning that was guessed from the contents of a column is confirmed by a person, in a mapping. */
const checkCertain = ({ columns }: Preview, { language }: Job): void => {
  const guessed = columns.filter(({ because, meaning }) => because === 'contents' && meaning !== 'ignore');
  if (guessed.length === 0) return;
  const headings = guessed.map(({ heading }) => heading).join('; ');
  throw failureOf(refusal('import-meaning-guessed', { headings }, 'mapping'), language);
};

const notImportable = (preview: Preview, job: Job): Failure => {
  const lines = [...questionLines(preview, job), ...faultLines(preview, job)];
  return new Failure({ code: 'import-not-possible', sentence: lines.join('\n') }, preview);
};

const previewLines = (preview: Preview, job: Job): readonly string[] => {
  const { columns, counts } = preview;
  const matched = columns.map(({ heading, meaning, unit, dates, examples }) => [
    `  ${heading}`,
    [meaning, unit, dates].filter((part) => part !== undefined).join(' '),
    examples.slice(0, 2).join(' | '),
  ]);
  return [
    ...inColumns(matched),
    ...questionLines(preview, job),
    ...faultLines(preview, job),
    job.words('import-counts', { ...counts }),
    ...(preview.importable ? [job.words('import-possible')] : []),
  ];
};

const questionLines = ({ questions, columns }: Preview, job: Job): readonly string[] =>
  questions.map((question) => questionLine(question, columns, job));

const questionLine = (
  question: Preview['questions'][number],
  columns: Preview['columns'],
  { words }: Job,
): string => {
  const examples = question.examples.join(', ');
  const heading = 'column' in question ? (columns[question.column]?.heading ?? '') : '';
  switch (question.kind) {
    case 'date order':
      return words('import-question-dates', { heading, examples, orders: question.fitting.join(', ') });
    case 'unit':
      return words('import-question-unit', { heading, examples });
    case 'unknown people':
      return words('import-question-people', { examples, count: question.count });
  }
};

const faultLines = ({ faults, faultCount }: Preview, { words }: Job): readonly string[] => [
  ...faults.map(({ row, heading, sentence }) =>
    row === undefined
      ? sentence
      : words('import-fault-line', {
          place: heading === undefined ? String(row) : `${row} (${heading})`,
          sentence,
        }),
  ),
  ...(faultCount > faults.length ? [words('import-more-faults', { count: faultCount - faults.length })] : []),
];

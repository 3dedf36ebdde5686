/** `program show`, `presets`, `adopt`: the employer's written rules. */
import type { Command } from 'commander';
import { z } from 'zod';
import type { Program } from '../../domain/program.ts';
import { refusal } from '../../domain/refusal.ts';
import type { InputOf, OutputOf } from '../../station/contract.ts';
import { sourceText } from '../due-lines.ts';
import { failureOf } from '../failure.ts';
import { readJson } from '../files.ts';
import { type Job, jobOf, withStation } from '../job.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { dateText } from '../wording.ts';

interface AdoptOptions {
  readonly from?: InputOf<'program.adopt'>['effectiveFrom'];
  readonly pinFile?: string;
}

export const addProgram = (program: Command, { words, terminal }: Shell): void => {
  const command = program.command('program').description(words('help-program-rules'));

  command
    .command('show')
    .description(words('help-program-show'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const shown = await withStation(job, (call) => call('program.show', {}));
      const { presets: _presets, groundsOfTrade: _groundsOfTrade, release: _release, ...held } = shown;
      job.give(held, [...adoptionLines(shown, job), ...programLines(shown.program, job)]);
    });

  command
    .command('presets')
    .description(words('help-program-presets'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const { presets } = await withStation(job, (call) => call('program.show', {}));
      job.give(
        { presets },
        presets.flatMap((preset) => [...programLines(preset, job), '']),
      );
    });

  command
    .command('adopt')
    .argument('<file.json>', words('help-program-file'))
    .description(words('help-program-adopt'))
    .option('--from <date>', words('help-program-from'))
    .option('--pin-file <file>', words('help-pin-file'))
    .addHelpText('after', `\n${words('help-program-adopt-file')}`)
    .action(async (file: string, { from, pinFile }: AdoptOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const wanted = await readWanted(file, job);
      const pin = await pinFrom(pinFile, job);
      await withStation(job, async (call) => {
        const { presets } = await call('program.show', {});
        const adopted = await call('program.adopt', {
          program: settingsOf(wanted, presets, job),
          ...(from === undefined ? {} : { effectiveFrom: from }),
          pin,
        });
        const { key, version } = adopted.program;
        job.give(adopted, [
          words('program-adopted', { key, version, overdue: adopted.overdue }),
          ...(adopted.boundTrainings === 0
            ? []
            : [words('program-bound', { count: adopted.boundTrainings })]),
        ]);
      });
    });
};

const wantedSchema = z.looseObject({ basedOn: z.string().optional() });
type Wanted = z.infer<typeof wantedSchema>;

const readWanted = async (file: string, { language }: Job): Promise<Wanted> => {
  const read = wantedSchema.safeParse(await readJson(file, language));
  if (read.success) return read.data;
  throw failureOf(
    refusal('input-invalid', { field: 'JSON', why: read.error.issues[0]?.message ?? '' }, 'JSON'),
    language,
  );
};

/** The preset that the file is based on, with what the file says differently; the station checks the whole. */
const settingsOf = (
  { basedOn, version: _own, ...own }: Wanted,
  presets: readonly Program[],
  { language }: Job,
): InputOf<'program.adopt'>['program'] => {
  const base = presets.find(({ key }) => key === basedOn);
  if (basedOn !== undefined && base === undefined) {
    const known = presets.map(({ key }) => key).join(', ');
    throw failureOf(refusal('program-preset-unknown', { key: basedOn, known }, 'basedOn'), language);
  }
  const { version: _version, ...preset } = base ?? { version: 0 };
  return { ...preset, ...own } as InputOf<'program.adopt'>['program'];
};

const adoptionLines = (
  { adoption, earlier }: OutputOf<'program.show'>,
  { words, language }: Job,
): readonly string[] => {
  const line = (each: NonNullable<typeof adoption>): string =>
    words('program-adoption', {
      key: each.key,
      version: each.version,
      date: dateText(each.on, language),
      by: each.byName,
      from: dateText(each.effectiveFrom, language),
    });
  return adoption === undefined
    ? [words('program-not-adopted')]
    : [line(adoption), ...earlier.map((each) => `  ${line(each)}`)];
};

const programLines = (program: Program, { words, language }: Job): readonly string[] => {
  const { typesOfUse, jurisdictions, employerRules, missedInspection, inspectionInterval } = program;
  const months = (count: number) => words('months', { count });
  return [
    `${program.title[language]} (${program.key} v${program.version})`,
    `  ${words('program-interval')}: ${months(inspectionInterval.months)} · ${sourceText(inspectionInterval.source, words)}`,
    ...Object.entries(typesOfUse ?? {}).map(
      ([use, { inspectionMonths, revalidationMonths }]) =>
        `  ${words(`use-${use as keyof NonNullable<typeof typesOfUse>}`)}: ${words('program-use', {
          inspection: months(inspectionMonths),
          revalidation: months(revalidationMonths),
        })}`,
    ),
    ...jurisdictions.map(
      ({ name, inspectionMonths, source }) =>
        `  ${name[language]}: ${months(inspectionMonths)} · ${sourceText(source, words)}`,
    ),
    ...employerRules.map(({ why, inspectionMonths, revalidationMonths, typeOfUse, modelSheetId }) =>
      [
        `  ${why}:`,
        typeOfUse === undefined ? '' : words(`use-${typeOfUse}`),
        modelSheetId ?? '',
        inspectionMonths === undefined
          ? ''
          : `${words('due-what-documented inspection')} ${months(inspectionMonths)}`,
        revalidationMonths === undefined
          ? ''
          : `${words('due-what-revalidation')} ${months(revalidationMonths)}`,
      ]
        .filter((part) => part !== '')
        .join(' '),
    ),
    `  ${words(program.monthEnd ? 'program-month-end' : 'program-exact-day')}`,
    ...(program.release ?? []).map(({ for: of, needs, persons }) =>
      [
        `  ${words('program-release', { for: of, needs: needs.map((group) => group.join(' | ')).join(', ') })}`,
        persons === undefined ? '' : words('program-release-persons', { count: persons }),
      ]
        .filter((part) => part !== '')
        .join(' · '),
    ),
    `  ${words(`program-missed-${missedInspection.rule}`, { count: missedInspection.graceDays })}`,
  ];
};

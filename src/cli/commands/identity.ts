/** `identity search|open|show|propose|confirm|none`: who a device is whose code and label cannot be read. */
import type { Command } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { observationSchema } from '../../domain/identity/observation.ts';
import { refusal } from '../../domain/refusal.ts';
import type { InputOf, OutputOf } from '../../station/contract.ts';
import { failureOf } from '../failure.ts';
import { readJson } from '../files.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { columns } from '../wording.ts';
import { wholeNumber } from './device.ts';

type Observation = InputOf<'identity.search'>['observation'];

/** The facts that can be named as options, beside those of a file. */
const factOptions = {
  serial: '--serial <fragment>',
  manufacturer: '--manufacturer <fragment>',
  model: '--model <fragment>',
  dateOfManufacture: '--made <yyyy-mm>',
  lengthM: '--length <metres>',
  lifelineMaterial: '--material <material>',
  hookType: '--hook <type>',
  housingColour: '--colour <colour>',
  benchId: '--label <fragment>',
  tagNumber: '--tag <number>',
  lastUserId: '--last-user <person>',
  found: '--found <place>',
} as const satisfies Record<keyof Observation, string>;

/** The name under which commander hands an option over. */
const optionNames = {
  serial: 'serial',
  manufacturer: 'manufacturer',
  model: 'model',
  dateOfManufacture: 'made',
  lengthM: 'length',
  lifelineMaterial: 'material',
  hookType: 'hook',
  housingColour: 'colour',
  benchId: 'label',
  tagNumber: 'tag',
  lastUserId: 'lastUser',
  found: 'found',
} as const satisfies Record<keyof Observation, string>;

type FactOptions = Partial<Record<(typeof optionNames)[keyof Observation], string>>;

export const addIdentity = (program: Command, { words, terminal }: Shell): void => {
  const identity = program.command('identity').description(words('help-identity'));
  const withFacts = (command: Command): Command => {
    command.argument('[facts.json]', words('help-identity-facts'));
    for (const [field, flags] of Object.entries(factOptions)) {
      command.option(flags, words(`help-fact-${field as keyof Observation}`));
    }
    return command;
  };
  const caseNumber = wholeNumber(words);

  withFacts(identity.command('search').description(words('help-identity-search'))).action(
    async (file: string | undefined, options: FactOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const observation = await factsFrom(file, options, job);
      const ranking = await withStation(job, (call) => call('identity.search', { observation }));
      job.give(ranking, rankingLines(ranking, job));
    },
  );

  withFacts(identity.command('open').description(words('help-identity-open')))
    .option('--kept-at <place>', words('help-identity-kept-at'))
    .action(async (file: string | undefined, options: FactOptions & KeptAt, command: Command) => {
      const job = jobOf(command, terminal);
      const observation = await factsFrom(file, options, job);
      await withStation(job, async (call) => {
        const { identityCase } = await call('identity.open', { observation, ...keptAt(options) });
        const shown = (await call('identity.show', { identityCase })).identity;
        job.give(shown, [words('identity-opened', { identityCase }), ...rankingLines(shown.ranking, job)]);
      });
    });

  identity
    .command('show')
    .argument('<case>', words('help-identity-case'), caseNumber)
    .description(words('help-identity-show'))
    .action(async (identityCase: number, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const { identity: shown } = await withStation(job, (call) => call('identity.show', { identityCase }));
      job.give(shown, [
        words(`identity-state-${shown.state}`, { identityCase }),
        ...rankingLines(shown.ranking, job),
      ]);
    });

  identity
    .command('propose')
    .argument('<case>', words('help-identity-case'), caseNumber)
    .argument('<id>', words('help-identity-candidate'))
    .option('--pin-file <file>', words('help-pin-file'))
    .description(words('help-identity-propose'))
    .action(async (identityCase: number, id: string, options: { pinFile?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const pin = await pinFrom(options.pinFile, job);
      await withStation(job, async (call) => {
        const candidate = await deviceMeant(job, call, id);
        await call('identity.propose', { identityCase, candidate, pin });
        job.give({ identityCase, candidate }, [
          words('identity-proposed', { benchId: formatBenchId(candidate), identityCase }),
        ]);
      });
    });

  identity
    .command('confirm')
    .argument('<case>', words('help-identity-case'), caseNumber)
    .argument('<id>', words('help-identity-candidate'))
    .requiredOption('--looked-at-device', words('help-identity-looked'))
    .option('--pin-file <file>', words('help-pin-file'))
    .description(words('help-identity-confirm'))
    .action(async (identityCase: number, id: string, options: { pinFile?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const pin = await pinFrom(options.pinFile, job);
      await withStation(job, async (call) => {
        const candidate = await deviceMeant(job, call, id);
        await call('identity.confirm', { identityCase, candidate, lookedAtDevice: true, pin });
        job.give({ identityCase, benchId: candidate }, [
          words('identity-taken', { benchId: formatBenchId(candidate), identityCase }),
        ]);
      });
    });

  identity
    .command('none')
    .argument('<case>', words('help-identity-case'), caseNumber)
    .option('--kept-at <place>', words('help-identity-kept-at'))
    .description(words('help-identity-none'))
    .action(async (identityCase: number, options: KeptAt, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, (call) =>
        call('identity.leave-unidentified', { identityCase, ...keptAt(options) }),
      );
      job.give({ identityCase }, [words('identity-state-unidentified', { identityCase })]);
    });
};

interface KeptAt {
  readonly keptAt?: string;
}
const keptAt = ({ keptAt }: KeptAt) => (keptAt === undefined ? {} : { keptAt });

/** The file's facts, with those named as options over them. */
const factsFrom = async (
  file: string | undefined,
  options: FactOptions,
  { language }: Job,
): Promise<Observation> => {
  const read = file === undefined ? {} : await readJson(file, language);
  const named = Object.entries(optionNames).flatMap(([field, option]): [string, string | number][] => {
    const text = options[option];
    if (text === undefined) return [];
    return [[field, field === 'lengthM' || field === 'tagNumber' ? Number(text) : text]];
  });
  const facts = observationSchema.strict().safeParse({ ...Object(read), ...Object.fromEntries(named) });
  if (facts.success) return facts.data;
  const [issue] = facts.error.issues;
  const field = issue?.path.join('.') || 'JSON';
  throw failureOf(refusal('input-invalid', { field, why: issue?.message ?? '' }, field), language);
};

/** The candidates and none of these, the likeliest first, each with the weight of every fact in bits. */
const rankingLines = (ranking: OutputOf<'identity.search'>, { words }: Job): readonly string[] => {
  const percent = (probability: number) => `${(probability * 100).toFixed(1)} %`;
  const rows = [
    ...ranking.candidates.map(({ device, probability, evidence }) => ({
      probability,
      cells: [
        percent(probability),
        formatBenchId(device.benchId),
        `${device.manufacturer} ${device.model}`,
        device.serial,
        words(`standing-${device.standing}`),
        evidence
          .map(({ field, weight }) => `${field} ${weight < 0 ? '' : '+'}${weight.toFixed(1)}`)
          .join(', '),
      ],
    })),
    {
      probability: ranking.noneProbability,
      cells: [percent(ranking.noneProbability), words('identity-none-of-these'), '', '', '', ''],
    },
  ];
  return columns(rows.sort((a, b) => b.probability - a.probability).map(({ cells }) => cells));
};

/** `device add`, `show`, `list`, `picture`, `facts`, `maker-contact`, `minimum-diameter`: the register. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { z } from 'zod';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { standingSchema } from '../../domain/device.ts';
import { diameterText, type LengthUnit, lengthText, parseDiameter } from '../../domain/length.ts';
import { modelSheetSchema } from '../../domain/model-sheet.ts';
import { type PictureSubject, pictureSubjectSchema } from '../../domain/picture.ts';
import { refusal } from '../../domain/refusal.ts';
import type { InputOf, OutputOf } from '../../station/contract.ts';
import type { DeviceCard, DeviceSummary } from '../../station/views.ts';
import { withControlCharacters } from '../control-notation.ts';
import { correctionLine } from '../correction-line.ts';
import { dueCells } from '../due-lines.ts';
import { failureOf } from '../failure.ts';
import { readBytes, readJson } from '../files.ts';
import { deviceMeant, type Job, jobOf, type StationCall, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { columns, dateText } from '../wording.ts';
import { addDeviceCorrect } from './correct.ts';
import { addDeviceDue } from './device-due.ts';

export const addDevice = (program: Command, shell: Shell): void => {
  const { words, terminal } = shell;
  const device = program.command('device').description(words('help-device'));
  addDeviceCorrect(device, shell);
  addDeviceDue(device, shell);

  device
    .command('add')
    .argument('<file.json>', words('help-device-file'))
    .description(words('help-device-add'))
    .option('--code <text>', words('help-device-code'))
    .addHelpText('after', `\n${words('help-device-add-file')}`)
    .action(async (file: string, { code }: { code?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const registration = withCode(await readRegistration(file, job), code);
      const { benchId } = await withStation(job, (call) => register(call, registration));
      job.give({ benchId, shown: formatBenchId(benchId) }, [
        words('device-added', { benchId: formatBenchId(benchId) }),
      ]);
    });

  device
    .command('show')
    .argument('<id>', words('help-device-id'))
    .description(words('help-device-show'))
    .action(async (id: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const { device: card } = await call('device.show', { benchId });
        const { pictures } = await call('device.pictures', { benchId, limit: 100 });
        const kept = pictures.map(({ thumbnailBase64: _small, ...picture }) => picture);
        job.give({ device: card, pictures: kept }, [
          ...cardLines(card, await unitOf(call), job),
          ...kept.map((picture) => pictureLine(picture, job)),
        ]);
      });
    });

  device
    .command('picture')
    .argument('<id>', words('help-device-id'))
    .argument('<file>', words('help-device-picture-file'))
    .description(words('help-device-picture'))
    .addOption(
      new Option('--of <what>', words('help-device-picture-of'))
        .choices(pictureSubjectSchema.options)
        .default('marking'),
    )
    .action(async (id: string, file: string, { of }: { of: PictureSubject }, command: Command) => {
      const job = jobOf(command, terminal);
      const pictureBase64 = (await readBytes(file, job.language)).toString('base64');
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const { picture } = await call('device.keep-picture', { benchId, of, pictureBase64 });
        const { width, height, sha256 } = picture;
        job.give({ benchId, picture }, [
          words('picture-kept', { benchId: formatBenchId(benchId), width, height, sha256 }),
        ]);
      });
    });

  device
    .command('facts')
    .argument('<id>', words('help-device-id'))
    .description(words('help-device-facts'))
    .option('--purchased <date>', words('help-device-purchased'))
    .option('--first-used <date>', words('help-device-first-used'))
    .addHelpText('after', `\n${words('help-device-facts-dates')}`)
    .action(async (id: string, options: FactsOptions, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const facts = await call('device.record-facts', {
          benchId,
          ...said('purchasedOn', options.purchased),
          ...said('firstUsedOn', options.firstUsed),
        });
        const shown = (date: string | undefined) => date ?? words('fact-not-known');
        job.give({ benchId, ...facts }, [
          words('device-facts', {
            benchId: formatBenchId(benchId),
            purchased: shown(facts.purchasedOn),
            firstUsed: shown(facts.firstUsedOn),
          }),
        ]);
      });
    });

  device
    .command('minimum-diameter')
    .argument('<id>', words('help-device-id'))
    .argument('<diameter>', words('help-minimum-diameter-text'))
    .description(words('help-minimum-diameter'))
    .action(async (id: string, text: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const diameterMm = parseDiameter(text, 'mm');
      if (diameterMm === undefined)
        throw failureOf(
          refusal('input-invalid', { field: 'diameter', why: words('diameter-shape') }, 'diameter'),
          job.language,
        );
      await withStation(job, async (call) => {
        const { device: card } = await call('device.show', { benchId: await deviceMeant(job, call, id) });
        const { modelSheetId, manufacturer, model } = card.modelSheet;
        const set = await call('model-sheet.set-minimum-diameter', {
          modelSheetId,
          lifelineMinimumDiameterMm: diameterMm,
        });
        job.give({ modelSheetId, ...set }, [
          words('minimum-diameter-set', {
            model: `${manufacturer} ${model}`,
            minimum: diameterText(diameterMm, 'm', job.language),
          }),
        ]);
      });
    });

  device
    .command('maker-contact')
    .argument('<manufacturer>', words('help-maker-contact-name'))
    .argument('<contact>', words('help-maker-contact-text'))
    .description(words('help-maker-contact'))
    .action(async (manufacturer: string, contact: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const set = await call('model-sheet.set-contact', { manufacturer, manufacturerContact: contact });
        job.give(set, [words('maker-contact-set', { count: set.modelSheets })]);
      });
    });

  device
    .command('list')
    .description(words('help-device-list'))
    .option('--search <text>', words('help-search'))
    .addOption(new Option('--standing <standing>', words('help-standing')).choices(standingSchema.options))
    .addOption(new Option('--due <state>', words('help-due')).choices(['overdue', 'due soon']))
    .option('--limit <number>', words('help-limit'), wholeNumber(words), 100)
    .action(async (options: ListOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { search, standing, due, limit } = options;
      await withStation(job, async (call) => {
        const found = await call('device.list', {
          limit,
          ...(search === undefined ? {} : { search }),
          ...(standing === undefined ? {} : { standing: [standing] }),
          ...(due === undefined ? {} : { due }),
        });
        const unit = await unitOf(call);
        job.give(found, [
          ...columns(found.devices.map((summary) => summaryCells(summary, unit, job))),
          words('device-count', { shown: found.devices.length, total: found.total }),
        ]);
      });
    });
};

interface FactsOptions {
  readonly purchased?: string;
  readonly firstUsed?: string;
}

/** A fact that was not named stays as it is; `unknown` takes it back. */
const said = (fact: 'purchasedOn' | 'firstUsedOn', text: string | undefined) =>
  text === undefined ? {} : { [fact]: text === 'unknown' ? null : text };

interface ListOptions {
  readonly search?: string;
  readonly standing?: z.infer<typeof standingSchema>;
  readonly due?: 'overdue' | 'due soon';
  readonly limit: number;
}

/** A registration as the station takes it, with the model sheet written out or named. */
const registrationSchema = z
  .looseObject({
    modelSheet: modelSheetSchema.omit({ modelSheetId: true }).optional(),
    modelSheetId: z.string().optional(),
  })
  .refine(({ modelSheet, modelSheetId }) => (modelSheet === undefined) !== (modelSheetId === undefined), {
    path: ['modelSheet'],
  });
type Registration = z.output<typeof registrationSchema>;

const readRegistration = async (file: string, { language }: Job): Promise<Registration> => {
  const read = registrationSchema.safeParse(await readJson(file, language));
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const field = issue?.path.join('.') || 'JSON';
  throw failureOf(refusal('input-invalid', { field, why: issue?.message ?? '' }, field), language);
};

/** The station holds the code against the serial number and the model of the file, and refuses what does not agree. */
const withCode = (registration: Registration, code: string | undefined): Registration => {
  if (code === undefined) return registration;
  const { otherCodes } = registration;
  const scanned = { code: withControlCharacters(code), kind: 'maker' };
  return { ...registration, otherCodes: [...(Array.isArray(otherCodes) ? otherCodes : []), scanned] };
};

/** A model sheet that the station has already is used again; a new one is recorded first. */
export const register = async (call: StationCall, { modelSheet, modelSheetId, ...rest }: Registration) => {
  const sheet = modelSheetId ?? (modelSheet && (await sheetFor(call, modelSheet)));
  return call('device.register', { ...rest, modelSheetId: sheet } as InputOf<'device.register'>);
};

const sheetFor = async (
  call: StationCall,
  wanted: InputOf<'model-sheet.record'>['modelSheet'],
): Promise<string> => {
  const { modelSheets } = await call('model-sheet.list', {});
  const known = modelSheets.find(
    (sheet) =>
      sheet.manufacturer === wanted.manufacturer &&
      sheet.model === wanted.model &&
      sheet.ratedLengthM === wanted.ratedLengthM,
  );
  return (
    known?.modelSheetId ?? (await call('model-sheet.record', { modelSheet: wanted })).modelSheet.modelSheetId
  );
};

const unitOf = async (call: StationCall): Promise<LengthUnit> => {
  const status = await call('station.status', {});
  return status.state === 'ready' ? status.lengthUnit : 'm';
};

const summaryCells = (
  device: DeviceSummary,
  unit: LengthUnit,
  { language, words }: Job,
): readonly string[] => [
  formatBenchId(device.benchId),
  `${device.manufacturer} ${device.model}`,
  lengthText(device.ratedLengthM, unit, language),
  device.serial,
  words(`standing-${device.standing}`),
  device.dueOn === undefined ? '' : words('due-on', { date: dateText(device.dueOn, language) }),
];

const cardLines = (card: DeviceCard, unit: LengthUnit, job: Job): readonly string[] => {
  const { language, words } = job;
  return [
    ...columns([summaryCells(card, unit, job)]),
    ...columns(card.due.map((due) => ['', ...dueCells(due, job)])),
    ...(card.typeOfUse === undefined ? [words('use-not-set')] : [words(`use-${card.typeOfUse}`)]).map(
      (use) => `  ${use}`,
    ),
    ...card.programReasons.map(({ sentence }) => `  ! ${sentence[language]}`),
    ...card.reasons.map(({ sentence }) => `  - ${sentence[language]}`),
    ...card.amendments.map((amendment) => correctionLine(amendment, job)),
    ...card.inspections.map(({ inspection, startedOn, startedBy, verdict, state }) =>
      words('inspection-line', {
        inspection,
        date: dateText(startedOn, language),
        by: startedBy,
        verdict: verdict === undefined ? words(`state-${state}`) : words(`verdict-${verdict}`),
      }),
    ),
  ];
};

type Picture = Pick<OutputOf<'device.pictures'>['pictures'][number], 'of' | 'keptOn' | 'keptBy' | 'state'>;

const pictureLine = ({ of, keptOn, keptBy, state }: Picture, { language, words }: Job): string =>
  words('picture-line', {
    of: words(`picture-of-${of}`),
    date: dateText(keptOn, language),
    by: keptBy,
    state: words(`picture-state-${state}`),
  });

/** A whole number from 1 on, or wrong usage. */
export const wholeNumber =
  (words: Job['words']) =>
  (text: string): number => {
    if (/^[1-9]\d{0,5}$/.test(text)) return Number(text);
    throw new InvalidArgumentError(words('number-shape'));
  };

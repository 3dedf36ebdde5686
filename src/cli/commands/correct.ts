/** `device correct` and `person correct`: corrections of the record, signed with the PIN. */
import { type Command, Option } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { refusal } from '../../domain/refusal.ts';
import type { InputOf, OutputOf } from '../../station/contract.ts';
import { failureOf } from '../failure.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { wholeNumber } from './device.ts';

const deviceFields = ['serial', 'dateOfManufacture', 'modelSheet', 'regularUser'] as const;
type DeviceField = (typeof deviceFields)[number];

interface CorrectOptions {
  readonly field?: DeviceField;
  readonly inspection?: number;
  readonly check?: string;
  readonly now?: string;
  readonly because: string;
  readonly markingReadNow?: true;
  readonly pinFile?: string;
}

type Amend = Pick<InputOf<'record.amend'>, 'amends' | 'correction'>;

export const addDeviceCorrect = (device: Command, { words, terminal }: Shell): void => {
  device
    .command('correct')
    .argument('<id>', words('help-device-id'))
    .description(words('help-device-correct'))
    .addOption(new Option('--field <field>', words('help-correct-field')).choices(deviceFields))
    .option('--inspection <number>', words('help-correct-inspection'), wholeNumber(words))
    .option('--check <key>', words('help-correct-check'))
    .option('--now <value>', words('help-correct-now'))
    .requiredOption('--because <reason>', words('help-because'))
    .option('--marking-read-now', words('help-correct-marking-read'))
    .option('--pin-file <file>', words('help-pin-file'))
    .action(async (id: string, options: CorrectOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const pin = await pinFrom(options.pinFile, job);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const amendable = await call('record.amendable', { benchId });
        const { because, markingReadNow = false } = options;
        const { seq } = await call('record.amend', {
          ...amendOf(options, amendable, job),
          because,
          markingReadNow,
          pin,
        });
        job.give({ benchId, seq }, [words('corrected', { seq, what: formatBenchId(benchId) })]);
      });
    });
};

/** An answer where a check is named, else a field of the device. */
const amendOf = (options: CorrectOptions, amendable: OutputOf<'record.amendable'>, job: Job): Amend => {
  const { field, inspection, check, now } = options;
  const missing = (named: string) =>
    failureOf(
      refusal('input-invalid', { field: named, why: job.words('correct-what') }, named),
      job.language,
    );
  if (check !== undefined) {
    const signed = amendable.inspections?.find((each) => each.inspection === inspection);
    const answered = signed?.answers.find((each) => each.check === check);
    if (answered === undefined || now === undefined) throw missing('check');
    return { amends: answered.amends, correction: { field: 'answer', now: answerIn(now, job) } };
  }
  const entry = amendable.device?.find((each) => each.field === field);
  if (entry === undefined || field === undefined) throw missing('field');
  if (field === 'regularUser')
    return { amends: entry.amends, correction: now === undefined ? { field } : { field, now } };
  if (now === undefined) throw missing('now');
  return { amends: entry.amends, correction: { field, now } };
};

/** The station checks what the JSON says. */
const answerIn = (
  text: string,
  { words, language }: Job,
): Extract<Amend['correction'], { field: 'answer' }>['now'] => {
  try {
    return JSON.parse(text);
  } catch {
    throw failureOf(
      refusal('input-invalid', { field: 'now', why: words('correct-answer') }, 'now'),
      language,
    );
  }
};

export const addPersonCorrect = (person: Command, { words, terminal }: Shell): void => {
  person
    .command('correct')
    .argument('<person>', words('help-person-id'))
    .description(words('help-person-correct'))
    .requiredOption('--name <name>', words('help-person-name'))
    .requiredOption('--because <reason>', words('help-because'))
    .option('--pin-file <file>', words('help-pin-file'))
    .action(
      async (
        personId: string,
        { name, because, pinFile }: { name: string; because: string; pinFile?: string },
        command: Command,
      ) => {
        const job = jobOf(command, terminal);
        const pin = await pinFrom(pinFile, job);
        await withStation(job, async (call) => {
          const { name: named } = await call('record.amendable', { personId });
          const { seq } = await call('record.amend', {
            amends: named?.amends ?? 1,
            correction: { field: 'name', now: name },
            because,
            pin,
          });
          job.give({ personId, seq }, [words('corrected', { seq, what: name })]);
        });
      },
    );
};

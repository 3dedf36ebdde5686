/** `notice …`: manufacturers' notices: what one would mean, recording it, and which devices are meant and where they are. */
import type { Command } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../station/contract.ts';
import { readBytes } from '../files.ts';
import { type Job, jobOf, type StationCall, withStation } from '../job.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { columns, dateText } from '../wording.ts';

export const addNotice = (program: Command, { words, terminal }: Shell): void => {
  const notice = program.command('notice').description(words('help-notice'));

  notice
    .command('preview')
    .argument('<file>', words('help-notice-file'))
    .description(words('help-notice-preview'))
    .action(async (file: string, _options: object, command: Command) => {
      const job = jobOf(command, terminal);
      const found = await withStation(job, async (call) =>
        call('notice.preview', { text: await noticeIn(call, file, job) }),
      );
      job.give(found, matchLines(found, job));
    });

  notice
    .command('record')
    .argument('<file>', words('help-notice-file'))
    .description(words('help-notice-record'))
    .option('--pin-file <file>', words('help-pin-file'))
    .action(async (file: string, { pinFile }: { pinFile?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const pin = await pinFrom(pinFile, job);
      await withStation(job, async (call) => {
        const recorded = await call('notice.record', { text: await noticeIn(call, file, job), pin });
        const { matches } = await call('notice.show', { notice: recorded.notice });
        job.give({ ...recorded, matches }, [words('notice-recorded', recorded), ...matchLines(matches, job)]);
      });
    });

  notice
    .command('list')
    .description(words('help-notice-list'))
    .action(async (_options: object, command: Command) => {
      const job = jobOf(command, terminal);
      const { notices } = await withStation(job, (call) => call('notice.list', {}));
      const rows = notices.map((each) => [
        String(each.notice),
        each.manufacturer,
        each.reference,
        dateText(each.issuedOn, job.language),
      ]);
      job.give({ notices }, rows.length === 0 ? [words('notice-none')] : columns(rows));
    });

  notice
    .command('show')
    .argument('<number>', words('help-notice-number'))
    .description(words('help-notice-show'))
    .action(async (number: string, _options: object, command: Command) => {
      const job = jobOf(command, terminal);
      const shown = await withStation(job, (call) => call('notice.show', { notice: Number(number) }));
      const { manufacturer, reference, issuedOn, instruction } = shown.notice;
      job.give(shown, [
        `${manufacturer} ${reference}, ${dateText(issuedOn, job.language)}`,
        instruction[job.language] ?? instruction.en ?? instruction.es ?? '',
        ...matchLines(shown.matches, job),
      ]);
    });
};

/** What the file says is read and judged by the station. */
const noticeIn = async (
  call: StationCall,
  file: string,
  { language }: Job,
): Promise<OutputOf<'notice.read'>['text']> => {
  const contentBase64 = (await readBytes(file, language)).toString('base64');
  return (await call('notice.read', { contentBase64 })).text;
};

const matchLines = (found: OutputOf<'notice.preview'>, { words }: Job): readonly string[] => {
  const { certain, possible, out, devices, unrecognised, warnings } = found;
  return [
    ...warnings,
    words('notice-counts', { certain, possible, out }),
    ...columns(
      devices.map(({ device, level, user, held, because }) => [
        formatBenchId(device.benchId),
        `${device.manufacturer} ${device.model}`,
        device.serial,
        words(level === 'certain' ? 'notice-certain' : 'notice-possible'),
        held ? words('notice-held') : '',
        user === undefined ? (device.stored?.place ?? '') : words('notice-with', { user }),
        because,
      ]),
    ),
    ...unrecognised.map(({ identityCase, keptAt, because }) =>
      words('notice-unrecognised', { identityCase, place: keptAt, because }),
    ),
  ];
};

/** `kit …`, `count …`: sets of devices that go out together, and what lies at a place. */
import type { Command } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';
import type { CountResult } from '../../domain/custody/shelf-count.ts';
import { refusal } from '../../domain/refusal.ts';
import { failureOf } from '../failure.ts';
import { deviceMeant, type Job, jobOf, type StationCall, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { columns, dateText } from '../wording.ts';

export const addStock = (program: Command, { words, terminal }: Shell): void => {
  const kit = program.command('kit').description(words('help-kit'));

  kit
    .command('list')
    .description(words('help-kit-list'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const found = await withStation(job, (call) => call('kit.list', {}));
      job.give(
        found,
        columns(
          found.kits.map(({ kitId, code, name, devices }) => [
            kitId,
            code,
            name,
            devices.map(({ benchId }) => formatBenchId(benchId)).join(' '),
          ]),
        ),
      );
    });

  kit
    .command('save')
    .argument('<device...>', words('help-device-id'))
    .requiredOption('--name <name>', words('help-kit-name'))
    .requiredOption('--code <code>', words('help-kit-code'))
    .option('--id <kit>', words('help-kit-id'))
    .description(words('help-kit-save'))
    .action(
      async (
        ids: string[],
        { name, code, id }: { name: string; code: string; id?: string },
        command: Command,
      ) => {
        const job = jobOf(command, terminal);
        await withStation(job, async (call) => {
          const benchIds: BenchId[] = [];
          for (const each of ids) benchIds.push(await deviceMeant(job, call, each));
          const saved = await call('kit.save', {
            name,
            code,
            benchIds,
            ...(id === undefined ? {} : { kitId: id }),
          });
          job.give(saved, [words('kit-saved', { name, count: benchIds.length, kit: saved.kitId })]);
        });
      },
    );

  kit
    .command('remove')
    .argument('<kit>', words('help-kit-id'))
    .description(words('help-kit-remove'))
    .action(async (kitId: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, (call) => call('kit.remove', { kitId }));
      job.give({ kitId }, [words('kit-removed')]);
    });

  const count = program.command('count').description(words('help-count'));

  count
    .command('places')
    .description(words('help-count-places'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const found = await withStation(job, (call) => call('count.places', {}));
      job.give(
        found,
        columns(
          found.places.map(({ place, devices, counted }) => [
            place,
            String(devices),
            counted === undefined ? '' : dateText(counted.on, job.language),
            counted?.by ?? '',
          ]),
        ),
      );
    });

  count
    .command('place')
    .argument('<place>', words('help-place'))
    .argument('[code...]', words('help-count-codes'))
    .option('--keep-here <device...>', words('help-count-keep'))
    .option('--look', words('help-count-look'))
    .description(words('help-count-place'))
    .action(
      async (
        place: string,
        codes: string[],
        { keepHere = [], look }: { keepHere?: string[]; look?: boolean },
        command: Command,
      ) => {
        const job = jobOf(command, terminal);
        await withStation(job, async (call) => {
          const { scanned, unknown } = await sortCodes(job, call, codes);
          const kept: BenchId[] = [];
          for (const each of keepHere) kept.push(await deviceMeant(job, call, each));
          const input = { place, scanned, unknown };
          const { result } = look
            ? await call('count.preview', input)
            : await call('count.finish', { ...input, keepHere: kept });
          job.give({ result }, countLines(result, job));
        });
      },
    );
};

/** What is not known counts as unknown; a guess is refused, as everywhere. */
const sortCodes = async (job: Job, call: StationCall, codes: readonly string[]) => {
  const scanned: BenchId[] = [];
  const unknown: string[] = [];
  for (const text of codes) {
    const scan = await call('scan.interpret', { text, typed: true });
    if (scan.meaning === 'device') scanned.push(scan.device.benchId);
    else if (scan.meaning === 'unknown' || scan.meaning === 'bench ID not registered') unknown.push(text);
    else throw failureOf(refusal('code-unknown', { code: text }), job.language);
  }
  return { scanned, unknown };
};

const countLines = (result: CountResult, { words }: Job): readonly string[] => {
  const listed = (ids: readonly BenchId[]) => ids.map(formatBenchId).join(' ');
  return columns([
    [words('count-found'), String(result.found.length), listed(result.found)],
    [words('count-missing'), String(result.missing.length), listed(result.missing)],
    [
      words('count-wrong-place'),
      String(result.wrongPlace.length),
      result.wrongPlace.map(({ benchId, place }) => `${formatBenchId(benchId)} (${place})`).join(' '),
    ],
    [words('count-recorded-out'), String(result.recordedOut.length), listed(result.recordedOut)],
    [words('count-unknown'), String(result.unknown.length), result.unknown.join(' ')],
  ]);
};

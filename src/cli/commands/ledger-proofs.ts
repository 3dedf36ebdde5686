/** `ledger prove`, `ledger check-proof`, `ledger checkpoint`: what is to be kept and checked outside the record. */
import { resolve } from 'node:path';
import type { Command } from 'commander';
import type { Language } from '../../domain/message.ts';
import { Failure } from '../failure.ts';
import { checkWritable, readBytes, writeBytes } from '../files.ts';
import { jobOf, withAnyStation, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

/** The text of a checkpoint that was kept in a file, where one is named. */
export const keptText = async (
  file: string | undefined,
  language: Language,
): Promise<{ readonly checkpoint?: string }> =>
  file === undefined ? {} : { checkpoint: await readText(file, language) };

const readText = async (file: string, language: Language): Promise<string> =>
  (await readBytes(file, language)).toString('utf8');

const numberOf = (text: string | undefined): number | undefined =>
  text !== undefined && /^[1-9][0-9]{0,14}$/.test(text) ? Number(text) : undefined;

export const addLedgerProofs = (ledger: Command, { words, terminal }: Shell): void => {
  ledger
    .command('prove')
    .argument('[seq]', words('help-ledger-prove-seq'))
    .description(words('help-ledger-prove'))
    .option('--inspection <number>', words('help-ledger-prove-inspection'))
    .option('--checkpoint <file>', words('help-ledger-prove-checkpoint'))
    .requiredOption('--out <file>', words('help-ledger-prove-out'))
    .action(async (seqText: string | undefined, options: ProveOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { language } = job;
      const seq = numberOf(seqText);
      const inspection = numberOf(options.inspection);
      if ((seq === undefined) === (inspection === undefined))
        throw new Failure({
          code: 'ledger-prove-which',
          sentence: words('ledger-prove-which'),
          field: 'seq',
        });
      const { out: file } = options;
      const record = `${file}.json`;
      for (const path of [file, record]) await checkWritable(path, language);
      const kept = await keptText(options.checkpoint, language);
      const what =
        seq === undefined
          ? { kind: 'inspection' as const, inspection: inspection ?? 0 }
          : { kind: 'event' as const, seq };
      const proved = await withStation(job, (call) => call('ledger.prove', { what, ...kept }));
      await writeBytes(file, Buffer.from(proved.proof), language);
      await writeBytes(record, Buffer.from(proved.record), language);
      job.give({ ...proved, files: [file, record] }, [
        words('ledger-proved', { seq: proved.seq, file, record }),
      ]);
    });

  ledger
    .command('check-proof')
    .argument('<file>', words('help-ledger-check-proof-file'))
    .description(words('help-ledger-check-proof'))
    .option('--record <file>', words('help-ledger-check-proof-record'))
    .option('--checkpoint <file>', words('help-ledger-check-proof-checkpoint'))
    .option('--key <text>', words('help-ledger-check-proof-key'))
    .action(async (file: string, options: CheckOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { language } = job;
      const input = {
        proof: await readText(file, language),
        record: await readText(options.record ?? `${file}.json`, language),
        ...(await keptText(options.checkpoint, language)),
        ...(options.key === undefined ? {} : { key: options.key }),
      };
      const checked = await withAnyStation(job, options.key === undefined, (call) =>
        call('ledger.check-proof', input),
      );
      const { seq, origin, size, key } = checked;
      job.give(checked, [
        words('ledger-proof-holds', { seq, origin, size, key }),
        ...(checked.isKept ? [words('ledger-proof-kept')] : []),
      ]);
    });

  ledger
    .command('checkpoint')
    .description(words('help-ledger-checkpoint'))
    .requiredOption('--out <path>', words('help-ledger-checkpoint-out'))
    .action(async ({ out }: { readonly out: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const written = await withStation(job, (call) => call('checkpoint.export', { path: resolve(out) }));
      const { path, size, before, key } = written;
      job.give(written, [
        words('ledger-checkpoint-written', { size, file: path }),
        words('ledger-checkpoint-key', { key }),
        ...(before === undefined ? [] : [words('ledger-checkpoint-before', { size: before })]),
      ]);
    });
};

interface ProveOptions {
  readonly inspection?: string;
  readonly checkpoint?: string;
  readonly out: string;
}

interface CheckOptions {
  readonly record?: string;
  readonly checkpoint?: string;
  readonly key?: string;
}

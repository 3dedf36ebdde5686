/** `ledger verify`, `ledger export`, `ledger rebuild`: the record. */
import type { Command } from 'commander';
import { Failure } from '../failure.ts';
import { checkWritable, readBytes, writeBytes } from '../files.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

export const addLedger = (program: Command, { words, terminal }: Shell): void => {
  const ledger = program.command('ledger').description(words('help-ledger'));

  ledger
    .command('verify')
    .description(words('help-ledger-verify'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const verified = await withStation(job, (call) => call('ledger.verify', {}));
      const { size, rootHash } = verified.head;
      if (!verified.sound) {
        const sentence = words('ledger-not-sound', { faults: verified.faults.map(faultText).join('; ') });
        throw new Failure({ code: 'ledger-not-sound', sentence }, verified);
      }
      const { length: unnamed } = verified.notes;
      job.give(verified, [
        words('ledger-sound', { events: size, rootHash }),
        ...(unnamed === 0 ? [] : [words('ledger-pictures-unnamed', { count: unnamed })]),
      ]);
    });

  ledger
    .command('export')
    .description(words('help-ledger-export'))
    .option('--out <file>', words('help-ledger-out'))
    .action(async ({ out }: { readonly out?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const { language } = job;
      if (out !== undefined) await checkWritable(out, language);
      const exported = await withStation(job, (call) => call('ledger.export', {}));
      if (out !== undefined) await writeBytes(out, await readBytes(exported.path, language), language);
      const file = out ?? exported.path;
      job.give({ ...exported, path: file }, [words('ledger-exported', { events: exported.events, file })]);
    });

  ledger
    .command('rebuild')
    .description(words('help-ledger-rebuild'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const rebuilt = await withStation(job, (call) => call('ledger.rebuild', {}));
      job.give(rebuilt, [words('ledger-rebuilt', { events: rebuilt.events })]);
    });
};

const faultText = (fault: { readonly kind: string; readonly seq?: number; readonly key?: string }): string =>
  [fault.kind, fault.seq ?? fault.key ?? ''].join(' ').trimEnd();

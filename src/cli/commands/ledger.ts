/** `ledger verify`, `ledger export`, `ledger rebuild`, and the proofs: the record. */
import type { Command } from 'commander';
import { Failure } from '../failure.ts';
import { checkWritable, readBytes, writeBytes } from '../files.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { addLedgerProofs, keptText } from './ledger-proofs.ts';

interface VerifyFlags {
  readonly checkpoint?: string;
  readonly eventsOnly?: true;
}

export const addLedger = (program: Command, { words, terminal }: Shell): void => {
  const ledger = program.command('ledger').description(words('help-ledger'));

  ledger
    .command('verify')
    .description(words('help-ledger-verify'))
    .option('--checkpoint <file>', words('help-ledger-verify-checkpoint'))
    .option('--events-only', words('help-ledger-verify-events-only'))
    .action(async ({ checkpoint: file, eventsOnly }: VerifyFlags, command: Command) => {
      const job = jobOf(command, terminal);
      const kept = await keptText(file, job.language);
      const verified = await withStation(job, (call) =>
        call('ledger.verify', { ...kept, extent: eventsOnly === true ? 'events' : 'everything' }),
      );
      const { size, rootHash } = verified.head;
      if (!verified.sound) {
        const sentence = words('ledger-not-sound', { faults: verified.faults.map(faultText).join('; ') });
        throw new Failure({ code: 'ledger-not-sound', sentence }, verified);
      }
      const { length: unnamed } = verified.notes;
      job.give(verified, [
        words('ledger-sound', { events: size, rootHash }),
        ...(verified.extent === 'events' ? [words('ledger-events-only')] : []),
        ...(verified.keptSize === undefined ? [] : [words('ledger-kept-holds', { size: verified.keptSize })]),
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

  addLedgerProofs(ledger, { words, terminal });
};

interface FaultWords {
  readonly kind: string;
  readonly seq?: number;
  readonly lastSeq?: number;
  readonly size?: number;
  readonly covered?: number;
  readonly key?: string;
}

const faultText = ({ kind, seq, lastSeq, size, covered, key }: FaultWords): string =>
  [kind, seq ?? lastSeq ?? size ?? covered ?? key ?? ''].join(' ').trimEnd();

/** `held`, `release`, `scrap`: the devices out of service, the evidence for their return, and the two ways out. */
import { type Command, InvalidArgumentError } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { calendarDate } from '../../domain/brand.ts';
import { givenDocuments } from '../given-documents.ts';
import { heldCells, heldLines } from '../held-lines.ts';
import { deviceMeant, jobOf, withStation } from '../job.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { columns } from '../wording.ts';

interface EvidenceOptions {
  readonly kind: string;
  readonly reason: readonly string[];
  readonly number?: string;
  readonly on?: string;
  readonly issuer?: string;
  readonly statement?: string;
  readonly document?: readonly string[];
}

export const addHeld = (program: Command, shell: Shell): void => {
  const { words, terminal } = shell;
  const held = program.command('held').description(words('help-held'));

  held
    .command('list')
    .description(words('help-held-list'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const found = await call('held.list', { limit: 500 });
        while (found.held.length < found.total) {
          const more = await call('held.list', { limit: 500, offset: found.held.length });
          if (more.held.length === 0) break;
          found.held.push(...more.held);
        }
        job.give(found, [
          ...columns(found.held.map((each) => heldCells(each, job))),
          words('device-count', { shown: found.held.length, total: found.total }),
        ]);
      });
    });

  held
    .command('show')
    .argument('<device>', words('help-device-id'))
    .description(words('help-held-show'))
    .action(async (id: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const shown = await call('held.show', { benchId: await deviceMeant(job, call, id) });
        job.give(shown, heldLines(shown.held, job));
      });
    });

  held
    .command('evidence')
    .argument('<device>', words('help-device-id'))
    .requiredOption('--kind <kind>', words('help-evidence-kind'))
    .requiredOption('--reason <number...>', words('help-evidence-reason'))
    .option('--number <number>', words('help-certificate-number'))
    .option('--on <date>', words('help-certificate-on'))
    .option('--issuer <name>', words('help-certificate-issuer'))
    .option('--statement <words>', words('help-evidence-statement'))
    .option('--document <file...>', words('help-evidence-document'))
    .description(words('help-held-evidence'))
    .action(async (id: string, options: EvidenceOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { kind, reason, number, on, issuer, statement, document } = options;
      const covers = reason.map(Number);
      if (covers.some((each) => !Number.isInteger(each)))
        throw new InvalidArgumentError(words('evidence-reason-shape'));
      const isCertified = number !== undefined && on !== undefined && issuer !== undefined;
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const shown = await call('held.record-evidence', {
          benchId,
          kind,
          covers,
          documents: await givenDocuments(document, job),
          ...(isCertified ? { certificate: { number, on: calendarDate(on), issuer } } : {}),
          ...(statement === undefined ? {} : { statement }),
        });
        job.give(shown, heldLines(shown.held, job));
      });
    });

  held
    .command('agree')
    .argument('<device>', words('help-device-id'))
    .requiredOption('--evidence <number>', words('help-evidence-number'), Number)
    .option('--pin-file <file>', words('help-pin-file'))
    .description(words('help-held-agree'))
    .action(
      async (id: string, { evidence, pinFile }: { evidence: number; pinFile?: string }, command: Command) => {
        const job = jobOf(command, terminal);
        const pin = await pinFrom(pinFile, job);
        await withStation(job, async (call) => {
          const benchId = await deviceMeant(job, call, id);
          const shown = await call('held.confirm-evidence', { benchId, evidence, lookedAtDevice: true, pin });
          job.give(shown, heldLines(shown.held, job));
        });
      },
    );

  held
    .command('withdraw')
    .argument('<device>', words('help-device-id'))
    .requiredOption('--evidence <number>', words('help-evidence-number'), Number)
    .requiredOption('--because <reason>', words('help-because'))
    .description(words('help-held-withdraw'))
    .action(
      async (id: string, { evidence, because }: { evidence: number; because: string }, command: Command) => {
        const job = jobOf(command, terminal);
        await withStation(job, async (call) => {
          const benchId = await deviceMeant(job, call, id);
          const shown = await call('held.withdraw-evidence', { benchId, evidence, because });
          job.give(shown, heldLines(shown.held, job));
        });
      },
    );

  program
    .command('release')
    .argument('<device>', words('help-device-id'))
    .requiredOption('--tag <text>', words('help-release-tag'))
    .description(words('help-release'))
    .action(async (id: string, { tag }: { tag: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const shown = await call('release.take', { benchId, tag });
        job.give(shown, [words('released', { benchId: formatBenchId(benchId) })]);
      });
    });

  program
    .command('scrap')
    .argument('<device>', words('help-device-id'))
    .option('--lifeline-cut', words('help-scrap-cut'))
    .option('--marking-defaced', words('help-scrap-defaced'))
    .requiredOption('--witness <badge>', words('help-scrap-witness'))
    .requiredOption('--photo <file...>', words('help-scrap-photo'))
    .description(words('help-scrap'))
    .action(async (id: string, options: ScrapOptions, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchId = await deviceMeant(job, call, id);
        const { personId } = await call('desk.user', { badge: options.witness });
        const shown = await call('device.scrap', {
          benchId,
          lifelineCut: options.lifelineCut ?? false,
          markingDefaced: options.markingDefaced ?? false,
          witness: personId,
          photos: await givenDocuments(options.photo, job),
        });
        job.give(shown, [words('scrapped', { benchId: formatBenchId(benchId) })]);
      });
    });
};

interface ScrapOptions {
  readonly lifelineCut?: boolean;
  readonly markingDefaced?: boolean;
  readonly witness: string;
  readonly photo: readonly string[];
}

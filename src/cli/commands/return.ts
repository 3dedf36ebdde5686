/** `return`: batches of held devices to their manufacturer, what came back, what a manufacturer can repair, and what a plan is made of. */
import type { Command } from 'commander';
import { calendarDate } from '../../domain/brand.ts';
import { lengthText } from '../../domain/length.ts';
import type { InputOf, OutputOf } from '../../station/contract.ts';
import { batchLines } from '../held-lines.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { columns } from '../wording.ts';
import { addReturnBasis } from './return-basis.ts';

export const addReturn = (program: Command, shell: Shell): void => {
  const { words, terminal } = shell;
  const returns = program.command('return').description(words('help-return'));
  const give = (job: Job, shown: OutputOf<'return-batch.show'>): void =>
    job.give(shown, batchLines(shown.batch, job));

  addReturnBasis(returns, shell);

  returns
    .command('add')
    .argument('<device...>', words('help-device-id'))
    .option('--batch <number>', words('help-batch'), Number)
    .description(words('help-return-add'))
    .action(async (ids: string[], { batch }: { batch?: number }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const benchIds = [];
        for (const id of ids) benchIds.push(await deviceMeant(job, call, id));
        give(job, await call('return-batch.add', { benchIds, ...(batch === undefined ? {} : { batch }) }));
      });
    });

  returns
    .command('take-out')
    .argument('<batch>', words('help-batch'), Number)
    .argument('<device>', words('help-device-id'))
    .description(words('help-return-take-out'))
    .action(async (batch: number, id: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) =>
        give(job, await call('return-batch.take-out', { batch, benchId: await deviceMeant(job, call, id) })),
      );
    });

  returns
    .command('ship')
    .argument('<batch>', words('help-batch'), Number)
    .requiredOption('--carrier <name>', words('help-carrier'))
    .option('--consignment <number>', words('help-consignment'))
    .requiredOption('--follow-up <date>', words('help-follow-up'))
    .requiredOption('--condition <words>', words('help-condition'))
    .requiredOption('--contamination <state>', words('help-contamination'))
    .description(words('help-return-ship'))
    .action(async (batch: number, options: ShipOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { carrier, consignment, followUp, condition, contamination } = options;
      await withStation(job, async (call) =>
        give(
          job,
          await call('return-batch.ship', {
            batch,
            carrier,
            condition,
            contamination,
            followUpOn: calendarDate(followUp),
            ...(consignment === undefined ? {} : { consignment }),
          }),
        ),
      );
    });

  returns
    .command('follow-up')
    .argument('<batch>', words('help-batch'), Number)
    .requiredOption('--note <words>', words('help-follow-up-note'))
    .requiredOption('--next <date>', words('help-follow-up'))
    .description(words('help-return-follow-up'))
    .action(async (batch: number, { note, next }: { note: string; next: string }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) =>
        give(job, await call('return-batch.follow-up', { batch, note, nextOn: calendarDate(next) })),
      );
    });

  returns
    .command('receive')
    .argument('<batch>', words('help-batch'), Number)
    .argument('<device>', words('help-device-id'))
    .requiredOption('--outcome <outcome>', words('help-outcome'))
    .option('--number <number>', words('help-certificate-number'))
    .option('--on <date>', words('help-certificate-on'))
    .option('--issuer <name>', words('help-certificate-issuer'))
    .description(words('help-return-receive'))
    .action(async (batch: number, id: string, options: ReceiveOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { outcome, number, on, issuer } = options;
      const isCertified = number !== undefined && on !== undefined && issuer !== undefined;
      await withStation(job, async (call) =>
        give(
          job,
          await call('return-batch.receive', {
            batch,
            benchId: await deviceMeant(job, call, id),
            outcome,
            ...(isCertified ? { certificate: { number, on: calendarDate(on), issuer } } : {}),
          }),
        ),
      );
    });

  returns
    .command('list')
    .option('--open', words('help-return-list-open'))
    .description(words('help-return-list'))
    .action(async ({ open }: { open?: boolean }, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const found = await call('return-batch.list', { open: open ?? false });
        job.give(found, [
          ...found.batches.flatMap((batch) => [...batchLines(batch, job), '']),
          ...found.turnarounds.map((each) => words('turnaround', { ...each })),
        ]);
      });
    });

  returns
    .command('models')
    .description(words('help-return-models'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      await withStation(job, async (call) => {
        const found = await call('repair-terms.list', {});
        job.give(found, columns(found.models.map((each) => modelCells(each, job))));
      });
    });

  returns
    .command('terms')
    .argument('<model-sheet>', words('help-model-sheet-id'))
    .requiredOption('--repairable <answer>', words('help-repairable'))
    .option('--price <amount>', words('help-price'), Number)
    .option('--lead-time <days>', words('help-lead-time'), Number)
    .option('--quote <number>', words('help-quote'))
    .option('--valid-until <date>', words('help-quote-valid'))
    .description(words('help-return-terms'))
    .action(async (modelSheetId: string, options: TermsOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { repairable, price, leadTime, quote, validUntil } = options;
      await withStation(job, async (call) => {
        await call('repair-terms.record', {
          modelSheetId,
          repairable,
          ...(price === undefined ? {} : { price }),
          ...(leadTime === undefined ? {} : { leadTimeDays: leadTime }),
          ...(quote === undefined ? {} : { quote }),
          ...(validUntil === undefined ? {} : { validUntil: calendarDate(validUntil) }),
        });
        job.give({ modelSheetId }, [words('terms-recorded', { modelSheetId })]);
      });
    });
};

interface ShipOptions {
  readonly carrier: string;
  readonly consignment?: string;
  readonly followUp: string;
  readonly condition: string;
  readonly contamination: InputOf<'return-batch.ship'>['contamination'];
}

interface ReceiveOptions {
  readonly outcome: InputOf<'return-batch.receive'>['outcome'];
  readonly number?: string;
  readonly on?: string;
  readonly issuer?: string;
}

interface TermsOptions {
  readonly repairable: InputOf<'repair-terms.record'>['repairable'];
  readonly price?: number;
  readonly leadTime?: number;
  readonly quote?: string;
  readonly validUntil?: string;
}

const modelCells = (
  {
    modelSheetId,
    manufacturer,
    model,
    ratedLengthM,
    held,
    terms,
  }: OutputOf<'repair-terms.list'>['models'][number],
  { words, language }: Job,
): readonly string[] => [
  modelSheetId,
  `${manufacturer} ${model}`,
  lengthText(ratedLengthM, 'm', language),
  words('held-count', { count: held }),
  terms === undefined ? words('terms-ask') : words(`repairable-${terms.repairable}`),
  terms?.price === undefined ? '' : String(terms.price),
];

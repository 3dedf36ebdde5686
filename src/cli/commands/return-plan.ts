/** `return-plan [FILE.json]`: what to send together and when, what to replace and what to scrap, for the record or for the file. */
import { resolve } from 'node:path';
import type { Command } from 'commander';
import type { InputOf } from '../../station/contract.ts';
import { Failure } from '../failure.ts';
import { readJson } from '../files.ts';
import { deviceMeant, type Job, jobOf, type StationCall, withStation } from '../job.ts';
import { madeReport } from '../made-report.ts';
import type { Shell } from '../terminal.ts';
import { untilEnded } from '../until-ended.ts';

/** What a file says is for the station to judge. */
type Input = NonNullable<InputOf<'return-plan.start'>['input']>;

export const addReturnPlan = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('return-plan')
    .argument('[file.json]', words('help-return-plan-file'))
    .description(words('help-return-plan'))
    .option('--limit-of <device...>', words('help-return-plan-limit'))
    .option('--csv <file>', words('help-return-plan-csv'))
    .action(async (file: string | undefined, options: PlanOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { limitOf = [], csv } = options;
      const input = file === undefined ? undefined : ((await readJson(file, job.language)) as Input);
      await withStation(job, async (call) => {
        const { plan, number } = await made(
          call,
          input === undefined ? { limitsOf: await meant(job, call, limitOf) } : { input, limitsOf: limitOf },
        );
        const table =
          csv === undefined
            ? undefined
            : await madeReport(call, {
                of: { kind: 'return-plan', job: number },
                format: 'csv',
                language: job.language,
                file: resolve(csv),
              });
        job.give(plan, [
          ...plan.sentences,
          ...(table === undefined ? [] : [words('report-made', { path: table.path })]),
        ]);
      });
    });
};

interface PlanOptions {
  readonly limitOf?: string[];
  readonly csv?: string;
}

const meant = async (job: Job, call: StationCall, ids: readonly string[]): Promise<string[]> => {
  const benchIds: string[] = [];
  for (const id of ids) benchIds.push(await deviceMeant(job, call, id));
  return benchIds;
};

const made = async (call: StationCall, order: InputOf<'return-plan.start'>) => {
  const { job: number } = await call('return-plan.start', order);
  const end = await untilEnded(() => call('return-plan.status', { job: number }));
  if (end.state === 'planned') return { plan: end.plan, number };
  const { code, sentence, field } = end;
  throw new Failure({ code, sentence, ...(field === undefined ? {} : { field }) });
};

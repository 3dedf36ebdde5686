/** `return-plan [FILE.json]`: what to send together and when, what to replace and what to scrap, for the record or for the file. */
import type { Command } from 'commander';
import type { InputOf } from '../../station/contract.ts';
import { Failure } from '../failure.ts';
import { readJson } from '../files.ts';
import { deviceMeant, type Job, jobOf, type StationCall, withStation } from '../job.ts';
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
    .action(async (file: string | undefined, options: { limitOf?: string[] }, command: Command) => {
      const job = jobOf(command, terminal);
      const { limitOf = [] } = options;
      const input = file === undefined ? undefined : ((await readJson(file, job.language)) as Input);
      const plan = await withStation(job, async (call) =>
        made(call, input === undefined ? { limitsOf: await meant(job, call, limitOf) } : { input, limitsOf: limitOf }),
      );
      job.give(plan, plan.sentences);
    });
};

const meant = async (job: Job, call: StationCall, ids: readonly string[]): Promise<string[]> => {
  const benchIds: string[] = [];
  for (const id of ids) benchIds.push(await deviceMeant(job, call, id));
  return benchIds;
};

const made = async (call: StationCall, order: InputOf<'return-plan.start'>) => {
  const { job: number } = await call('return-plan.start', order);
  const end = await untilEnded(() => call('return-plan.status', { job: number }));
  if (end.state === 'planned') return end.plan;
  const { code, sentence, field } = end;
  throw new Failure({ code, sentence, ...(field === undefined ? {} : { field }) });
};

/** `return-plan FILE.json`: what to send together and when, what to replace and what to scrap, for the prices in the file. */
import type { Command } from 'commander';
import type { InputOf } from '../../station/contract.ts';
import { Failure } from '../failure.ts';
import { readJson } from '../files.ts';
import { jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { untilEnded } from '../until-ended.ts';

/** What a file says is for the station to judge. */
type Input = InputOf<'return-plan.start'>['input'];

export const addReturnPlan = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('return-plan')
    .argument('<file.json>', words('help-return-plan-file'))
    .description(words('help-return-plan'))
    .option('--limit-of <device...>', words('help-return-plan-limit'))
    .action(async (file: string, { limitOf = [] }: { limitOf?: string[] }, command: Command) => {
      const job = jobOf(command, terminal);
      const input = (await readJson(file, job.language)) as Input;
      const end = await withStation(job, async (call) => {
        const { job: number } = await call('return-plan.start', { input, limitsOf: limitOf });
        return untilEnded(() => call('return-plan.status', { job: number }));
      });
      if (end.state === 'refused') {
        const { code, sentence, field } = end;
        throw new Failure({ code, sentence, ...(field === undefined ? {} : { field }) });
      }
      job.give(end.plan, end.plan.sentences);
    });
};

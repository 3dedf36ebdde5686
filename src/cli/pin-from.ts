/** The PIN of whoever signs: from a file or the environment, never from the command line, which every user of the PC can read. */
import { refusal } from '../domain/refusal.ts';
import { failureOf } from './failure.ts';
import { readBytes } from './files.ts';
import type { Job } from './job.ts';

export const pinFrom = async (pinFile: string | undefined, { language, terminal }: Job): Promise<string> => {
  const fromFile =
    pinFile === undefined ? undefined : (await readBytes(pinFile, language)).toString('utf8').trim();
  const pin = fromFile ?? terminal.environment.SRL_BENCH_PIN;
  if (pin === undefined || pin === '') throw failureOf(refusal('pin-needed', {}, 'pin'), language);
  return pin;
};

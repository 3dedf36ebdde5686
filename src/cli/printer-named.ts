/** The printer that people know by a name, and a print job followed to its end. */
import { setTimeout as wait } from 'node:timers/promises';
import { refusal } from '../domain/refusal.ts';
import { Failure, failureOf } from './failure.ts';
import type { Job, StationCall } from './job.ts';

export const printerNamed = async (job: Job, call: StationCall, name: string) => {
  const { printers } = await call('printer.list', {});
  const found = printers.find(({ settings }) => settings.name.toLowerCase() === name.trim().toLowerCase());
  if (found === undefined)
    throw failureOf(refusal('printer-not-known', { printerId: name }, 'printer'), job.language);
  return found;
};

const pollMs = 200;

/** Says each new thing that stands in the way; fails with the sentence of the printer where it does not come out. */
export const untilPrinted = async (job: Job, call: StationCall, printJob: number) => {
  for (let told = ''; ; await wait(pollMs)) {
    const status = await call('print.status', { job: printJob });
    if (status.state === 'printed') return status;
    if (status.state === 'refused') throw new Failure({ code: status.code, sentence: status.sentence });
    if (status.problem !== undefined && status.problem !== told) {
      told = status.problem;
      job.terminal.err(`${told}\n`);
    }
  }
};

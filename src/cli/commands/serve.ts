/** `serve`: the station for browsers on this PC, without a window of its own. */
import { type Command, InvalidArgumentError } from 'commander';
import { isRefusal } from '../../domain/refusal.ts';
import { dataFolder } from '../../host/data-folder.ts';
import { openHostedStation } from '../../host/hosted-station.ts';
import { untilInterrupted } from '../../host/interruption.ts';
import { Failure, failureOf } from '../failure.ts';
import { type Job, jobOf } from '../job.ts';
import type { Shell } from '../terminal.ts';

export const addServe = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('serve')
    .description(words('help-serve'))
    .option('--port <number>', words('help-port'), portFrom(words), 0)
    .action(async ({ port }: { readonly port: number }, command: Command) => {
      const job = jobOf(command, terminal);
      const { folder } = dataFolder(job.data, terminal.environment);
      const hosted = await openHostedStation({ folder, port });
      if (isRefusal(hosted)) throw failureOf(hosted, job.language);
      if ('problem' in hosted) {
        throw new Failure({ code: hosted.problem, sentence: job.words(hosted.problem, { port }) });
      }
      if (!job.json) terminal.out(`${job.words('serving')}\n`);
      hosted.tellAddresses((address) => tell(address, job));
      await untilInterrupted();
      await hosted.close();
    });
};

const tell = (address: string, { json, terminal }: Job): void => {
  terminal.out(`${json ? JSON.stringify({ address }) : address}\n`);
};

/** A TCP port, RFC 9293 §3.1: 16 bits; 0 takes any that is free. */
export const portFrom =
  (words: Job['words']) =>
  (text: string): number => {
    const port = Number(text);
    if (/^\d{1,5}$/.test(text) && port <= 65_535) return port;
    throw new InvalidArgumentError(words('port-shape'));
  };

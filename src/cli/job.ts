/** One run of a command: the options that every command has, and the station that it calls. */
import { access, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Command } from 'commander';
import { z } from 'zod';
import { type Language, languageSchema } from '../domain/message.ts';
import { isRefusal, refusal } from '../domain/refusal.ts';
import { dataFolder } from '../host/data-folder.ts';
import { faultLog } from '../host/fault-log.ts';
import { productFolder } from '../host/product-folder.ts';
import { surroundingsOf } from '../host/surroundings.ts';
import { languageOfEnvironment, type Words, wordsIn } from '../host/words.ts';
import type { InputOf, OperationName, OutputOf } from '../station/contract.ts';
import { openStation, type Station } from '../station/station.ts';
import { Failure, failureOf } from './failure.ts';
import type { Terminal } from './terminal.ts';

const commonOptionsSchema = z.object({
  data: z.string().optional(),
  json: z.boolean().default(false),
  badge: z.string().optional(),
  language: languageSchema.optional(),
});

/** Calls the station; whatever it refuses is thrown as a `Failure`. */
export type StationCall = <Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
) => Promise<OutputOf<Name>>;

export interface Job {
  readonly language: Language;
  readonly words: Words;
  readonly data: string | undefined;
  readonly badge: string | undefined;
  readonly json: boolean;
  readonly terminal: Terminal;
  /** Prints the result as JSON, or for a person as lines. */
  give(result: unknown, lines: readonly string[]): void;
}

export const jobOf = (command: Command, terminal: Terminal): Job => {
  const { data, json, badge, language: asked } = commonOptionsSchema.parse(command.optsWithGlobals());
  const language = asked ?? languageOfEnvironment(terminal.environment);
  return {
    language,
    words: wordsIn(language),
    data,
    badge,
    json,
    terminal,
    give: (result, lines) => {
      const text = json ? JSON.stringify(result, undefined, 2) : lines.join('\n');
      terminal.out(`${text}\n`);
    },
  };
};

export interface StationAccess {
  readonly folder: string;
  readonly language: Language;
  /** Whose badge is scanned first; nobody's where it is absent. */
  readonly badge: string | undefined;
}

/** Calls in the session of the terminal. */
export const stationCall =
  (station: Station, language: Language): StationCall =>
  async (operation, input) => {
    const result = await station.call({ session: 'terminal', from: 'terminal', operation, input, language });
    if (!result.ok) throw new Failure(result.error);
    return result.output as OutputOf<typeof operation>;
  };

/** Opens the station of the folder, works, and gives the folder free again whatever happens. */
export const withStationIn = async <Result>(
  { folder, language, badge }: StationAccess,
  work: (call: StationCall, folder: string) => Promise<Result>,
): Promise<Result> => {
  const station = await openStation({
    folder,
    productFolder,
    onFault: faultLog(folder),
    surroundings: surroundingsOf('terminal', folder),
  });
  if (isRefusal(station)) throw failureOf(station, language);
  const call = stationCall(station, language);
  try {
    if (badge !== undefined) await call('session.sign-in', { badge });
    return await work(call, folder);
  } finally {
    await station.close();
  }
};

/** The station of the job's data folder. */
export const withStation = <Result>(
  job: Job,
  work: (call: StationCall, folder: string) => Promise<Result>,
  badge = job.badge,
): Promise<Result> =>
  withStationIn(
    { folder: dataFolder(job.data, job.terminal.environment).folder, language: job.language, badge },
    work,
  );

/**
 * For what can be asked without a station: nobody's data folder is touched for it, unless one was named, or, where
 * `register` is true because the register is looked at too, there is one.
 */
export const withAnyStation = async <Result>(
  job: Job,
  register: boolean,
  work: (call: StationCall) => Promise<Result>,
): Promise<Result> => {
  const { folder, named } = dataFolder(job.data, job.terminal.environment);
  if (named || (register && (await exists(folder)))) return withStation(job, work);
  const empty = await mkdtemp(join(tmpdir(), 'srl-bench-'));
  try {
    return await withStationIn({ folder: empty, language: job.language, badge: undefined }, work);
  } finally {
    await rm(empty, { recursive: true, force: true });
  }
};

/** The bench ID of the device that a text means for certain; a guess is named in the sentence and not acted on. */
export const deviceMeant = async (job: Job, call: StationCall, text: string) => {
  const scan = await call('scan.interpret', { text, typed: true });
  switch (scan.meaning) {
    case 'device':
      return scan.device.benchId;
    case 'bench ID not registered':
      throw failureOf(refusal('device-unknown', { benchId: scan.benchId }, 'benchId'), job.language);
    case 'suggestion': {
      const candidates = scan.devices.map(({ device }) => device.benchId).join(', ');
      const sentence = job.words('device-not-certain', { text, candidates });
      throw new Failure({ code: 'device-not-certain', sentence, field: 'benchId' });
    }
    case 'worthless tag':
      throw failureOf(refusal('tag-worthless', { state: scan.state }), job.language);
    case 'malformed':
      throw new Failure({ code: scan.code, sentence: scan.sentence, field: 'code' });
    case 'command':
    case 'place':
    case 'badge':
    case 'unknown':
      throw failureOf(refusal('code-unknown', { code: text }), job.language);
  }
};

const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

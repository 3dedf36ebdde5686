/** The command line over the contract: exit code 0 done, 1 refused by a rule or for bad input, 2 wrong usage. */
import { CommanderError } from 'commander';
import { z } from 'zod';
import { type Language, languages } from '../domain/message.ts';
import { languageOfEnvironment, wordsIn } from '../host/words.ts';
import { Failure } from './failure.ts';
import { programIn, usageSentence } from './program.ts';

const done = 0;
const refused = 1;
const wrongUsage = 2;

/** Help and errors of usage are in the language that was asked for, even where the command line cannot be parsed. */
const languageAsked = (args: readonly string[]): Language => {
  const index = args.findIndex((arg) => arg === '--language' || arg.startsWith('--language='));
  const asked = args[index]?.split('=')[1] ?? args[index + 1];
  const found = index < 0 ? undefined : languages.find((language) => language === asked);
  return found ?? languageOfEnvironment(process.env);
};

const report = (error: unknown, asJson: boolean, language: Language): number => {
  const words = wordsIn(language);
  if (error instanceof CommanderError && error.exitCode === 0) return done;
  if (error instanceof CommanderError) {
    const sentence = usageSentence(error, words);
    const helpWasShown = error.code === 'commander.help';
    if (asJson || !helpWasShown) tell({ error: { code: 'wrong-usage', sentence } }, sentence, asJson);
    return wrongUsage;
  }
  const failure =
    error instanceof Failure
      ? error
      : new Failure({ code: 'internal-error', sentence: words('internal-error') });
  tell({ ...failure.found, error: failure.error }, failure.error.sentence, asJson);
  return refused;
};

const tell = (result: unknown, sentence: string, asJson: boolean): void => {
  if (asJson) process.stdout.write(`${JSON.stringify(result, undefined, 2)}\n`);
  else process.stderr.write(`${sentence}\n`);
};

/** Who reads our output may stop reading, as `head` does; that is no fault of ours. */
const survivePipes = (): void => {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      process.exit(error.code === 'EPIPE' ? done : refused);
    });
  }
};

const main = async (args: readonly string[]): Promise<number> => {
  const language = languageAsked(args);
  z.config(language === 'es' ? z.locales.es() : z.locales.en());
  try {
    await programIn(wordsIn(language)).parseAsync([...args], { from: 'user' });
    return done;
  } catch (error) {
    return report(error, args.includes('--json'), language);
  }
};

survivePipes();
process.exitCode = await main(process.argv.slice(2));

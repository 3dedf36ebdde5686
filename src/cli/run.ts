/** Runs one command line and says how it ended: 0 done, 1 refused by a rule or for bad input, 2 wrong usage. */
import { CommanderError } from 'commander';
import { z } from 'zod';
import { type Language, languages } from '../domain/message.ts';
import { languageOfEnvironment, wordsIn } from '../host/words.ts';
import { Failure } from './failure.ts';
import { programFor, usageSentence } from './program.ts';
import type { Terminal } from './terminal.ts';

export const exitCodes = { done: 0, refused: 1, wrongUsage: 2 } as const;

export const runCommand = async (args: readonly string[], terminal: Terminal): Promise<number> => {
  const language = languageAsked(args, terminal);
  z.config(language === 'es' ? z.locales.es() : z.locales.en());
  try {
    await programFor({ words: wordsIn(language), terminal }).parseAsync([...args], { from: 'user' });
    return exitCodes.done;
  } catch (error) {
    return report(error, args.includes('--json'), language, terminal);
  }
};

/** Help and errors of usage are in the language that was asked for, even where the command line cannot be parsed. */
const languageAsked = (args: readonly string[], { environment }: Terminal): Language => {
  const index = args.findIndex((arg) => arg === '--language' || arg.startsWith('--language='));
  const asked = args[index]?.split('=')[1] ?? args[index + 1];
  const found = index < 0 ? undefined : languages.find((language) => language === asked);
  return found ?? languageOfEnvironment(environment);
};

const report = (error: unknown, asJson: boolean, language: Language, terminal: Terminal): number => {
  const words = wordsIn(language);
  const tell = (result: unknown, sentence: string): void => {
    if (asJson) terminal.out(`${JSON.stringify(result, undefined, 2)}\n`);
    else terminal.err(`${sentence}\n`);
  };
  if (error instanceof CommanderError && error.exitCode === 0) return exitCodes.done;
  if (error instanceof CommanderError) {
    const sentence = usageSentence(error, words);
    const helpWasShown = error.code === 'commander.help';
    if (asJson || !helpWasShown) tell({ error: { code: 'wrong-usage', sentence } }, sentence);
    return exitCodes.wrongUsage;
  }
  const failure =
    error instanceof Failure
      ? error
      : new Failure({ code: 'internal-error', sentence: words('internal-error') });
  if (!failure.isSaid) tell({ ...failure.found, error: failure.error }, failure.error.sentence);
  return exitCodes.refused;
};

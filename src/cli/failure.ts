/** What ends a command without success: a sentence for the person and a code for a program. */
import type { Language } from '../domain/message.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import { type WordKey, wordsIn } from '../host/words.ts';
import type { CallError } from '../station/contract.ts';
import { sentenceOf } from '../station/sentence.ts';

export class Failure extends Error {
  override readonly name = 'Failure';
  readonly error: CallError;
  /** What was found out before it failed, given beside the error with `--json`. */
  readonly found: Readonly<Record<string, unknown>>;
  /** True where everything was printed already, and only the exit status is left. */
  readonly isSaid: boolean = false;

  constructor(error: CallError, found: Readonly<Record<string, unknown>> = {}) {
    super(error.sentence);
    this.error = error;
    this.found = found;
  }
}

export const failureOf = (
  refused: Refusal,
  language: Language,
  found: Readonly<Record<string, unknown>> = {},
): Failure => {
  const { code, field } = refused;
  return new Failure(
    { code, sentence: sentenceOf(refused, language), ...(field === undefined ? {} : { field }) },
    found,
  );
};

/** The failure of a file operation; `doing` is what was tried with the file. */
export const fileFailure = (
  doing: 'read' | 'write',
  path: string,
  error: unknown,
  language: Language,
): Failure => {
  const why = wordsIn(language)(reasonOf(error));
  return failureOf(
    refusal(doing === 'read' ? 'file-unreadable' : 'file-unwritable', { path, why }),
    language,
  );
};

/** Source of the codes: errno(3). */
const reasonOf = (error: unknown): WordKey => {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  switch (code) {
    case 'ENOENT':
      return 'why-missing';
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return 'why-denied';
    case 'EISDIR':
      return 'why-folder';
    case 'ENOTDIR':
    case 'EEXIST':
      return 'why-not-folder';
    case 'ENOSPC':
    case 'EDQUOT':
      return 'why-full';
    default:
      return 'why-unknown';
  }
};

/** Where a command is given: what it prints to, and the environment it reads. */
import type { Words } from '../host/words.ts';

export interface Terminal {
  readonly environment: NodeJS.ProcessEnv;
  out(text: string): void;
  err(text: string): void;
}

/** What every command is made with. */
export interface Shell {
  readonly words: Words;
  readonly terminal: Terminal;
}

/** Runs a program of the operating system and gives what it said, in English words. */
import { execFile } from 'node:child_process';

export type ProgramResult =
  | { readonly ran: true; readonly exitCode: number; readonly output: string; readonly errors: string }
  | { readonly ran: false };

/** A program of the print system that says nothing for so long hangs. Common practice, no source. */
const longestMs = 30_000;

/** `ran` is false where there is no such program. */
export const runProgram = (name: string, args: readonly string[]): Promise<ProgramResult> =>
  new Promise((resolve) => {
    execFile(
      name,
      [...args],
      { env: { ...process.env, LC_ALL: 'C' }, timeout: longestMs, windowsHide: true },
      (error, output, errors) => {
        if (error !== null && error.code === 'ENOENT') resolve({ ran: false });
        else {
          const exitCode = error === null ? 0 : typeof error.code === 'number' ? error.code : -1;
          resolve({ ran: true, exitCode, output, errors });
        }
      },
    );
  });

/** Runs the desktop shell in Electron's runtime, and learns from it whether a window came up. */
import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { z } from 'zod';
import { isRootOnLinux } from './display.ts';

/** What the shell reports to whoever started it with `--report`. */
export const shellReportSchema = z.union([
  z.object({ open: z.literal(true) }),
  z.object({ refused: z.string() }),
]);
export type ShellReport = z.infer<typeof shellReportSchema>;

export type ShellStart =
  | { readonly kind: 'open'; readonly closed: Promise<void>; close(): Promise<void> }
  /** The station refused to open; a person must act on the sentence. */
  | { readonly kind: 'refused'; readonly sentence: string }
  /** The runtime is there but does not run on this PC. */
  | { readonly kind: 'failed' };

/** A shell that neither shows a window nor ends within this time will not show one. */
const patienceMs = 30_000;

export const startShell = async (
  runtime: string,
  productFolder: string,
  args: readonly string[],
): Promise<ShellStart> => {
  const switches = isRootOnLinux() ? ['--no-sandbox'] : [];
  const main = join(productFolder, 'dist', 'electron', 'main.js');
  const child = spawn(runtime, [...switches, main, '--report', ...args], {
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  });
  const closed = new Promise<void>((resolve) => {
    child.once('error', () => resolve());
    child.once('exit', () => resolve());
  });
  const report = await Promise.race([reportOf(child), closed, timeUp()]);
  if (report === undefined) {
    child.kill('SIGKILL');
    return { kind: 'failed' };
  }
  if ('refused' in report) {
    await closed;
    return { kind: 'refused', sentence: report.refused };
  }
  return {
    kind: 'open',
    closed,
    close: async () => {
      child.kill('SIGTERM');
      await closed;
    },
  };
};

const reportOf = (child: ChildProcess): Promise<ShellReport> =>
  new Promise((resolve) => {
    child.on('message', (message) => {
      const read = shellReportSchema.safeParse(message);
      if (read.success) resolve(read.data);
    });
  });

const timeUp = (): Promise<undefined> =>
  new Promise((resolve) => {
    setTimeout(() => resolve(undefined), patienceMs).unref();
  });

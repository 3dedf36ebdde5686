/** Runs the command line: in this process, which is quick, or in one of its own, as `npm run cli --` does. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { runCommand } from '../../src/cli/run.ts';

export const productFolder = fileURLToPath(new URL('../..', import.meta.url));

export interface Run {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
  /** What was printed, as JSON. */
  json(): ReturnType<typeof JSON.parse>;
}

const finished = (code: number | null, stdout: string, stderr: string): Run => ({
  code,
  stdout,
  stderr,
  json: () => JSON.parse(stdout),
});

export const runCli = async (args: readonly string[], environment: NodeJS.ProcessEnv = {}): Promise<Run> => {
  const stdout: string[] = [];
  const stderr: string[] = [];
  const code = await runCommand(args, {
    environment: { LC_ALL: 'C', ...environment },
    out: (text) => void stdout.push(text),
    err: (text) => void stderr.push(text),
  });
  return finished(code, stdout.join(''), stderr.join(''));
};

export const spawnCli = (args: readonly string[], environment: NodeJS.ProcessEnv = {}): Promise<Run> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...args], {
      cwd: productFolder,
      env: { ...process.env, SRL_BENCH_DATA: '', SRL_BENCH_PIN: '', LC_ALL: 'C', ...environment },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const stdout: Buffer[] = [];
    const stderr: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => stdout.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => stderr.push(chunk));
    child.once('error', reject);
    child.once('close', (code) => {
      resolve(finished(code, Buffer.concat(stdout).toString(), Buffer.concat(stderr).toString()));
    });
  });

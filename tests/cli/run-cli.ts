/** Runs the real command line in a process of its own, as `npm run cli --` does. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const productFolder = fileURLToPath(new URL('../..', import.meta.url));

export interface Run {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
  /** What was printed, as JSON. */
  json(): ReturnType<typeof JSON.parse>;
}

export const runCli = (args: readonly string[], environment: NodeJS.ProcessEnv = {}): Promise<Run> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...args], {
      cwd: productFolder,
      env: { ...process.env, SRL_BENCH_DATA: '', SRL_BENCH_PIN: '', LC_ALL: 'C', ...environment },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (chunk: Buffer) => (stdout += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (stderr += chunk.toString()));
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, stdout, stderr, json: () => JSON.parse(stdout) }));
  });

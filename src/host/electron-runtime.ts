/** Finds Electron's runtime, which the `electron` package fetches the first time that it is asked for. */
import { execFile } from 'node:child_process';
import { access } from 'node:fs/promises';
import { promisify } from 'node:util';

/**
 * The package answers with the path of the program. It fetches synchronously and talks to the terminal meanwhile, so it is
 * asked in a process of its own.
 */
const question = "import('electron').then((found) => process.stdout.write('\\n' + String(found.default)))";

/** Fetching takes a minute on a slow line; a line that lets nothing through must not hold the bench up for longer. */
const patienceMs = 90_000;

/** The path of the program; `undefined` wherever it cannot be had, whatever the reason. */
export const findElectron = async (productFolder: string): Promise<string | undefined> => {
  try {
    const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', question], {
      cwd: productFolder,
      timeout: patienceMs,
      killSignal: 'SIGKILL',
      windowsHide: true,
    });
    const path = stdout.split('\n').at(-1) ?? '';
    await access(path);
    return path;
  } catch {
    return undefined;
  }
};

/** Finds Electron's runtime, which the `electron` package fetches the first time that it is asked for. */
import { execFile } from 'node:child_process';
import { access, mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
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
  const known = await placeOf(productFolder, process.env.ELECTRON_OVERRIDE_DIST_PATH);
  if (known !== undefined) return known.isThere ? known.path : undefined;
  if (await failedLately(productFolder)) return undefined;
  const fetched = await fetchElectron(productFolder);
  if (fetched === undefined) await rememberFailure(productFolder);
  return fetched;
};

/** Whether it could be started now; nothing is fetched for it. */
export const isElectronRuntimeThere = async (
  productFolder: string,
  environment: NodeJS.ProcessEnv,
): Promise<boolean> =>
  (await placeOf(productFolder, environment.ELECTRON_OVERRIDE_DIST_PATH))?.isThere === true;

interface Place {
  readonly path: string;
  readonly isThere: boolean;
}

/** Where the package would look without fetching anything; `undefined` where it would have to fetch. */
const placeOf = async (productFolder: string, override: string | undefined): Promise<Place | undefined> => {
  const folder = join(productFolder, 'node_modules', 'electron');
  const program = await readFile(join(folder, 'path.txt'), 'utf8').catch(() => '');
  if (override !== undefined && override !== '') {
    const path = join(override, program === '' ? 'electron' : program);
    return { path, isThere: await isFile(path) };
  }
  const path = join(folder, 'dist', program);
  return program !== '' && (await isFile(path)) ? { path, isThere: true } : undefined;
};

const isFile = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

const fetchElectron = async (productFolder: string): Promise<string | undefined> => {
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

/** Where it could not be fetched it is tried again after a day, so that an offline PC does not wait for it at every start. */
const failureCountsMs = 86_400_000;

const failureFile = (productFolder: string): string => join(productFolder, 'dist', 'electron-not-fetched');

const failedLately = async (productFolder: string): Promise<boolean> => {
  const at = Date.parse(await readFile(failureFile(productFolder), 'utf8').catch(() => ''));
  const ago = Date.now() - at;
  return ago >= 0 && ago < failureCountsMs;
};

const rememberFailure = async (productFolder: string): Promise<void> => {
  try {
    await mkdir(join(productFolder, 'dist'), { recursive: true });
    await writeFile(failureFile(productFolder), new Date().toISOString());
  } catch {
    // A folder that cannot be written is no reason not to open.
  }
};

/** Finds a browser of the Chromium family on this PC. */
import { constants } from 'node:fs';
import { access } from 'node:fs/promises';
import { delimiter, isAbsolute, join } from 'node:path';

/** What a system has to offer, so that the search can be tried for each of them. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly environment: NodeJS.ProcessEnv;
  isProgram(path: string): Promise<boolean>;
}

export const thisMachine: Machine = {
  platform: process.platform,
  environment: process.env,
  isProgram: (path) =>
    access(path, process.platform === 'win32' ? constants.F_OK : constants.X_OK).then(
      () => true,
      () => false,
    ),
};

/** The path of the program. `SRL_BENCH_BROWSER` and `CHROME_PATH` name one that goes before all others. */
export const findBrowser = async (machine: Machine = thisMachine): Promise<string | undefined> => {
  for (const path of candidates(machine)) if (await machine.isProgram(path)) return path;
  return undefined;
};

const commandNames = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
  'brave-browser',
  'brave',
];
const macApplications = ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser'];
const windowsPrograms = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['BraveSoftware', 'Brave-Browser', 'Application', 'brave.exe'],
];

const candidates = ({ platform, environment }: Machine): readonly string[] => {
  const named = [environment.SRL_BENCH_BROWSER, environment.CHROME_PATH].filter(isPresent);
  return [
    ...named.flatMap((name) => (isAbsolute(name) ? [name] : onPath([name], environment))),
    ...installed(platform, environment),
  ];
};

const installed = (platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): readonly string[] => {
  switch (platform) {
    case 'darwin':
      return ['/Applications', join(environment.HOME ?? '/', 'Applications')].flatMap((folder) =>
        macApplications.map((name) => join(folder, `${name}.app`, 'Contents', 'MacOS', name)),
      );
    case 'win32':
      return [environment.PROGRAMFILES, environment['PROGRAMFILES(X86)'], environment.LOCALAPPDATA]
        .filter(isPresent)
        .flatMap((folder) => windowsPrograms.map((parts) => join(folder, ...parts)));
    default:
      return onPath(commandNames, environment);
  }
};

const onPath = (names: readonly string[], environment: NodeJS.ProcessEnv): readonly string[] => {
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => isAbsolute(folder));
  return names.flatMap((name) => folders.map((folder) => join(folder, name)));
};

const isPresent = (text: string | undefined): text is string => text !== undefined && text !== '';

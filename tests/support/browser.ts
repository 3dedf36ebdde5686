/** The Chromium that tests drive: found as the program finds it, and missed loudly where the tests must not be skipped. */
import { findBrowser } from '../../src/host/browser.ts';
import { isRootOnLinux } from '../../src/host/display.ts';

const found = await findBrowser();

/** For `describe.runIf`: where there is none it says so in one line, and throws when `CI` is `true`. */
export const hasBrowser = (): boolean => {
  if (found !== undefined) return true;
  const sentence =
    'No browser of the Chromium family is installed: the tests that drive a real window do not run.';
  if (process.env.CI === 'true') throw new Error(sentence);
  console.warn(sentence);
  return false;
};

/** The path of the program; throws where there is none. */
export const testBrowser = (): string => {
  if (found === undefined) throw new Error('No browser of the Chromium family is installed.');
  return found;
};

export const testBrowserArguments: readonly string[] = isRootOnLinux()
  ? ['--no-sandbox', '--disable-dev-shm-usage']
  : [];

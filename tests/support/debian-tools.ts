/** The independent tools that some tests hold our output against, as Debian packages them. */
import { execFileSync } from 'node:child_process';

/** The Debian package of each tool. */
export const debianPackages: Readonly<Record<string, string>> = {
  pdftoppm: 'poppler-utils',
  pdftotext: 'poppler-utils',
  pdffonts: 'poppler-utils',
  zbarimg: 'zbar-tools',
  dmtxread: 'dmtx-utils',
  zint: 'zint',
  chromium: 'chromium',
  Xvfb: 'xvfb',
  xdotool: 'xdotool',
  setxkbmap: 'x11-xkb-utils',
  ippeveprinter: 'cups-ipp-utils',
  'dbus-daemon': 'dbus-daemon',
  'avahi-daemon': 'avahi-daemon',
  cupsd: 'cups',
  '/usr/lib/cups/backend/socket': 'cups',
  lpadmin: 'cups-client',
  lp: 'cups-client',
  '/usr/lib/cups/filter/rastertopdf': 'cups-filters-core-drivers',
  ippevepcl: 'cups-ipp-utils',
  openssl: 'openssl',
};

const told = new Set<string>();

/**
 * True where the tool is installed. Where it is not: throws when `CI` is `true`, else says so in one line and is false,
 * for `describe.runIf` and `test.runIf`.
 */
export const requireTool = (name: string): boolean => {
  if (isInstalled(name)) return true;
  const sentence = `${name} is not installed (apt install ${debianPackages[name] ?? name}): the tests that need it do not run.`;
  if (process.env.CI === 'true') throw new Error(sentence);
  if (!told.has(name)) console.warn(sentence);
  told.add(name);
  return false;
};

export const isInstalled = (name: string): boolean => {
  try {
    execFileSync('which', [name], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

/** What the tool wrote to its standard output; throws where it fails. */
export const runTool = (name: string, args: readonly string[]): string =>
  execFileSync(name, [...args], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });

/** The shape of the house: who may import whom, how long a file may be, and what lies at the top. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { productFolder } from '../../src/host/product-folder.ts';
import { contract } from '../../src/station/contract.ts';

interface Import {
  readonly from: string;
  readonly to: string;
  /** Nothing of it is left at run time. */
  readonly typeOnly: boolean;
}

const filesUnder = (folder: string): readonly string[] =>
  readdirSync(join(productFolder, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name).split(sep).join('/'))
    .filter((name) => /\.tsx?$/.test(name) && statSync(join(productFolder, name)).isFile());

const sources = ['src', 'electron', 'renderer'].flatMap(filesUnder);

/** Static and dynamic imports, and exports that pass something on. */
const importPattern =
  /^\s*(?:import|export)\s+(type\s)?(?:[^'";]*?\sfrom\s+)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/gm;

const isTypeOnly = (statement: string): boolean => {
  if (/^\s*(?:import|export)\s+type\s/.test(statement)) return true;
  const names = /^\s*(?:import|export)\s*\{([^}]*)\}/.exec(statement)?.[1]?.split(',') ?? [''];
  const given = names.map((name) => name.trim()).filter((name) => name !== '');
  return given.length > 0 && given.every((name) => name.startsWith('type '));
};

const importsOf = (file: string): readonly Import[] => {
  const text = readFileSync(join(productFolder, file), 'utf8');
  return [...text.matchAll(importPattern)].map((found) => {
    const name = found[2] ?? found[3] ?? '';
    const to = name.startsWith('.')
      ? relative(productFolder, resolve(join(productFolder, dirname(file)), name))
          .split(sep)
          .join('/')
      : name;
    return { from: file, to, typeOnly: isTypeOnly(found[0]) };
  });
};

const imports = sources.flatMap(importsOf);

/** The room that a file belongs to. */
const roomOf = (path: string): string => {
  const [first = '', second = ''] = path.split('/');
  return first === 'src' ? second : first;
};

/** What each room may import besides itself. The shells stand on the host, for it knows the folder, the page and its policy. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  domain: [],
  intake: ['domain'],
  typesetting: ['domain'],
  tags: ['domain', 'typesetting'],
  printing: ['domain'],
  ledger: ['domain'],
  planning: ['domain'],
  reports: ['domain', 'typesetting'],
  station: ['domain', 'intake', 'typesetting', 'tags', 'printing', 'ledger', 'planning', 'reports'],
  host: ['domain', 'station'],
  cli: ['domain', 'station', 'host'],
  electron: ['domain', 'station', 'host'],
  renderer: ['domain', 'station'],
};
/** The worker of the page that reads pictures with the reader of the station; the files around it know its types. */
const readingWorker = 'renderer/camera/read-worker.ts';
const isReaderInPage = ({ from, to, typeOnly }: Import): boolean =>
  to.startsWith('src/tags/read/') &&
  (from === readingWorker || (typeOnly && from === 'renderer/camera/reader-messages.ts'));

const isSource = (path: string): boolean => /\.tsx?$/.test(path) && roomOf(path) in allowed;

describe('imports', () => {
  test('are found at all', () => {
    expect(imports.length).toBeGreaterThan(200);
    expect(imports).toContainEqual({ from: 'src/domain/device.ts', to: 'zod', typeOnly: false });
    expect(imports).toContainEqual({
      from: 'src/domain/evolve.ts',
      to: expect.stringMatching(/^src\/domain\//),
      typeOnly: true,
    });
  });

  test('every room is named in the list of who may import whom', () => {
    expect([...new Set(sources.map(roomOf))].filter((room) => !(room in allowed))).toEqual([]);
  });

  test('lead from the shells over the station to the domain, never back and never sideways', () => {
    const wrong = imports
      .filter((each) => isSource(each.to) && !isReaderInPage(each))
      .filter(({ from, to }) => roomOf(from) !== roomOf(to) && !allowed[roomOf(from)]?.includes(roomOf(to)))
      .map(({ from, to }) => `${from} -> ${to}`);
    expect(wrong).toEqual([]);
  });

  test('of the page bring nothing of the station into the browser but types and the domain', () => {
    const wrong = imports
      .filter(({ from, to, typeOnly }) => roomOf(from) === 'renderer' && to.startsWith('src/') && !typeOnly)
      .filter((each) => roomOf(each.to) !== 'domain' && !isReaderInPage(each))
      .map(({ from, to }) => `${from} -> ${to}`);
    expect(wrong).toEqual([]);
  });

  test('bring the reader of pictures into a worker of the page, and no part of it into the page itself', () => {
    const importers = imports.filter(({ from, to }) => to === readingWorker && roomOf(from) === 'renderer');
    expect(importers).toEqual([]);
    const read = imports.filter(({ from, typeOnly }) => from === readingWorker && !typeOnly);
    expect(read.map(({ to }) => to)).toContain('src/tags/read/general-decoders.ts');
    const decoders = imports.filter(
      ({ from, to }) => roomOf(from) === 'renderer' && /zxing|zbar|jsqr/.test(to),
    );
    expect([...new Set(decoders.map(({ from }) => from))]).toEqual([readingWorker]);
  });

  test('of the domain reach no clock, disk or network of the system', () => {
    const wrong = imports
      .filter(({ from, to }) => roomOf(from) === 'domain' && to.startsWith('node:'))
      .map(({ from, to }) => `${from} -> ${to}`);
    expect(wrong).toEqual([]);
  });
});

test('the contract holds every file of the operations, under the name that the file has', () => {
  const files = readdirSync(join(productFolder, 'src', 'station', 'operations'));
  const parts = ['src/station/contract.ts', 'src/station/held-operations.ts'];
  const imported = parts.flatMap((part) => importsOf(part).map(({ to }) => to));
  const missing = files.filter((file) => !imported.includes(`src/station/operations/${file}`));
  expect(missing).toEqual([]);
  expect(contract.size).toBe(files.length);
});

test('no file is longer than 400 lines', () => {
  const all = [...sources, ...filesUnder('tests')];
  const long = all.filter((file) => readFileSync(join(productFolder, file), 'utf8').split('\n').length > 401);
  expect(long).toEqual([]);
});

test('nothing lies at the top but what the house is made of', () => {
  const expected = [
    'DEVELOPERS.md',
    'LICENSE',
    'README.md',
    'assets',
    'demo-data',
    'electron',
    'package-lock.json',
    'package.json',
    'renderer',
    'src',
    'tests',
    'tsconfig.json',
  ];
  const generated = ['node_modules', 'dist', 'coverage'];
  const found = readdirSync(productFolder).filter(
    (name) => !name.startsWith('.') && !generated.includes(name),
  );
  expect(found.sort()).toEqual(expected.sort());
});

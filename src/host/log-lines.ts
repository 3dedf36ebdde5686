/**
 * What may stand in the log: words that the program has for itself, and places in its own files.
 *
 * An error can carry whatever a person typed or scanned, in its message, its name, its code and its stack. So nothing of it is
 * copied: each part is looked up in a list of what is known, and what is in no list is left out.
 */
import { existsSync } from 'node:fs';
import { constants } from 'node:os';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contract } from '../station/contract.ts';
import { productFolder } from './product-folder.ts';

/** Why a process of a window or of the runtime ended, in Electron's words. */
export const endings = [
  'clean-exit',
  'abnormal-exit',
  'killed',
  'crashed',
  'oom',
  'launch-failed',
  'integrity-failure',
  'memory-eviction',
] as const;

/** What can happen to the shell. */
export type LoggedEvent =
  | { readonly event: 'window-gone' | 'helper-gone'; readonly why: string; readonly exitCode: number }
  | {
      readonly event:
        | 'window-hangs'
        | 'window-loaded-anew'
        | 'window-given-up'
        | 'suspended'
        | 'resumed'
        | 'screen-locked'
        | 'on-battery'
        | 'on-mains'
        | 'system-ends';
    };

export const lineOfEvent = (event: LoggedEvent): string => {
  if (!('why' in event)) return event.event;
  const why = endings.find((known) => known === event.why) ?? 'unknown';
  return `${event.event} ${why} ${Number.isSafeInteger(event.exitCode) ? event.exitCode : 0}`;
};

/** Works of the program itself that are no operations of the contract. */
const works = ['keep', 'shell', 'schedule.plan', 'report.make'] as const;

const classes = [
  'AggregateError',
  'DOMException',
  'EvalError',
  'RangeError',
  'ReferenceError',
  'SyntaxError',
  'TypeError',
  'URIError',
  'ZodError',
] as const;

/** Result codes of SQLite (https://www.sqlite.org/rescode.html) that the library hands on. */
const sqliteCodes = [
  'SQLITE_ERROR',
  'SQLITE_INTERNAL',
  'SQLITE_PERM',
  'SQLITE_ABORT',
  'SQLITE_BUSY',
  'SQLITE_LOCKED',
  'SQLITE_NOMEM',
  'SQLITE_READONLY',
  'SQLITE_INTERRUPT',
  'SQLITE_IOERR',
  'SQLITE_CORRUPT',
  'SQLITE_NOTFOUND',
  'SQLITE_FULL',
  'SQLITE_CANTOPEN',
  'SQLITE_PROTOCOL',
  'SQLITE_SCHEMA',
  'SQLITE_TOOBIG',
  'SQLITE_CONSTRAINT',
  'SQLITE_MISMATCH',
  'SQLITE_MISUSE',
  'SQLITE_RANGE',
  'SQLITE_NOTADB',
] as const;
const codes: ReadonlySet<unknown> = new Set([...Object.keys(constants.errno), ...sqliteCodes]);

/** How deep causes are followed, and how many places of each are kept. */
const mostCauses = 4;
const mostPlaces = 12;

export const linesOfFault = (error: unknown, operation: string): string => {
  const isKnown = contract.has(operation) || works.some((work) => work === operation);
  const lines = [isKnown ? operation : 'unknown-operation'];
  let current = error;
  for (let depth = 0; depth < mostCauses && current !== undefined; depth += 1) {
    lines.push(`  ${classOf(current)}${codeOf(current)}`);
    for (const place of placesOf(current)) lines.push(`    ${place}`);
    current = ownText(current, 'cause');
  }
  return lines.join('\n');
};

const classOf = (error: unknown): string => {
  if (!(error instanceof Error)) return 'no-error';
  const name = ownText(error, 'name');
  return classes.find((known) => known === name) ?? 'Error';
};

const codeOf = (error: unknown): string => {
  const code = ownText(error, 'code');
  return codes.has(code) ? ` ${code}` : '';
};

/** A property, however hostile: reading one may throw. */
const ownText = (error: unknown, name: 'name' | 'code' | 'stack' | 'cause'): unknown => {
  if (typeof error !== 'object' || error === null) return undefined;
  try {
    return Reflect.get(error, name);
  } catch {
    return undefined;
  }
};

/** Frames of our own files that exist, relative to the product. A message that looks like a frame says no more than they do. */
const placesOf = (error: unknown): readonly string[] => {
  const stack = ownText(error, 'stack');
  if (typeof stack !== 'string') return [];
  const places: string[] = [];
  for (const line of stack.slice(0, 20_000).split('\n')) {
    const [, file, row, column] =
      /^ {4}at .*?\(?((?:file:\/\/|\/|[A-Za-z]:\\)[^()]*):(\d{1,6}):(\d{1,5})\)?$/.exec(line) ?? [];
    const ours = file === undefined ? undefined : ourFile(file);
    if (ours !== undefined && places.length < mostPlaces) places.push(`${ours}:${row}:${column}`);
  }
  return places;
};

const ourFile = (file: string): string | undefined => {
  try {
    const path = file.startsWith('file://') ? fileURLToPath(file) : file;
    const inside = relative(productFolder, path).split(sep).join('/');
    const isOurs = /^(?:src|electron|dist\/electron)\/[\w./-]+\.(?:js|ts|cjs)$/.test(inside);
    return isOurs && !inside.includes('..') && existsSync(join(productFolder, inside)) ? inside : undefined;
  } catch {
    return undefined;
  }
};

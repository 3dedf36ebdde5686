/** What the log keeps of a fault: enough to find it in the code, and nothing that a person typed, scanned or is called. */
import { readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { eventLog, faultLog, logWritten } from '../../src/host/fault-log.ts';
import { lineOfEvent, linesOfFault } from '../../src/host/log-lines.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import { temporaryFolder } from './small-page.ts';

const secrets = [
  'Teo Arandal',
  'HP10024',
  '271828',
  'Q25A30037',
  '/home/teo',
  'C:\\Users\\teo',
  'Seen under the lamp',
];

const saysNoSecret = (text: string): void => {
  for (const secret of secrets) expect(text).not.toContain(secret);
};

const knownFile = join(productFolder, 'src', 'station', 'station.ts');

describe('the log of a fault', () => {
  test('says the operation, the class, the code of the system and where in our own files it was', () => {
    const error = Object.assign(new TypeError('no'), { code: 'ENOSPC' });
    error.stack = [
      'TypeError: no',
      `    at run (${pathToFileURL(knownFile).href}:12:34)`,
      `    at async Object.call (${knownFile}:56:7)`,
      '    at node:internal/process/task_queues:103:5',
      `    at parse (${join(productFolder, 'node_modules', 'zod', 'index.js')}:1:2)`,
    ].join('\n');
    expect(linesOfFault(error, 'inspection.sign').split('\n')).toEqual([
      'inspection.sign',
      '  TypeError ENOSPC',
      '    src/station/station.ts:12:34',
      '    src/station/station.ts:56:7',
    ]);
  });

  test('follows what caused it, as far as four errors', () => {
    let error = new Error('innermost');
    for (let depth = 0; depth < 9; depth += 1) error = new RangeError('outer', { cause: error });
    const classes = linesOfFault(error, 'keep')
      .split('\n')
      .filter((line) => /^ {2}\w/.test(line));
    expect(classes).toEqual(Array(4).fill('  RangeError'));
  });

  test.each([
    ['its message', () => new Error(secrets.join(' '))],
    ['its name', () => Object.assign(new Error('x'), { name: secrets[0] })],
    ['its code', () => Object.assign(new Error('x'), { code: secrets[1] })],
    ['a name like that of a class', () => Object.assign(new Error('x'), { name: 'TeoArandal' })],
    [
      'other fields of it',
      () => Object.assign(new Error('x'), { path: secrets[4], input: { pin: secrets[2] } }),
    ],
    ['its cause', () => new Error('x', { cause: new Error(secrets.join('\n')) })],
    ['a text that was thrown', () => secrets.join(' ')],
    ['an object that was thrown', () => ({ message: secrets[0], stack: secrets.join('\n    at ') })],
    [
      'frames that its message makes up',
      () =>
        new Error(
          `x\n    at ${secrets[0]} (/home/teo/Q25A30037.ts:1:1)\n    at a (${productFolder}/src/HP10024.ts:1:1)`,
        ),
    ],
    [
      'the name of a function of ours',
      () =>
        Object.assign(new Error('x'), { stack: `Error: x\n    at Teo Arandal HP10024 (${knownFile}:1:1)` }),
    ],
    [
      'a number that no line has',
      () => Object.assign(new Error('x'), { stack: `Error: x\n    at a (${knownFile}:2718281:2718281)` }),
    ],
    [
      'a path that leads out of the product',
      () =>
        Object.assign(new Error('x'), {
          stack: `Error: x\n    at a (${productFolder}/src/../../home/teo/a.ts:1:1)`,
        }),
    ],
  ])('keeps nothing of %s', (_where, thrown) => {
    saysNoSecret(linesOfFault(thrown(), 'inspection.sign'));
    expect(linesOfFault(thrown(), 'inspection.sign')).not.toMatch(/TeoArandal|home/);
  });

  test('keeps nothing of an operation that it does not know', () => {
    for (const secret of secrets) saysNoSecret(linesOfFault(new Error('x'), secret));
    expect(linesOfFault('x', '__proto__')).toBe('unknown-operation\n  no-error');
  });

  test('survives an error whose fields throw', () => {
    const hostile = new Proxy(new Error('x'), {
      get: () => {
        throw new Error(secrets[0]);
      },
    });
    saysNoSecret(linesOfFault(hostile, 'keep'));
  });

  test('is made of nothing but what the program has for itself, whatever the error is', () => {
    const line =
      /^(?:unknown-operation|keep| {2}(?:Error|no-error|[A-Z]\w+Error|DOMException)(?: [A-Z0-9_]+)?| {4}(?:src|electron|dist)\/[\w./-]+:\d{1,6}:\d{1,5})$/;
    const pieces = [
      ...secrets,
      'Error: ',
      '\n',
      '\n    at ',
      '(',
      ')',
      'file://',
      productFolder,
      knownFile,
      '/',
      ':1',
      ':12:34',
    ];
    fc.assert(
      fc.property(
        fc.record({
          message: fc.string(),
          name: fc.string(),
          code: fc.string(),
          stack: fc.array(fc.constantFrom(...pieces)).map((chosen) => chosen.join('')),
        }),
        fc.string(),
        (fields, operation) => {
          const lines = linesOfFault(Object.assign(Object.create(Error.prototype), fields), operation).split(
            '\n',
          );
          return lines.every((each) => line.test(each) || each === operation);
        },
      ),
      { numRuns: 100 },
    );
  });

  test('says why a process ended, in words that it knows', () => {
    expect(lineOfEvent({ event: 'window-gone', why: 'oom', exitCode: 9 })).toBe('window-gone oom 9');
    expect(lineOfEvent({ event: 'window-gone', why: secrets[0] ?? '', exitCode: Number.NaN })).toBe(
      'window-gone unknown 0',
    );
  });
});

describe('the files of the log', () => {
  test('are three at most and none grows past half a megabyte, and the latest is in the first', async () => {
    const folder = await temporaryFolder();
    const log = eventLog(folder);
    const file = join(folder, 'faults.log');
    for (const round of ['suspended', 'resumed', 'screen-locked', 'on-battery'] as const) {
      await writeFile(file, `${round}\n`.padStart(499_990, '.'));
      log({ event: 'on-mains' });
      log({ event: round });
      await logWritten(folder);
    }
    expect((await readdir(folder)).sort()).toEqual(['faults.log', 'faults.log.1', 'faults.log.2']);
    for (const name of await readdir(folder))
      expect((await stat(join(folder, name))).size).toBeLessThanOrEqual(500_000);
    const lines = (await readFile(file, 'utf8')).split('\n');
    expect(lines.map((line) => line.split(' ')[1])).toEqual(['on-mains', 'on-battery', undefined]);
    expect(await readFile(`${file}.1`, 'utf8')).toMatch(/\.on-battery\n$/);
    expect(await readFile(`${file}.2`, 'utf8')).toMatch(/\.screen-locked\n$/);
  });

  test('that cannot be written are left alone', async () => {
    const folder = join(await temporaryFolder(), 'not there');
    faultLog(folder)(new Error('x'), 'keep');
    await expect(logWritten(folder)).resolves.toBeUndefined();
  });
});

/** The findings of a look over the station: their order, what a report leaves out, and what no test can disturb for real. */
import { describe, expect, test } from 'vitest';
import english from '../../assets/messages/en/health.json' with { type: 'json' };
import { byGravity, finding, withoutPrivate } from '../../src/domain/health/finding.ts';
import { judgeCamera, judgeFaults } from '../../src/domain/health/judge-devices.ts';
import {
  isAtLeast,
  judgeBrowser,
  judgeMemory,
  judgePage,
  judgeRuntime,
} from '../../src/domain/health/judge-machine.ts';
import { judgeDataFolder } from '../../src/domain/health/judge-storage.ts';
import { healthReport } from '../../src/domain/health/report.ts';

const machine = {
  shell: 'browser' as const,
  nodeVersion: '20.19.1',
  nodeWanted: '20.19',
  hasElectronRuntime: false,
  browser: '/usr/bin/chromium',
  isPageBuilt: true,
};

describe('the version of Node', () => {
  test.each([
    ['20.19.0', '20.19', true],
    ['20.18.9', '20.19', false],
    ['20.9.0', '20.19', false],
    ['22.0.0', '20.19', true],
    ['18.99.0', '20.19', false],
    ['v20.19.4', '>=20.19', true],
  ])('%s against %s: enough is %s', (version, wanted, isEnough) => {
    expect(isAtLeast(version, wanted)).toBe(isEnough);
  });
  test('that is too old is wrong, and says which one is wanted', () => {
    expect(judgeRuntime({ ...machine, nodeVersion: '18.20.1' })).toMatchObject({
      state: 'wrong',
      says: 'node-old',
    });
  });
});

test('a PC with neither a browser nor Electron gives an address only; with Electron alone it has no way round', () => {
  const without = { ...machine, browser: undefined };
  expect(judgeBrowser(without)).toMatchObject({ state: 'attention', says: 'no-window' });
  expect(judgeBrowser({ ...without, hasElectronRuntime: true })).toMatchObject({
    state: 'attention',
    says: 'browser-none',
  });
});

test('a page that is not built is wrong for a window, and to be seen to from a terminal', () => {
  expect(judgePage({ ...machine, isPageBuilt: false }).state).toBe('wrong');
  expect(judgePage({ ...machine, shell: 'terminal', isPageBuilt: false }).state).toBe('attention');
});

test('memory that runs short, a log of SQLite that grows, and a fresh fault are each to be seen to', () => {
  expect(judgeMemory({ usedBytes: 2e8, freeBytes: 1e8 }).says).toBe('memory-short');
  expect(judgeMemory({ usedBytes: 9e8, freeBytes: 9e9 }).says).toBe('memory-large');
  const folder = { folder: '/data', state: 'writable' as const, areEvidenceFilesReachable: true };
  expect(judgeDataFolder({ ...folder, logBytes: 70_000_000 }).map(({ says }) => says)).toEqual(['log-large']);
  const now = '2026-03-10T08:00:00.000Z';
  const file = { writtenAt: '2026-03-08T08:00:00.000Z', bytes: 1200 };
  expect(judgeFaults({ now, file })).toMatchObject({ state: 'attention', values: { days: 2, kilobytes: 2 } });
  expect(judgeFaults({ now: '2026-05-10T08:00:00.000Z', file }).state).toBe('good');
});

test('a camera that may not be used does not hide decoders that fail', () => {
  const found = judgeCamera({ permission: 'denied', cameras: 0, doDecodersLoad: false });
  expect(found.map(({ says }) => says)).toEqual(['decoders-fail', 'camera-denied']);
});

test('the gravest comes first, and of one state the order of the subjects stays', () => {
  const findings = [
    finding('faults', 'good', 'faults-none'),
    finding('printers', 'attention', 'printers-none'),
    finding('clock', 'wrong', 'clock-year', { year: 1999 }),
    finding('page', 'attention', 'page-not-built'),
  ];
  expect(byGravity(findings).map(({ says }) => says)).toEqual([
    'clock-year',
    'page-not-built',
    'printers-none',
    'faults-none',
  ]);
});

test('a report leaves out whatever names a place, a printer or a person, and keeps the code', () => {
  const problem = finding('printers', 'wrong', 'printer-problem', {
    printer: { private: 'Ilse’s printer' },
    problem: { private: 'Ilse’s printer at 10.0.0.7 is out of paper.' },
    code: 'printer-media-empty',
  });
  const word = (found: typeof problem) => ({ ...found, found: Object.values(found.values).join(' ') });
  const report = JSON.stringify(healthReport([problem], '2026-03-10T08:00:00.000Z', word));
  expect(report).not.toMatch(/Ilse|10\.0\.0\.7/);
  expect(report).toContain('printer-media-empty');
  expect(withoutPrivate(problem).values).toEqual({ printer: '…', problem: '…', code: 'printer-media-empty' });
});

test('everything that says what to do is found by something', () => {
  expect(Object.keys(english.todo).filter((key) => !(key in english.found))).toEqual([]);
});

/** The schedule from the command line. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DemoBench, expectRefused, inspector } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open();
}, 120_000);
afterAll(() => bench.close());

const administrator = 'HP10017';
const signedIn = ['--badge', inspector];

test('the plan, what is due, and the notices are said to a person in both languages, and as JSON', async () => {
  const plan = await bench.run(['schedule', 'plan', ...signedIn]);
  expect([plan.code, plan.json().keepsEveryDueDate]).toEqual([0, true]);
  const inWords = (language: string, ...what: readonly string[]) =>
    runCli(['schedule', ...what, '--data', bench.station, '--badge', inspector, '--language', language]);
  expect((await inWords('en', 'plan')).stdout).toContain('fits: no device becomes late');
  expect((await inWords('es', 'plan')).stdout).toContain('ningún dispositivo se retrasa');
  expect((await inWords('en', 'due', '--by', 'month')).stdout).toMatch(/^Overdue: \d+/);
  expect((await inWords('en', 'notices')).stdout).toContain('the training ran out on');
  expect((await inWords('en', 'capacity')).stdout).toContain('Saturday   0 h');
});

test('what the bench can take in hand is set from a file, and a file that is wrong is refused', async () => {
  const { capacity } = (await bench.run(['schedule', 'capacity', ...signedIn])).json();
  const hours = { ...capacity.hours, saturday: 2.5 };
  const file = await bench.write('capacity.json', { ...capacity, hours });
  expectRefused(await bench.run(['schedule', 'capacity', '--set', file, ...signedIn]), 'role-needed');
  const set = await bench.run(['schedule', 'capacity', '--set', file, '--badge', administrator]);
  expect(set.json()).toMatchObject({ isSet: true, capacity: { hours: { saturday: 2.5 } } });
  const wrong = await bench.write('wrong.json', { ...capacity, minutesPerInspection: 'half an hour' });
  expectRefused(
    await bench.run(['schedule', 'capacity', '--set', wrong, '--badge', administrator]),
    'input-invalid',
  );
  const text = await bench.write('text.json', 'four hours');
  expectRefused(
    await bench.run(['schedule', 'capacity', '--set', text, '--badge', administrator]),
    'file-not-json',
  );
});

test('calendar and pick list come out as files of the days that were asked for', async () => {
  const out = join(bench.folder, 'plan.ics');
  const made = await bench.run(['schedule', 'calendar', '--until', '2100-01-01', '--out', out, ...signedIn]);
  expect(made.code).toBe(0);
  const calendar = new ICAL.Component(ICAL.parse(await readFile(out, 'utf8')));
  const { rows } = made.json();
  expect(calendar.getAllSubcomponents('vevent')).toHaveLength(rows);
  const list = join(bench.folder, 'pick.csv');
  await bench.run(['schedule', 'pick-list', '--format', 'csv', '--in', 'es', '--out', list, ...signedIn]);
  expect(await readFile(list, 'utf8')).toContain('Dónde');
  const backwards = ['--from', '2030-01-02', '--until', '2030-01-01', '--out', out];
  expectRefused(
    await bench.run(['schedule', 'calendar', ...backwards, ...signedIn]),
    'schedule-period-backwards',
  );
  expect((await bench.run(['schedule', 'calendar', '--from', 'soon', ...signedIn])).code).toBe(2);
});

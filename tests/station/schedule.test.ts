/** The schedule of a real station: its plan, its settings, its files, and who may do what. */
import { readFile } from 'node:fs/promises';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { addDays } from '../../src/domain/calendar.ts';
import type { InputOf, OutputOf } from '../../src/station/contract.ts';
import { demo, demoStation, type TestStation, testStation } from '../support/station-fixture.ts';
import { sampleDevice } from './sample-device.ts';

type Capacity = InputOf<'bench.set-capacity'>['capacity'];

const capacity = (more: Partial<Capacity> = {}): Capacity => ({
  hours: { monday: 2, tuesday: 0, wednesday: 0, thursday: 1.5, friday: 0, saturday: 0, sunday: 0 },
  minutesPerInspection: 30,
  closures: [],
  mostDaysEarly: 60,
  ...more,
});

const asAdministrator = async (): Promise<TestStation> => {
  const station = await demoStation();
  await station.expectOutput('session.sign-in', { badge: demo.administrator });
  return station;
};

const madeFile = async (
  { expectOutput }: TestStation,
  request: InputOf<'report.make'>,
): Promise<Extract<OutputOf<'report.status'>, { state: 'made' }>> => {
  const { job } = await expectOutput('report.make', request);
  for (;;) {
    const status = await expectOutput('report.status', { job });
    if (status.state === 'refused') throw new Error(status.sentence);
    if (status.state === 'made') return status;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

test('the plan has a day for every device in service or never inspected, and no day after it is due', async () => {
  const { expectOutput } = await demoStation();
  const plan = await expectOutput('schedule.plan', {});
  const status = await expectOutput('station.status', {});
  if (status.state !== 'ready') throw new Error('The station is empty.');
  const { devices, total } = await expectOutput('schedule.devices', {
    of: { kind: 'days', from: plan.today, until: plan.until },
  });
  expect(total).toBe(status.counts.inService + status.counts.neverInspected);
  expect(plan.counts.overdue).toBe(status.counts.overdue);
  expect(plan.counts.neverInspected).toBe(status.counts.neverInspected);
  expect(plan.keepsEveryDueDate).toBe(true);
  expect(plan.weeks.reduce((sum, { planned }) => sum + planned, 0)).toBe(total);
  for (const { kind, on, device } of devices)
    if (kind === 'due') expect(on! <= device.dueOn!, device.benchId).toBe(true);
  expect(devices.filter(({ kind }) => kind === 'overdue').length).toBeGreaterThan(0);
});

test('what is due by week adds up to what is in service, with what is overdue first', async () => {
  const { expectOutput } = await demoStation();
  const status = await expectOutput('station.status', {});
  if (status.state !== 'ready') throw new Error('The station is empty.');
  for (const by of ['week', 'month'] as const) {
    const due = await expectOutput('schedule.due', { by });
    expect(due.overdue).toBe(status.counts.overdue);
    expect(due.overdue + due.periods.reduce((sum, each) => sum + each.due, 0)).toBe(status.counts.inService);
  }
});

test('an administrator says what the bench can take in hand, the plan follows, and it stays after a restart', async () => {
  const station = await asAdministrator();
  expect(await station.expectOutput('bench.capacity', {})).toMatchObject({ isSet: false });
  await station.expectOutput('bench.set-capacity', { capacity: capacity() });
  const plan = await station.expectOutput('schedule.plan', {});
  expect(plan.isCapacitySet).toBe(true);
  const { devices } = await station.expectOutput('schedule.devices', {
    of: { kind: 'days', from: plan.today, until: plan.until },
  });
  const weekdays = new Set(devices.map(({ on }) => new Date(`${on}T00:00:00Z`).getUTCDay()));
  expect([...weekdays].sort()).toEqual([1, 4]);
  const again = await station.reopen();
  expect(await again.expectOutput('bench.capacity', {}).catch((error: Error) => error.message)).toContain(
    'sign-in-needed',
  );
  await again.expectOutput('session.sign-in', { badge: demo.attendant });
  expect(await again.expectOutput('bench.capacity', {})).toEqual({ capacity: capacity(), isSet: true });
  expect(await again.expectOutput('schedule.plan', {})).toEqual(plan);
  await again.expectOutput('session.sign-in', { badge: demo.administrator });
  expect((await again.expectOutput('ledger.verify', {})).sound).toBe(true);
});

test('settings that leave no room, close backwards, or are no hours are refused with the field, and change nothing', async () => {
  const { expectError, expectOutput } = await asAdministrator();
  const none = { monday: 0, tuesday: 0, wednesday: 0, thursday: 0, friday: 0.25, saturday: 0, sunday: 0 };
  expect(await expectError('bench.set-capacity', { capacity: capacity({ hours: none }) })).toMatchObject({
    code: 'bench-without-room',
    field: 'capacity.hours',
  });
  const closures = [{ from: '2026-12-27' as never, until: '2026-12-24' as never }];
  expect(await expectError('bench.set-capacity', { capacity: capacity({ closures }) })).toMatchObject({
    code: 'bench-closure-backwards',
    field: 'capacity.closures.0.until',
  });
  const hours = { ...none, monday: -1 };
  expect(await expectError('bench.set-capacity', { capacity: capacity({ hours }) })).toMatchObject({
    code: 'input-invalid',
  });
  expect(await expectOutput('bench.capacity', {})).toMatchObject({ isSet: false });
});

test('only an administrator sets what the bench can take in hand', async () => {
  const { expectOutput, expectError } = await demoStation();
  for (const badge of [demo.inspector, demo.attendant]) {
    await expectOutput('session.sign-in', { badge });
    expect((await expectError('bench.set-capacity', { capacity: capacity() })).code).toBe('role-needed');
  }
});

test('a bench with too little room says how many hours are missing and by when, and lists what has none', async () => {
  const { expectOutput } = await asAdministrator();
  const hours = { monday: 0.5, tuesday: 0, wednesday: 0, thursday: 0, friday: 0, saturday: 0, sunday: 0 };
  await expectOutput('bench.set-capacity', { capacity: capacity({ hours }) });
  const plan = await expectOutput('schedule.plan', {});
  const { devices, total } = await expectOutput('schedule.devices', { of: { kind: 'without room' } });
  expect(plan.counts.unplanned).toBe(total);
  const late = devices.filter(({ kind }) => kind === 'due').length;
  expect(plan.missingHours).toBe(late / 2);
  expect(plan.keepsEveryDueDate).toBe(late === 0);
  for (const { inspections, room, missingHours } of plan.shortages)
    expect(missingHours).toBe((inspections - room) / 2);
});

test('the plan is made anew once something changed or a day has passed', async () => {
  const { expectOutput, clock } = await demoStation();
  const before = await expectOutput('schedule.plan', {});
  await expectOutput('device.register', sampleDevice('Q26C49001'));
  const after = await expectOutput('schedule.plan', {});
  expect(after.counts.neverInspected).toBe(before.counts.neverInspected + 1);
  clock.advance({ days: 1 });
  expect((await expectOutput('schedule.plan', {})).today).toBe('2026-03-11');
});

test('a period that ends before it begins is refused', async () => {
  const { expectError } = await demoStation();
  const days = { from: '2026-04-02' as never, until: '2026-04-01' as never };
  expect(await expectError('schedule.devices', { of: { kind: 'days', ...days } })).toMatchObject({
    code: 'schedule-period-backwards',
    field: 'of.until',
  });
});

test('whose training has run out or soon will stands among the notices', async () => {
  const { expectOutput } = await demoStation();
  const { training, devices } = await expectOutput('schedule.notices', {});
  expect(training.map(({ notice }) => notice)).toContain('expired');
  expect(devices).toEqual([]);
});

test('an empty station has no schedule', async () => {
  const { expectError } = await testStation();
  expect((await expectError('schedule.plan', {})).code).toBe('sign-in-needed');
});

test('the calendar file has one event for each planned device, under the same name whenever it is made', async () => {
  const station = await demoStation();
  const plan = await station.expectOutput('schedule.plan', {});
  const { devices } = await station.expectOutput('schedule.devices', {
    of: { kind: 'days', from: plan.today, until: plan.until },
  });
  const events = async () => {
    const { path } = await madeFile(station, { of: { kind: 'bench-plan' }, format: 'ics', language: 'both' });
    const calendar = new ICAL.Component(ICAL.parse(await readFile(path, 'utf8')));
    return calendar.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));
  };
  const first = await events();
  expect(first.map(({ startDate }) => startDate.toString())).toEqual(devices.map(({ on }) => on));
  for (const [index, { device }] of devices.entries()) {
    expect(first[index]?.summary).toContain(`${device.manufacturer} ${device.model}`);
    expect(first[index]?.description).toContain(device.serial);
  }
  station.clock.advance({ days: 3 });
  const names = new Set((await events()).map(({ uid }) => uid));
  expect(names.size).toBe(devices.length);
  expect(first.filter(({ uid }) => !names.has(uid))).toEqual([]);
});

test('the pick list of a week names each device of that week with a box to tick', async () => {
  const station = await demoStation();
  const { weeks } = await station.expectOutput('schedule.plan', {});
  const [week] = weeks;
  const { from, until } = week!;
  const { path, rows } = await madeFile(station, {
    of: { kind: 'bench-plan', from, until },
    format: 'csv',
    language: 'en',
  });
  expect(rows).toBe(week!.planned);
  const text = await readFile(path, 'utf8');
  expect(text).toContain('Here,Where,At the bench,Bench ID,Serial number,Manufacturer,Model');
  expect(text.match(/\[ {4}\]/g)).toHaveLength(week!.planned);
});

test('a calendar file of something that has no days to come is refused', async () => {
  const station = await demoStation();
  await expect(
    madeFile(station, { of: { kind: 'register' }, format: 'ics', language: 'en' }),
  ).rejects.toThrow(/ics/);
});

test('a device that is out past its due date is to be called in, and one that comes back in time is not planned before', async () => {
  const station = await demoStation();
  const { expectOutput } = station;
  await expectOutput('session.sign-in', { badge: demo.administrator });
  const { people } = await expectOutput('person.list', {});
  const userId = people.find(({ badge }) => badge === demo.user)!.personId;
  const { devices } = await expectOutput('device.list', { standing: ['in service'], limit: 100 });
  const [soon, later] = devices
    .filter(({ dueState }) => dueState === 'current')
    .toSorted((one, other) => one.dueOn!.localeCompare(other.dueOn!));
  const preUse = { language: 'en' as const };
  const out = async (benchId: (typeof devices)[number]['benchId'], expectedOn: string) => {
    const done = await expectOutput('custody.check-out', {
      userId,
      benchIds: [benchId],
      expectedOn: expectedOn as never,
      preUse,
    });
    expect(done.refused).toEqual([]);
  };
  // It comes back on the day on which it is due: too late for the bench, which has it on the next one.
  await out(soon!.benchId, soon!.dueOn!);
  await out(later!.benchId, addDays(later!.dueOn!, -10));
  const plan = await expectOutput('schedule.plan', {});
  const planned = await expectOutput('schedule.devices', {
    of: { kind: 'days', from: plan.today, until: plan.until },
  });
  const of = (benchId: string) => planned.devices.find(({ device }) => device.benchId === benchId)!;
  expect(of(soon!.benchId)).toMatchObject({ callIn: true, holder: expect.stringMatching(/\S/) });
  expect(of(later!.benchId).callIn).toBe(false);
  expect(of(later!.benchId).on! > addDays(later!.dueOn!, -10)).toBe(true);
  const notices = await expectOutput('schedule.notices', {});
  expect(notices.devices.map(({ why, planned: { device } }) => [why, device.benchId])).toEqual([
    ['call in', soon!.benchId],
  ]);
  const { path } = await madeFile(station, { of: { kind: 'bench-plan' }, format: 'csv', language: 'en' });
  expect(await readFile(path, 'utf8')).toMatch(/Call in: /);
});

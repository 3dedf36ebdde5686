/** What must hold after any sequence of commands, given in any order by anybody: random sequences with shrinking. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/domain/answer.ts';
import { type BenchId, calendarDate } from '../../src/domain/brand.ts';
import { addMonths } from '../../src/domain/calendar.ts';
import type { Call, InputOf } from '../../src/station/contract.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import { demo, demoStation, type TestClock, type TestStation } from '../support/station-fixture.ts';
import { sampleDevice } from './sample-device.ts';

/** What the administrator records about the inspector, at another window. */
const peopleActs = ['leave', 'return', 'end designation', 'designate', 'designate for others'] as const;
type PeopleAct = (typeof peopleActs)[number];

/** Designated for two models, and none of them is that of the device. */
const narrowInspector = 'HP10079';

/** What another competent person corrects, at a window of their own. */
const correctable = ['serial', 'modelSheet', 'regularUser', 'bad answer', 'good answer'] as const;
type Corrected = (typeof correctable)[number];

type Command =
  | { readonly kind: 'sign in'; readonly badge: string }
  | { readonly kind: 'start' }
  | { readonly kind: 'answer all'; readonly bad: number | undefined; readonly skip: number | undefined }
  | { readonly kind: 'sign'; readonly pin: string }
  | { readonly kind: 'break off' }
  | { readonly kind: 'remove' }
  | { readonly kind: 'people'; readonly act: PeopleAct }
  | { readonly kind: 'correct'; readonly what: Corrected; readonly check: number }
  | { readonly kind: 'days pass'; readonly days: number };

/** A check to be answered badly or left out; none more often than not, so that walks also end in a pass. */
const someCheck = fc.oneof(
  { weight: 4, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: procedure.checks.length - 1 }) },
);
const commandArbitrary: fc.Arbitrary<Command> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc
      .constantFrom(
        ...[
          demo.inspector,
          demo.regularUser,
          demo.expiredInspector,
          demo.attendant,
          demo.user,
          narrowInspector,
        ],
      )
      .map((badge): Command => ({ kind: 'sign in', badge })),
  },
  { weight: 4, arbitrary: fc.constant<Command>({ kind: 'start' }) },
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('answer all' as const),
      bad: someCheck,
      skip: someCheck,
    }),
  },
  {
    weight: 6,
    arbitrary: fc
      .constantFrom(demo.pin, demo.pin, demo.pin, '999111')
      .map((pin): Command => ({ kind: 'sign', pin })),
  },
  { weight: 1, arbitrary: fc.constant<Command>({ kind: 'break off' }) },
  { weight: 1, arbitrary: fc.constant<Command>({ kind: 'remove' }) },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('correct' as const),
      what: fc.constantFrom(...correctable),
      check: fc.integer({ min: 0, max: procedure.checks.length - 1 }),
    }),
  },
  { weight: 3, arbitrary: fc.constantFrom(...peopleActs).map((act): Command => ({ kind: 'people', act })) },
  {
    weight: 2,
    arbitrary: fc.integer({ min: 1, max: 200 }).map((days): Command => ({ kind: 'days pass', days })),
  },
);

const badAnswer = (index: number): Answer => {
  const check = procedure.checks[index]!;
  switch (check.kind) {
    case 'marking':
      return { kind: 'marking', state: 'missing' };
    case 'payout-length':
      return { kind: 'length', confirmedM: 1 as never };
    case 'lifeline-diameter':
      return goodAnswer(check, 15.24);
    case 'condition':
      return {
        kind: 'defects',
        findings: [{ defect: check.defects[0]!.key, ...(check.positioned ? { positionM: 1 as never } : {}) }],
      };
  }
};

/** What a person at the bench would know without the program: the answers of the open walk, and who gave them. */
interface Watched {
  badge: string;
  open: number | undefined;
  answers: Map<number, { bad: boolean; by: string }>;
  everRemoved: boolean;
  /** Badge of the regular user of the device. */
  regularUser: string;
  /** Of the inspector: whether they work here, and whether a designation of theirs covers the device. */
  inspector: { here: boolean; covered: boolean };
}

const run = async (
  { call, callAs, clock }: TestStation,
  benchId: BenchId,
  command: Command,
  watched: Watched,
): Promise<void> => {
  switch (command.kind) {
    case 'sign in':
      if ((await call('session.sign-in', { badge: command.badge })).ok) watched.badge = command.badge;
      else expect(watched.inspector.here || command.badge !== demo.inspector).toBe(false);
      return;
    case 'start': {
      const started = await call('inspection.start', { benchId });
      if (!started.ok) return;
      expect(watched.everRemoved).toBe(false);
      watched.open = started.output.inspection.inspection;
      watched.answers = new Map();
      return;
    }
    case 'answer all':
      if (watched.open === undefined) return;
      for (const [index, check] of procedure.checks.entries()) {
        if (index === command.skip) continue;
        // Without a minimum of the manufacturer on the model sheet, no reading of the diameter is a finding.
        const bad = index === command.bad && check.kind !== 'lifeline-diameter';
        const answered = await call('inspection.answer', {
          inspection: watched.open,
          check: check.key,
          answer: bad ? badAnswer(index) : goodAnswer(check, 15.24),
        });
        if (answered.ok) watched.answers.set(index, { bad, by: watched.badge });
      }
      return;
    case 'sign': {
      if (watched.open === undefined) return;
      const signed = await call('inspection.sign', { inspection: watched.open, pin: command.pin });
      if (!signed.ok) return;
      const answers = [...watched.answers.values()];
      expect(command.pin).toBe(demo.pin);
      expect(watched.answers.size).toBe(procedure.checks.length);
      expect(new Set(answers.map(({ by }) => by))).toEqual(new Set([watched.badge]));
      expect([demo.inspector, demo.regularUser]).toContain(watched.badge);
      expect(watched.badge).not.toBe(watched.regularUser);
      if (watched.badge === demo.inspector) expect(watched.inspector).toEqual({ here: true, covered: true });
      const bad = answers.some((answer) => answer.bad);
      expect(signed.output.inspection.verdict.kind).toBe(bad ? 'remove from service' : 'pass');
      watched.open = undefined;
      watched.everRemoved ||= bad;
      return;
    }
    case 'break off': {
      if (watched.open === undefined) return;
      const broken = await call('inspection.break-off', { inspection: watched.open, why: 'Random.' });
      if (!broken.ok) return;
      expect(broken.output.removed).toBe([...watched.answers.values()].some(({ bad }) => bad));
      watched.everRemoved ||= broken.output.removed;
      watched.open = undefined;
      return;
    }
    case 'remove': {
      const removed = await call('device.remove', { benchId, ground: 'fall' });
      expect(removed.ok).toBe(watched.inspector.here || watched.badge !== demo.inspector);
      if (!removed.ok) return;
      watched.everRemoved = true;
      watched.open = undefined;
      return;
    }
    case 'people': {
      const { inspector } = watched;
      const recorded = await record(callAs('office'), clock, command.act);
      switch (command.act) {
        case 'leave':
          expect(recorded).toBe(inspector.here);
          watched.inspector = { here: false, covered: false };
          return;
        case 'return':
          expect(recorded).toBe(!inspector.here);
          inspector.here = true;
          return;
        case 'end designation':
          if (recorded) inspector.covered = false;
          return;
        case 'designate':
        case 'designate for others':
          expect(recorded).toBe(inspector.here);
          if (recorded) inspector.covered = command.act === 'designate';
          return;
      }
      return;
    }
    case 'correct':
      watched.regularUser = (await correct(callAs('records'), benchId, command)) ?? watched.regularUser;
      return;
    case 'days pass':
      clock.advance({ days: command.days });
      return;
  }
};

/** Whether the act was recorded. */
const record = async (office: Call, clock: TestClock, act: PeopleAct): Promise<boolean> => {
  await office('session.sign-in', { badge: demo.administrator });
  const person = { personId: 'P002', because: 'Random.' };
  const today = calendarDate(clock.now().slice(0, 10));
  const written = {
    designatedBy: 'Ilse Marrowby',
    designatedOn: today,
    trainingValidUntil: addMonths(today, 36),
  };
  switch (act) {
    case 'leave':
      return (await office('person.leave', person)).ok;
    case 'return':
      return (await office('person.return', person)).ok;
    case 'end designation':
      return (await office('person.end-designation', person)).ok;
    case 'designate':
      return (await office('person.designate', { personId: 'P002', designation: written })).ok;
    case 'designate for others': {
      const designation = { ...written, scope: ['M001', 'M002'] };
      return (await office('person.designate', { personId: 'P002', designation })).ok;
    }
  }
};

/**
 * A correction changes neither a standing nor a verdict, whether it is recorded or refused. The badge of the regular user
 * where that was corrected.
 */
const correct = async (
  records: Call,
  benchId: BenchId,
  { what, check: index }: Extract<Command, { kind: 'correct' }>,
): Promise<string | undefined> => {
  await records('session.sign-in', { badge: demo.regularUser });
  const before = await standingAt(records, benchId);
  const found = await records('record.amendable', { benchId });
  if (!found.ok) throw new Error(found.error.sentence);
  const { device = [], inspections = [] } = found.output;
  const registered = device[0]!.amends;
  const signing = { because: 'Random.', markingReadNow: true, pin: demo.pin };
  const amend = (amends: number, correction: InputOf<'record.amend'>['correction']) =>
    records('record.amend', { amends, correction, ...signing });
  switch (what) {
    case 'serial':
      await amend(registered, { field: 'serial', now: `Q26-R-${index}` });
      break;
    case 'modelSheet':
      await amend(registered, { field: 'modelSheet', now: index % 2 === 0 ? 'M003' : 'M004' });
      break;
    case 'regularUser': {
      const [now, badge] = index % 2 === 0 ? ['P002', demo.inspector] : ['P003', demo.regularUser];
      const corrected = await amend(registered, { field: 'regularUser', now });
      expect(await standingAt(records, benchId)).toEqual(before);
      return corrected.ok ? badge : undefined;
    }
    case 'bad answer':
    case 'good answer': {
      const check = procedure.checks[index]!;
      const said = inspections[0]?.answers.find((answered) => answered.check === check.key);
      if (said === undefined) return undefined;
      const now = what === 'bad answer' ? badAnswer(index) : goodAnswer(check, 15.24);
      await amend(said.amends, { field: 'answer', now });
    }
  }
  expect(await standingAt(records, benchId)).toEqual(before);
  return undefined;
};

const standingAt = async (records: Call, benchId: BenchId) => {
  const { standing, reasons, dueOn, inspections } = await cardAt(records, benchId);
  return { standing, reasons, dueOn, verdicts: inspections.map(({ verdict }) => verdict) };
};

/** Of a device in service: the answers of its latest signed inspection stand for a pass, corrected or not, and its signer is not its regular user. */
const expectSoundInService = async (
  desk: Call,
  device: Awaited<ReturnType<typeof cardAt>>,
): Promise<void> => {
  const latest = device.inspections.find(({ state }) => state === 'signed')!;
  expect(device.regularUser).not.toBe(latest.signedBy);
  const shown = await desk('inspection.show', { inspection: latest.inspection });
  if (!shown.ok) throw new Error(shown.error.sentence);
  const answers = Object.values(shown.output.inspection.answers).map(({ answer }) => answer);
  expect(answers.filter((answer) => answer.kind === 'defects')).toEqual([]);
  expect(answers.filter((answer) => answer.kind === 'marking' && answer.state !== 'legible')).toEqual([]);
};

/** As a window shows it at which somebody is signed in. */
const cardAt = async (desk: Call, benchId: BenchId) => {
  const shown = await desk('device.show', { benchId });
  if (!shown.ok) throw new Error(shown.error.sentence);
  return shown.output.device;
};

const answerAll: Command = { kind: 'answer all', bad: undefined, skip: undefined };

/** Tried first in every run, so that each standing is reached whatever the random ones do. */
const passAndRemoval: Command[] = [
  { kind: 'start' },
  answerAll,
  { kind: 'sign', pin: demo.pin },
  { kind: 'days pass', days: 200 },
  { kind: 'start' },
  answerAll,
  { kind: 'sign', pin: demo.pin },
  { kind: 'remove' },
  { kind: 'start' },
];

/** A passed device of which everything is corrected that can be. */
const passedAndCorrected: Command[] = [
  { kind: 'start' },
  answerAll,
  { kind: 'sign', pin: demo.pin },
  ...correctable.map((what): Command => ({ kind: 'correct', what, check: 0 })),
  { kind: 'correct', what: 'regularUser', check: 1 },
  { kind: 'remove' },
  ...correctable.map((what): Command => ({ kind: 'correct', what, check: 0 })),
];

/** The inspector goes and comes back; what they begin then is signed only under a new designation that covers it. */
const leavingAndReturning: Command[] = [
  { kind: 'start' },
  answerAll,
  { kind: 'people', act: 'leave' },
  { kind: 'sign', pin: demo.pin },
  { kind: 'people', act: 'return' },
  { kind: 'sign', pin: demo.pin },
  { kind: 'people', act: 'designate for others' },
  { kind: 'sign', pin: demo.pin },
  { kind: 'people', act: 'designate' },
  { kind: 'sign', pin: demo.pin },
];

describe('after any sequence of commands', () => {
  test('a device is in service only by a signed pass, carries a status tag only then, and stays out once it is removed', async () => {
    const reached = new Set<string>();
    await fc.assert(
      fc.asyncProperty(fc.array(commandArbitrary, { minLength: 8, maxLength: 16 }), async (commands) => {
        const station = await demoStation();
        const { benchId } = await station.expectOutput('device.register', {
          ...sampleDevice('Q26C49777'),
          regularUserId: 'P003',
        });
        const desk = station.callAs('desk');
        await desk('session.sign-in', { badge: demo.attendant });
        const watched: Watched = {
          badge: demo.inspector,
          open: undefined,
          answers: new Map(),
          everRemoved: false,
          regularUser: demo.regularUser,
          inspector: { here: true, covered: true },
        };
        for (const command of commands) {
          await run(station, benchId, command, watched);
          const device = await cardAt(desk, benchId);
          if (device.standing === 'in service') await expectSoundInService(desk, device);
          reached.add(device.standing);
          const signed = device.inspections.filter(({ state }) => state === 'signed');
          if (device.standing === 'in service') expect(signed[0]?.verdict).toBe('pass');
          if (watched.everRemoved) expect(device.standing).toBe('quarantined');
          expect(device.currentTag?.kind === 'status').toBe(device.standing === 'in service');
          expect(device.reasons.length > 0).toBe(device.standing === 'quarantined');
        }
        expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
        await station.close();
      }),
      { numRuns: 25, examples: [[passAndRemoval], [leavingAndReturning], [passedAndCorrected]] },
    );
    expect(reached).toEqual(new Set(['new', 'in service', 'quarantined']));
  }, 180_000);
});

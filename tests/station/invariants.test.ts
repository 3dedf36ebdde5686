/** What must hold after any sequence of commands, given in any order by anybody: random sequences with shrinking. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/domain/answer.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import { demo, demoStation, type TestStation } from '../support/station-fixture.ts';
import { sampleDevice } from './sample-device.ts';

type Command =
  | { readonly kind: 'sign in'; readonly badge: string }
  | { readonly kind: 'start' }
  | { readonly kind: 'answer all'; readonly bad: number | undefined; readonly skip: number | undefined }
  | { readonly kind: 'sign'; readonly pin: string }
  | { readonly kind: 'break off' }
  | { readonly kind: 'remove' }
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
      .constantFrom(...[demo.inspector, demo.regularUser, demo.expiredInspector, demo.attendant, demo.user])
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
}

const run = async (
  { call, clock }: TestStation,
  benchId: BenchId,
  command: Command,
  watched: Watched,
): Promise<void> => {
  switch (command.kind) {
    case 'sign in':
      await call('session.sign-in', { badge: command.badge });
      watched.badge = command.badge;
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
      expect([demo.inspector]).toContain(watched.badge);
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
      expect(removed.ok).toBe(true);
      watched.everRemoved = true;
      watched.open = undefined;
      return;
    }
    case 'days pass':
      clock.advance({ days: command.days });
      return;
  }
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
        const watched: Watched = {
          badge: demo.inspector,
          open: undefined,
          answers: new Map(),
          everRemoved: false,
        };
        for (const command of commands) {
          await run(station, benchId, command, watched);
          const { device } = await station.expectOutput('device.show', { benchId });
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
      { numRuns: 25, examples: [[passAndRemoval]] },
    );
    expect(reached).toEqual(new Set(['new', 'in service', 'quarantined']));
  }, 180_000);
});

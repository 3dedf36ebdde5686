/** Blind second inspections among everything else that happens to a device, over random sequences: none brings one back. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instant } from '../../src/domain/brand.ts';
import { decideBeginBlind, decideDraw } from '../../src/domain/decide/reinspection.ts';
import type { Device } from '../../src/domain/device.ts';
import { type Outcome, people, procedure, World } from './invariants-world.ts';

const sequences = 4_000;
const bad = procedure.checks[2]!.key;

/** Draws the device and lets a second inspector walk and sign; chance and custody aside, everything is for the rules. */
const inspectBlind = (world: World, finds: string | undefined): Outcome => {
  const first = world.inspection(world.device(0).lastInspection?.inspection);
  if (first === undefined) return { refused: 'never inspected', events: [] };
  const among = [{ device: world.device(0), first, wentOut: false }];
  const drawn = world.decided(
    0,
    'admin',
    decideDraw(among, { numbers: [0], next: 1, withinDays: 14 }, world.today),
  );
  if (drawn.refused !== undefined) return drawn;
  const occasion = { at: instant(`${world.today}T08:00:00.000Z`), on: world.today, by: 'second' };
  const reference = { key: procedure.key, version: procedure.version, sha256: '0' };
  const begun = world.decided(
    0,
    'second',
    decideBeginBlind(world.device(0), world.nextInspection, reference, people.second, occasion),
  );
  if (begun.refused !== undefined) return begun;
  world.answerAll(0, 'second', finds, undefined);
  return world.sign(0, 'second');
};

const commands = [
  'inspect',
  'inspect and find',
  'remove',
  'prove',
  'check out',
  'check in',
  'blind',
  'blind and find',
  'days',
] as const;
type Command = (typeof commands)[number];

const run = (world: World, command: Command): Outcome => {
  switch (command) {
    case 'inspect':
    case 'inspect and find':
      world.start(0);
      world.answerAll(0, 'inspector', command === 'inspect' ? undefined : bad, undefined);
      return world.sign(0, 'inspector');
    case 'remove':
      return world.remove(0);
    case 'prove':
      return world.prove(0, world.device(0).lastTagNumber);
    case 'check out':
      return world.checkOut(0, 'mara', true, undefined);
    case 'check in': {
      const questions = ['fall', 'exposure', 'questionable'] as const;
      return world.checkIn(
        0,
        questions.map((question) => ({ question, said: 'no' as const })),
        false,
      );
    }
    case 'blind':
    case 'blind and find':
      return inspectBlind(world, command === 'blind' ? undefined : bad);
    case 'days':
      world.daysPass(9);
      return { events: [] };
  }
};

/** What a pass of a blind inspection must leave alone. */
const lasting = ({ reinspection: _draw, openInspection: _open, ...device }: Device): unknown => device;

test('a blind pass leaves a device exactly as it was, and a blind finding takes it out of service at once', () => {
  const reached = new Set<string>();
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...commands), { minLength: 2, maxLength: 10 }), (sequence) => {
      const world = new World(1);
      for (const command of sequence) {
        const before = world.device(0);
        const { events } = run(world, command);
        const after = world.device(0);
        const isSigned = events.some(({ type }) => type === 'inspection.signed');
        if (command === 'blind') {
          expect(lasting(after)).toEqual(lasting(before));
          if (isSigned) reached.add(`pass on ${before.standing}`);
        }
        if (command === 'blind and find' && isSigned) {
          expect(after.standing).toBe('quarantined');
          expect(after.reasons).toHaveLength(before.reasons.length + 1);
          expect(after.currentTag?.kind).toBe('quarantine');
          reached.add(`found on ${before.standing}`);
        }
        if (command.startsWith('blind') && isSigned) expect(before.custody).toBeUndefined();
      }
    }),
    { numRuns: sequences },
  );
  expect(reached).toEqual(
    new Set(['pass on in service', 'pass on quarantined', 'found on in service', 'found on quarantined']),
  );
}, 60_000);

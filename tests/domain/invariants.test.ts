/**
 * The invariants that lives hang on, over a hundred thousand random sequences of commands on the rules alone, with shrinking.
 * What must be refused is computed here from what was done, not by the rules under test.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answersOf, WatchedCheckIn } from './invariants-check-in.ts';
import { type Command, command, devices, keys } from './invariants-commands.ts';
import { type Name, World } from './invariants-world.ts';

const sequences = 100_000;

/** An assertion of its own: a hundred thousand sequences make ten million of them. */
const same = (what: string, is: unknown, should: unknown): void => {
  if (is !== should) throw new Error(`${what}: ${String(is)}, and should be ${String(should)}`);
};

/** What somebody who watched the device would know of it. */
interface Watched {
  /** The day of its latest pass. */
  passedOn: string | undefined;
  everRemoved: boolean;
  everRecalled: boolean;
  isProved: boolean;
  /** Bad answers, and keys answered, of the open inspection. */
  open: { readonly answered: Map<string, { bad: boolean; by: Name }> } | undefined;
  out: string | undefined;
  lost: boolean;
  readonly checkIn: WatchedCheckIn;
}

/** The shipped program: twelve months, the day itself still in time (calendar by hand: the same day of the next year). */
const isInTime = (passedOn: string, on: string): boolean =>
  on <= `${Number(passedOn.slice(0, 4)) + 1}${passedOn.slice(4)}`;

const laterBy = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

const isUser = (name: Name): boolean => name === 'nadia' || name === 'mara' || name === 'regular';

const isFit = (watched: Watched, today: string): boolean =>
  watched.passedOn !== undefined &&
  !watched.everRemoved &&
  watched.isProved &&
  watched.open === undefined &&
  isInTime(watched.passedOn, today);

const trainingEnds = '2027-01-01';

const removed = (watched: Watched): void => {
  watched.everRemoved = true;
  watched.open = undefined;
};

const signs = (world: World, index: number, watched: Watched, by: Name): void => {
  const { events } = world.sign(index, by);
  const signed = events.find((event) => event.type === 'inspection.signed');
  if (signed?.type !== 'inspection.signed') return;
  const answers = [...(watched.open?.answered ?? [])];
  const bad = answers.filter(([, answer]) => answer.bad);
  same('signer', by, 'inspector');
  same('trained', world.today <= trainingEnds, true);
  same('answered', answers.length, keys.length);
  same(
    'answered by the signer',
    answers.every(([, answer]) => answer.by === by),
    true,
  );
  same('verdict', signed.verdict.kind, bad.length === 0 ? 'pass' : 'remove from service');
  if (signed.verdict.kind === 'remove from service')
    same('reasons', signed.verdict.reasons.length, bad.length);
  watched.open = undefined;
  if (bad.length > 0) {
    removed(watched);
    return;
  }
  same('passed while out', watched.out, undefined);
  same('passed while asked about', watched.checkIn.isOpen, false);
  watched.passedOn = world.today;
  watched.isProved = false;
};

const answers = (
  world: World,
  index: number,
  watched: Watched,
  command: Extract<Command, { do: 'answer' }>,
): void => {
  world.answerAll(index, command.by, command.bad, command.skip);
  for (const key of keys)
    if (key !== command.skip) watched.open?.answered.set(key, { bad: key === command.bad, by: command.by });
};

const starts = (world: World, index: number, watched: Watched): void => {
  const { refused } = world.start(index);
  if (watched.everRemoved) same('start', refused, 'device-out-of-service');
  else if (watched.out !== undefined) same('start', refused, 'inspection-device-out');
  if (refused === undefined) watched.open = { answered: new Map() };
};

const run = (world: World, all: readonly Watched[], command: Command): void => {
  if (command.do === 'days pass') {
    world.daysPass(command.days);
    return;
  }
  const index = command.device;
  const watched = all[index]!;
  switch (command.do) {
    case 'start':
      starts(world, index, watched);
      return;
    case 'answer':
      answers(world, index, watched, command);
      return;
    case 'sign':
      signs(world, index, watched, command.by);
      return;
    case 'inspect': {
      starts(world, index, watched);
      answers(world, index, watched, { ...command, do: 'answer', by: command.by, skip: undefined });
      signs(world, index, watched, command.by);
      if (command.prove) prove(world, index, watched, 0);
      return;
    }
    case 'prove':
      prove(world, index, watched, command.back);
      return;
    case 'break off': {
      const { events } = world.breakOff(index);
      if (events.some(({ type }) => type === 'device.removed')) removed(watched);
      if (events.length > 0) watched.open = undefined;
      return;
    }
    case 'remove':
      same('removal', world.remove(index).refused, undefined);
      removed(watched);
      return;
    case 'recall': {
      const { refused, events } = world.recall(index, command.level);
      // A competent person records it until the training ends.
      same('recalled', refused === undefined, world.today <= trainingEnds);
      if (refused !== undefined) return;
      same(
        'held with the notice',
        events.some(({ type }) => type === 'device.removed'),
        true,
      );
      removed(watched);
      watched.everRecalled = true;
      return;
    }
    case 'read marking': {
      const { refused } = world.readMarking(index, command.intact);
      same('reading', refused, undefined);
      if (!command.intact) removed(watched);
      return;
    }
    case 'lose': {
      const { refused } = world.lose(index);
      same('written off', refused === undefined, watched.out !== undefined && !watched.lost);
      if (refused !== undefined) return;
      removed(watched);
      watched.lost = true;
      return;
    }
    case 'check out': {
      const { user, confirmed, days } = command;
      const { refused } = world.checkOut(index, user, confirmed, days);
      const back = laterBy(world.today, days ?? 0);
      const may =
        isUser(user) &&
        confirmed &&
        (days ?? 0) >= 0 &&
        watched.out === undefined &&
        isFit(watched, world.today) &&
        isInTime(watched.passedOn ?? '', back);
      same(`checked out (${refused})`, refused === undefined, may);
      if (isUser(user) && watched.everRemoved)
        same('the reason', refused, watched.everRecalled ? 'checkout-recalled' : 'checkout-quarantined');
      if (refused === undefined) watched.out = user;
      return;
    }
    case 'hand over': {
      const { user, confirmed, because } = command;
      const { refused } = world.transfer(index, user, confirmed, because ? 'Random.' : undefined);
      const may =
        isUser(user) &&
        confirmed &&
        because &&
        watched.out !== undefined &&
        watched.out !== user &&
        isFit(watched, world.today);
      same(`handed over (${refused})`, refused === undefined, may);
      if (refused === undefined) watched.out = user;
      return;
    }
    case 'check in': {
      const isBack = watched.out !== undefined || command.found;
      const { taken, holds: isHeld } = watched.checkIn.take(command.answers, isBack);
      const { refused, events } = world.checkIn(index, answersOf(command.answers), command.found);
      same(`checked in (${refused})`, refused === undefined, taken);
      if (refused !== undefined) return;
      same(
        'held',
        events.some(({ type }) => type === 'device.removed'),
        isHeld,
      );
      if (isHeld) removed(watched);
      watched.out = undefined;
      watched.lost = false;
      return;
    }
  }
};

const prove = (world: World, index: number, watched: Watched, back: number): void => {
  const { lastTagNumber } = world.device(index);
  const { events } = world.prove(index, lastTagNumber - back);
  if (back > 0) same('an old tag proves', events.length, 0);
  else watched.isProved = lastTagNumber > 0;
};

/** After every command, of every device. */
const holds = (world: World, all: readonly Watched[]): void => {
  for (const [index, watched] of all.entries()) {
    const device = world.device(index);
    const isInService = watched.passedOn !== undefined && !watched.everRemoved;
    same(
      'standing',
      device.standing,
      watched.everRemoved ? 'quarantined' : isInService ? 'in service' : 'new',
    );
    same('status tag', device.currentTag?.kind === 'status', isInService);
    same('reasons', device.reasons.length > 0, watched.everRemoved);
    same('custody', device.custody?.userId, watched.out);
    const { openCheckIn } = device;
    const open = (openCheckIn?.unanswered.length ?? 0) + (openCheckIn?.unexplained.length ?? 0);
    same('questions open', open, watched.checkIn.open);
    if (watched.checkIn.isOpen) same('held meanwhile', device.standing, 'quarantined');
    for (const word of watched.checkIn.words)
      same(
        `kept: ${word}`,
        device.reasons.some(({ key }) => key === word),
        true,
      );
    same('open inspection', device.openInspection === undefined, watched.open === undefined);
  }
};

test('no sequence of commands gets a device out that is held, overdue, recalled or never inspected, nor one in service without a pass', () => {
  const reached = new Set<string>();
  fc.assert(
    fc.property(fc.array(command, { minLength: 1, maxLength: 14, size: 'max' }), (commands) => {
      const world = new World(devices);
      const all = Array.from(
        { length: devices },
        (): Watched => ({
          passedOn: undefined,
          everRemoved: false,
          everRecalled: false,
          isProved: false,
          open: undefined,
          out: undefined,
          lost: false,
          checkIn: new WatchedCheckIn(),
        }),
      );
      for (const each of commands) {
        run(world, all, each);
        holds(world, all);
      }
      for (const { out, everRemoved, lost, checkIn } of all)
        reached.add(
          `${out === undefined ? 'in' : 'out'}${everRemoved ? ' removed' : ''}${lost ? ' lost' : ''}${checkIn.isOpen ? ' open' : ''}`,
        );
    }),
    { numRuns: sequences },
  );
  expect(reached).toEqual(
    new Set(['in', 'out', 'in removed', 'in removed open', 'out removed', 'out removed lost']),
  );
}, 600_000);

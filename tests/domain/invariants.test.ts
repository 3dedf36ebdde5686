/**
 * The invariants that lives hang on, over a hundred thousand random sequences of commands on the rules alone, with shrinking.
 * What must be refused is computed here from what was done, not by the rules under test.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DomainEvent } from '../../src/domain/event.ts';
import { answersOf, WatchedCheckIn } from './invariants-check-in.ts';
import { type Command, command, devices, keys } from './invariants-commands.ts';
import { needed, whyHeld } from './invariants-evidence.ts';
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
  isHeld: boolean;
  /** Since it is held: what holds it, and what was brought about for each. */
  reasons: { readonly key: string; readonly has: Set<string> }[];
  isReleased: boolean;
  isScrapped: boolean;
  /** It was held and came back. */
  isReturned: boolean;
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
  !watched.isHeld &&
  watched.isProved &&
  watched.open === undefined &&
  isInTime(watched.passedOn, today);

const trainingEnds = '2027-01-01';

const removed = (watched: Watched, events: readonly DomainEvent[]): void => {
  watched.isHeld = true;
  watched.isReleased = false;
  watched.open = undefined;
  for (const event of events) {
    const reasons =
      event.type === 'device.removed'
        ? event.reasons
        : event.type === 'inspection.signed' && event.verdict.kind === 'remove from service'
          ? event.verdict.reasons
          : [];
    for (const { key } of reasons) watched.reasons.push({ key, has: new Set() });
  }
};

/** What a bare yes was takes the place of it among the reasons. */
const explained = (watched: Watched, events: readonly DomainEvent[]): void => {
  const said = events.flatMap((event) => (event.type === 'device.check-in-answered' ? event.answers : []));
  const gone = said
    .filter((answer) => answer.said === 'yes' && answer.choices.length > 0)
    .map(({ question }) => `check-in.${question}.yes`);
  if (!watched.isScrapped) watched.reasons = watched.reasons.filter(({ key }) => !gone.includes(key));
};

const isComplete = ({ reasons }: Watched): boolean =>
  reasons.every(({ key, has }) => needed(key).every((group) => group.some((kind) => has.has(kind))));

const brings = (
  world: World,
  index: number,
  watched: Watched,
  { leaveOut, back }: Extract<Command, { do: 'bring back' }>,
): void => {
  const pieces = watched.reasons.flatMap(({ key }, place) =>
    needed(key).map((group) => ({ place, kind: group[0]! })),
  );
  for (const [number, { place, kind }] of pieces.entries()) {
    if (number === leaveOut) continue;
    const reason = watched.reasons[place]!;
    if (kind === 'investigation') {
      const { refused } = world.investigate(index);
      same('investigated', refused === undefined, !watched.isScrapped);
      if (refused === undefined) for (const each of watched.reasons) each.has.add('investigation');
      continue;
    }
    const { refused } = world.recordEvidence(index, kind, [place + 1]);
    same('evidence', refused === undefined, !watched.isScrapped);
    if (refused === undefined) reason.has.add(kind);
    if (leaveOut !== undefined && reason.key.startsWith('check-in.questionable.'))
      world.recordEvidence(index, 'doubt-settled', [place + 1]);
  }
  const { lastTagNumber } = world.device(index);
  const { refused } = world.release(index, lastTagNumber - back);
  const may =
    watched.isHeld &&
    !watched.isScrapped &&
    !watched.isReleased &&
    watched.out === undefined &&
    !watched.checkIn.isOpen &&
    back === 0 &&
    isComplete(watched);
  same(`released (${refused})`, refused === undefined, may);
  if (refused === undefined) watched.isReleased = true;
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
  same('held and not released', watched.isHeld && !watched.isReleased, false);
  if (bad.length === 0) same('all the evidence', isComplete(watched), true);
  if (signed.verdict.kind === 'remove from service')
    same('reasons', signed.verdict.reasons.length, bad.length);
  watched.open = undefined;
  if (bad.length > 0) {
    removed(watched, events);
    return;
  }
  same('passed while out', watched.out, undefined);
  same('passed while asked about', watched.checkIn.isOpen, false);
  watched.isReturned ||= watched.isHeld;
  watched.isHeld = false;
  watched.isReleased = false;
  watched.reasons = [];
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
  if (watched.isScrapped) same('start', refused, 'device-scrapped');
  else if (watched.isHeld && !watched.isReleased) same('start', refused, 'device-out-of-service');
  else if (watched.out !== undefined) same('start', refused, 'inspection-device-out');
  else if (watched.checkIn.isOpen) same('start', refused, 'inspection-check-in-open');
  else same('start', refused === undefined, watched.open === undefined);
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
      if (events.length > 0 && watched.isHeld)
        same(
          'held on',
          events.some(({ type }) => type === 'device.removed'),
          true,
        );
      if (events.some(({ type }) => type === 'device.removed')) removed(watched, events);
      if (events.length > 0) watched.open = undefined;
      return;
    }
    case 'remove': {
      const { refused, events } = world.remove(index);
      same('removal', refused, watched.isScrapped ? 'device-scrapped' : undefined);
      if (refused === undefined) removed(watched, events);
      return;
    }
    case 'recall': {
      const { refused, events } = world.recall(index, command.level);
      // A competent person records it until the training ends.
      same('recalled', refused === undefined, world.today <= trainingEnds);
      if (refused !== undefined) return;
      same(
        'held with the notice',
        events.some(({ type }) => type === 'device.removed'),
        !watched.isScrapped,
      );
      if (!watched.isScrapped) removed(watched, events);
      return;
    }
    case 'read marking': {
      const { refused, events } = world.readMarking(index, command.intact);
      same('reading', refused, watched.isScrapped ? 'device-scrapped' : undefined);
      if (!command.intact && refused === undefined) removed(watched, events);
      return;
    }
    case 'bring back':
      brings(world, index, watched, command);
      return;
    case 'scrap': {
      const { refused } = world.scrap(index, command.cut, command.witness);
      const may =
        watched.isHeld &&
        !watched.isScrapped &&
        watched.out === undefined &&
        !watched.checkIn.isOpen &&
        command.cut &&
        command.witness === 'mara';
      same(`scrapped (${refused})`, refused === undefined, may);
      if (refused !== undefined) return;
      watched.isScrapped = true;
      watched.open = undefined;
      return;
    }
    case 'lose': {
      const { refused, events } = world.lose(index);
      same('written off', refused === undefined, watched.out !== undefined && !watched.lost);
      if (refused !== undefined) return;
      removed(watched, events);
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
      if (isUser(user) && watched.isHeld)
        same('the reason', refused, whyHeld(watched.isScrapped, watched.reasons));
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
      const { taken, holds: isDoubted } = watched.checkIn.take(command.answers, isBack);
      const { refused, events } = world.checkIn(index, answersOf(command.answers), command.found);
      same(`checked in (${refused})`, refused === undefined, taken);
      if (refused !== undefined) return;
      const isHeld = isDoubted && !watched.isScrapped;
      same(
        'held',
        events.some(({ type }) => type === 'device.removed'),
        isHeld,
      );
      explained(watched, events);
      if (isHeld) removed(watched, events);
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
    const isInService = watched.passedOn !== undefined && !watched.isHeld;
    same(
      'standing',
      device.standing,
      watched.isScrapped ? 'scrapped' : watched.isHeld ? 'quarantined' : isInService ? 'in service' : 'new',
    );
    same('status tag', device.currentTag?.kind === 'status', isInService);
    same('reasons', device.reasons.length > 0, watched.isHeld);
    same('custody', device.custody?.userId, watched.out);
    const { openCheckIn } = device;
    const open = (openCheckIn?.unanswered.length ?? 0) + (openCheckIn?.unexplained.length ?? 0);
    same('questions open', open, watched.checkIn.open);
    if (watched.checkIn.isOpen && !watched.isScrapped) same('held meanwhile', device.standing, 'quarantined');
    if (!isInService)
      same(
        'every reason',
        device.reasons.map(({ key }) => key).join(),
        watched.reasons.map(({ key }) => key).join(),
      );
    same('open inspection', device.openInspection === undefined, watched.open === undefined);
  }
};

test('no sequence of commands gets a device out that is held, overdue, recalled or never inspected, nor one in service without a pass, nor one back without every piece of evidence', () => {
  const reached = new Set<string>();
  fc.assert(
    fc.property(fc.array(command, { minLength: 1, maxLength: 14, size: 'max' }), (commands) => {
      const world = new World(devices);
      const all = Array.from(
        { length: devices },
        (): Watched => ({
          passedOn: undefined,
          isHeld: false,
          reasons: [],
          isReleased: false,
          isScrapped: false,
          isReturned: false,
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
      for (const { out, isHeld, isReturned, isScrapped, lost, checkIn } of all)
        reached.add(
          `${out === undefined ? 'in' : 'out'}${isScrapped ? ' scrapped' : isHeld ? ' removed' : ''}${lost ? ' lost' : ''}${checkIn.isOpen && !isScrapped ? ' open' : ''}${isReturned && !isHeld ? ' again' : ''}`,
        );
    }),
    { numRuns: sequences },
  );
  expect(reached).toEqual(
    new Set([
      'in',
      'out',
      'in removed',
      'in removed open',
      'out removed',
      'out removed lost',
      'in again',
      'out again',
      'in scrapped',
    ]),
  );
}, 1_200_000);

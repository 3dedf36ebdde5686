/** What the two windows of the soak do: whole pieces of work at the bench and at the desk, at random and alike in every run. */
import type { BenchId } from '../../src/domain/brand.ts';
import type { SeededRandom } from '../support/seeded-random.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import { demo } from '../support/station-fixture.ts';
import { type AskedCall, ask, type PageSample, Refused, type SoakWindow } from './soak-window.ts';

export interface Depot {
  /** In service and in store, those of the bench and those of the desk. */
  readonly atBench: readonly BenchId[];
  readonly atDesk: readonly BenchId[];
  readonly everywhere: readonly BenchId[];
  readonly printerId: string;
}

/** What the station acknowledged and must never lose. */
export interface Acknowledged {
  readonly signed: number[];
  readonly checkedOut: string[];
  readonly tags: string[];
}

interface At {
  readonly window: SoakWindow;
  readonly depot: Depot;
  readonly random: SeededRandom;
  readonly acknowledged: Acknowledged;
}

type Piece = (at: At) => Promise<void>;

const words = ['NO100', 'quillmoor', 'stay', 'tess', '7M3', 'halt', '15', 'no such device'];
export const screensOf = {
  bench: ['#/', '#/register', '#/bench', '#/records', '#/schedule'],
  desk: ['#/', '#/desk', '#/register', '#/held'],
} as const;

/** Scans, cards and searches, as fast as a page asks for them. */
const looks = ({ depot, random }: At, times: number): readonly AskedCall[] =>
  Array.from({ length: times }, (): AskedCall => {
    const benchId = random.pick(depot.everywhere);
    switch (random.whole(0, 5)) {
      case 0:
        return ask('device.list', { search: random.pick(words), limit: 20 });
      case 1:
        return ask('scan.interpret', { text: random.pick([benchId, 'UNKNOWN-77', 'HP10062', '.CAGE2']) });
      case 2:
        return ask('custody.history', { benchId });
      case 3:
        return ask('station.status', {});
      default:
        return ask('device.show', { benchId });
    }
  });

const lookRound: Piece = async (at) => {
  await at.window.callAll(...looks(at, 24));
};

/** The whole walk, its signature, its tag, and the scan that proves it. What was broken off before is broken off here. */
const inspect: Piece = async ({ window, depot, random, acknowledged }) => {
  const benchId = random.pick(depot.atBench);
  const [shown] = await window.callAll(ask('device.show', { benchId }));
  const open = shown.device.openInspection;
  if (open !== undefined)
    await window.callAll(ask('inspection.break-off', { inspection: open, why: 'The window went.' }));
  const [{ inspection: begun }] = await window.callAll(ask('inspection.start', { benchId }));
  const { inspection, checks, device } = begun;
  const answers = checks.map((key) => {
    const check = procedure.checks.find((candidate) => candidate.key === key)!;
    return ask('inspection.answer', {
      inspection,
      check: key,
      answer: goodAnswer(check, device.ratedLengthM),
    });
  });
  await window.callAll(...answers);
  await window.callAll(ask('inspection.sign', { inspection, pin: demo.pin }));
  acknowledged.signed.push(inspection);
  await tag({ window, benchId, acknowledged, printerId: depot.printerId });
};

interface TagOf extends Pick<At, 'window' | 'acknowledged'> {
  readonly benchId: BenchId;
  readonly printerId: string;
}

const tag = async ({ window, benchId, acknowledged, printerId }: TagOf): Promise<void> => {
  const [{ job }] = await window.callAll(ask('tag.print', { benchId, kind: 'status', printerId }));
  await ended(window, () => window.callAll(ask('print.status', { job })));
  const [{ symbols }] = await window.callAll(
    ask('tag.issue', { benchId, kind: 'status', reprintBecause: 'misprinted' }),
  );
  const text = symbols.find((symbol) => symbol.symbology === 'QR Code')?.text ?? '';
  await window.callAll(ask('tag.prove', { text }), ask('scan.interpret', { text }));
  acknowledged.tags.push(benchId);
};

/** Asks until a work has ended, a little later each time. */
const ended = async (
  window: SoakWindow,
  status: () => Promise<readonly { readonly state: string; readonly sentence?: string }[]>,
): Promise<void> => {
  for (let times = 0; times < 200; times += 1) {
    const [now] = await status();
    if (now?.state === 'refused') throw new Error(`A work was refused: ${now.sentence ?? ''}`);
    if (now?.state !== 'working' && now?.state !== 'printing') return;
    await window.look('#/');
  }
  throw new Error('A work did not end.');
};

/** Half a walk, during which the window goes. */
const beginToInspect = ({ depot, random }: At): readonly AskedCall[] => [
  ask('inspection.start', { benchId: random.pick(depot.atBench) }),
];

const report: Piece = async ({ window, depot, random }) => {
  const benchId = random.pick(depot.everywhere);
  const [{ job }] = await window.callAll(
    ask('report.make', {
      of: { kind: 'device', benchId },
      language: random.pick(['en', 'es', 'both'] as const),
    }),
  );
  await ended(window, () => window.callAll(ask('report.status', { job })));
};

const takeAway: Piece = async ({ window }) => {
  const [{ job }] = await window.callAll(ask('record.export', {}));
  await ended(window, () => window.callAll(ask('export.status', { job })));
};

const lookAtScreens =
  (screens: readonly string[]): Piece =>
  async (at) => {
    for (const hash of at.random.sample(screens, 3)) await at.window.look(hash);
    await at.window.callAll(...looks(at, 6));
  };

/** Goes out and comes back, all three questions answered with no. */
const outAndBack: Piece = async (at) => {
  const { window, depot, random, acknowledged } = at;
  const benchIds = random.sample(depot.atDesk, random.whole(1, 4));
  for (const benchId of benchIds) {
    const [{ device }] = await window.callAll(ask('device.show', { benchId }));
    if (device.custody !== undefined) await window.callAll(back(benchId));
  }
  const [out] = await window.callAll(
    ask('custody.check-out', { userId: 'P006', benchIds, preUse: { language: 'en' } }),
    ask('custody.list', {}),
  );
  acknowledged.checkedOut.push(...out.checkedOut);
  await window.callAll(...looks(at, 4), ask('kit.list', {}));
  await window.callAll(...out.checkedOut.map(back));
};

const back = (benchId: BenchId): AskedCall =>
  ask('custody.check-in', {
    benchId,
    answers: ['fall', 'exposure', 'questionable'].map((question) => ({ question, said: 'no' as const })),
  });

const count: Piece = async ({ window, depot, random }) => {
  const scanned = random.sample(depot.everywhere, 12);
  await window.callAll(ask('count.preview', { place: 'A1', scanned, unknown: ['SOMETHING-1'] }));
};

/**
 * What loads everything that is only loaded when it is first needed. SQLite keeps the two files that a verification opens,
 * and takes them again for the next one, while others of its process hold a lock (`os_unix.c`, `setPendingFd`; from memory).
 */
export const workOfEveryKind = async (at: At): Promise<void> => {
  for (const piece of [inspect, inspect, inspect, report, takeAway]) await piece(at);
  await at.window.callAll(ask('ledger.verify', {}));
};

/**
 * A page that stays: everything that it looks at, again and again, and what it held after each time. What its scripts keep of what
 * they have met once is there after the first of them, so the first third is left aside.
 */
export const stayAtWindow = async (at: At, rounds: number): Promise<readonly PageSample[]> => {
  await at.window.reload();
  const held = [];
  for (let round = 0; round < rounds; round += 1) {
    await at.window.touch();
    await at.window.lookAtEveryScreen();
    await lookRound(at);
    held.push(await at.window.sample());
  }
  return held.slice(Math.ceil(rounds / 3));
};

/** How often each of a window's works comes, among all of them. */
const benchWork: readonly (readonly [number, Piece])[] = [
  [60, lookRound],
  [9, inspect],
  [3, report],
  [1, takeAway],
  [12, lookAtScreens(screensOf.bench)],
];
const deskWork: readonly (readonly [number, Piece])[] = [
  [60, lookRound],
  [30, outAndBack],
  [4, count],
  [12, lookAtScreens(screensOf.desk)],
];

const drawn = (work: readonly (readonly [number, Piece])[], random: SeededRandom): Piece => {
  let at = random.whole(0, work.reduce((sum, [share]) => sum + share, 0) - 1);
  for (const [share, piece] of work) {
    if (at < share) return piece;
    at -= share;
  }
  return lookRound;
};

export interface WindowRun extends At {
  readonly place: 'bench' | 'desk';
  /** True until both windows have done enough between them. */
  goesOn(): boolean;
  /** After each piece of work. */
  onPiece(): Promise<void>;
}

/** Pieces of work, and between them what happens to windows: they are reloaded, closed in the middle of a call, and crash. */
export const workAtWindow = async (run: WindowRun): Promise<Readonly<Record<string, number>>> => {
  const { window, random, place } = run;
  const work = place === 'bench' ? benchWork : deskWork;
  const happened = { reloads: 0, closes: 0, crashes: 0 };
  while (run.goesOn()) {
    try {
      await window.touch();
      await drawn(work, random)(run);
      await run.onPiece();
    } catch (error) {
      // After its time, or by somebody else's hand, nobody is signed in any more.
      if (!(error instanceof Refused) || !signedOut.has(error.code)) throw error;
      await window.signInAgain();
    }
    const chance = random.next();
    if (chance < 0.05) {
      if (place === 'bench') window.leaveUnderWay(beginToInspect(run));
      await window.reload();
      happened.reloads += 1;
    } else if (chance < 0.085) {
      window.leaveUnderWay(place === 'bench' ? beginToInspect(run) : looks(run, 20));
      await window.close();
      await window.open();
      happened.closes += 1;
    } else if (chance < 0.11) {
      window.leaveUnderWay(looks(run, 20));
      await window.crash();
      happened.crashes += 1;
    }
  }
  return happened;
};

const signedOut: ReadonlySet<string> = new Set(['sign-in-needed', 'session-locked']);

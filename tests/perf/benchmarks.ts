/** All benchmarks by name, in the order in which they run, and the groups of them that have a name of their own. */
import type { BenchmarkModule } from './measurement.ts';

export const benchmarks: Readonly<Record<string, () => Promise<BenchmarkModule>>> = {
  start: () => import('./start.ts'),
  memory: () => import('./memory.ts'),
  desk: () => import('./desk.ts'),
  identity: () => import('./identity.ts'),
  program: () => import('./program.ts'),
  notices: () => import('./notices.ts'),
  ledger: () => import('./ledger.ts'),
  tags: () => import('./tags.ts'),
  plan: () => import('./plan.ts'),
  returns: () => import('./returns.ts'),
  demo: () => import('./demo.ts'),
  'worn-levels': () => import('./worn-levels.ts'),
  'worn-tags': () => import('./worn-tags.ts'),
};

/** What is over 100,000 devices, or over a notice's ten thousand. */
const groups: Readonly<Record<string, readonly string[]>> = { scale: ['identity', 'program', 'notices'] };

/** Only the general decoders, on which the levels of wear are defined: not in a run of all that is kept short. */
const leftOutWhenShort: readonly string[] = ['worn-levels'];

export const namesOf = (asked: readonly string[], long: boolean): readonly string[] =>
  asked.length === 0
    ? Object.keys(benchmarks).filter((name) => long || !leftOutWhenShort.includes(name))
    : asked.flatMap((name) => groups[name] ?? [name]);

export const knownNames: readonly string[] = [...Object.keys(benchmarks), ...Object.keys(groups)];

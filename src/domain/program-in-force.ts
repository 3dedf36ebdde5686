/** The employer's written rules that hold: those that were adopted last, or those that the product ships. */
import type { CalendarDate } from './brand.ts';
import type { Station } from './evolve.ts';
import type { Program } from './program.ts';

export interface ProgramInForce {
  readonly program: Program;
  /** The first day on which it holds; absent where none was adopted. */
  readonly since?: CalendarDate | undefined;
}

export const programInForce = (station: Station | undefined, shipped: Program): ProgramInForce =>
  station?.program === undefined
    ? { program: shipped }
    : { program: station.program, since: station.programs?.at(-1)?.effectiveFrom };

/** What only the shell or the host of a station knows of the PC, given to `openStation`. */
import type { Machine } from '../../domain/health/judge-machine.ts';

export interface Surroundings {
  look(): Promise<Machine>;
  /** Where faults inside the program are written down. */
  readonly faultLog: string;
}

/** What an operation of the contract is: its name, kind, schemas, the roles it needs, and what it does. */
import type { z } from 'zod';
import type { Instant } from '../domain/brand.ts';
import type { DomainEvent, Occasion } from '../domain/event.ts';
import type { Station } from '../domain/evolve.ts';
import type { Language } from '../domain/message.ts';
import { type Person, type Role, roles } from '../domain/person.ts';
import type { Refusal } from '../domain/refusal.ts';
import type { RestorePlan } from '../ledger/backup/put-in-place.ts';
import type { EvidenceStore } from '../ledger/evidence-store.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { JobProgress, Printed } from '../printing/destination.ts';
import type { ExportOutcome } from './exchange/export-record.ts';
import type { ImportOutcome } from './exchange/import-outcome.ts';
import type { ClockWatch } from './health/clock-watch.ts';
import type { Examination } from './health/examine.ts';
import type { StationNotes } from './health/station-notes.ts';
import type { Surroundings } from './health/surroundings.ts';
import type { Keeper } from './keeping/keeper.ts';
import type { PinGuard } from './pin.ts';
import type { RecordedNotice } from './recall/record-notice.ts';
import type { ReportOutcome } from './reports/make-report.ts';
import type { PlannedReturns } from './returns/planned-returns.ts';
import type { Rules } from './rules.ts';
import type { BenchPlanner } from './schedule/bench-planner.ts';
import type { RecordVerification } from './verify-record.ts';
import type { WorkJobs } from './work-jobs.ts';

/** Who may call: anyone at all, or a signed-in person with one of these roles. */
export type Access = 'anyone' | readonly [Role, ...Role[]];

/** Everybody who is signed in, whatever the role. */
export const everyRole: Access = [...roles];

/** What an operation may use. The person is the one signed in on the session that called, nobody while it is locked. */
export interface OperationContext {
  readonly ledger: Ledger;
  readonly evidence: EvidenceStore;
  readonly rules: Rules;
  readonly pins: PinGuard;
  readonly printJobs: WorkJobs<Printed, JobProgress>;
  readonly importJobs: WorkJobs<ImportOutcome>;
  readonly exportJobs: WorkJobs<ExportOutcome>;
  readonly verifyJobs: WorkJobs<RecordVerification>;
  readonly reportJobs: WorkJobs<ReportOutcome>;
  readonly returnPlanJobs: WorkJobs<PlannedReturns>;
  readonly noticeJobs: WorkJobs<RecordedNotice>;
  readonly healthJobs: WorkJobs<Examination>;
  readonly keeper: Keeper;
  readonly planner: BenchPlanner;
  readonly clockWatch: ClockWatch;
  readonly notes: StationNotes;
  /** Absent where the host told nothing of the PC. */
  readonly surroundings: Surroundings | undefined;
  /** The data folder. */
  readonly folder: string;
  /** Where the product's own `assets` and `demo-data` are. */
  readonly productFolder: string;
  readonly language: Language;
  readonly session: Session;
  readonly person: Person | undefined;
  now(): Instant;
  /** The moment, the station's calendar date and the person of a change that is made now. */
  occasion(station: Station): Occasion;
  randomBytes(count: number): Uint8Array;
  /** Once the call is answered, and everything else that is under way has ended, the record is replaced. */
  restoreAfterwards(restore: WantedRestore): void;
  /** Opens a file with the program that the operating system has for it; absent where the shell cannot. */
  readonly openFile?: ((path: string) => Promise<void>) | undefined;
}

/** A record that is to take the place of the one in use, and the event that says so in it. */
export interface WantedRestore {
  readonly plan: RestorePlan;
  readonly restored: Extract<DomainEvent, { type: 'record.restored' }>;
  /** Who decided it. */
  readonly by: string;
}

/** One window or terminal: who is signed in there. */
export interface Session {
  /** Whose session it is while it is locked; the operations know nobody then. */
  readonly lockedFor: Person | undefined;
  /** Somebody touched the window just now. */
  attend(): void;
  /** How long nobody has; 0 where nobody is signed in. */
  idleMs(): number;
  signIn(personId: string): void;
  signOut(): void;
}

export interface Operation<Name extends string, Input extends z.ZodType, Output extends z.ZodType> {
  readonly name: Name;
  /** One sentence for the command help and the documentation. */
  readonly summary: string;
  /** A query changes nothing. */
  readonly kind: 'command' | 'query';
  readonly access: Access;
  readonly input: Input;
  readonly output: Output;
  run(context: OperationContext, input: z.output<Input>): Promise<z.input<Output> | Refusal>;
}

export const defineOperation = <Name extends string, Input extends z.ZodType, Output extends z.ZodType>(
  operation: Operation<Name, Input, Output>,
): Operation<Name, Input, Output> => Object.freeze(operation);

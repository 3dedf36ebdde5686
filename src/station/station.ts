/** The station: the contract over one data folder, for every window, terminal and carrier that is connected to it. */
import { randomBytes } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import type { z } from 'zod';
import { type Instant, instant } from '../domain/brand.ts';
import { dateInZone } from '../domain/calendar.ts';
import type { Language } from '../domain/message.ts';
import type { Person } from '../domain/person.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import type { RequestFrom } from '../domain/request-from.ts';
import { unattendedMs } from '../domain/unattended.ts';
import { EvidenceFolder } from '../ledger/evidence-folder.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { storageRefusal } from '../ledger/storage-refusal.ts';
import type { JobProgress, Printed } from '../printing/destination.ts';
import { type CallResult, contract } from './contract.ts';
import type { ExportOutcome } from './exchange/export-record.ts';
import type { ImportOutcome } from './exchange/import-outcome.ts';
import { ClockWatch } from './health/clock-watch.ts';
import type { Examination } from './health/examine.ts';
import { StationNotes } from './health/station-notes.ts';
import type { Surroundings } from './health/surroundings.ts';
import { zoneOfPc } from './health/zone.ts';
import { Keeper } from './keeping/keeper.ts';
import { stationIn } from './lookup.ts';
import { OpenRecord, type RecordInUse } from './open-record.ts';
import type { Access, OperationContext, WantedRestore } from './operation.ts';
import type { RecordedNotice } from './recall/record-notice.ts';
import type { ReportOutcome } from './reports/make-report.ts';
import type { PlannedReturns } from './returns/planned-returns.ts';
import { loadRules } from './rules.ts';
import { BenchPlanner } from './schedule/bench-planner.ts';
import { issueText, sentenceOf } from './sentence.ts';
import { Sessions } from './sessions.ts';
import { keepKey } from './station-key.ts';
import { type Begun, UnderWay } from './under-way.ts';
import type { RecordVerification } from './verify-record.ts';
import { WorkJobs } from './work-jobs.ts';

export interface StationOptions {
  /** The data folder; it is made where it does not exist. */
  readonly folder: string;
  /** Where the product's `assets` and `demo-data` are; beside the source where absent. */
  readonly productFolder?: string | undefined;
  readonly now?: (() => Instant) | undefined;
  /** Milliseconds of a clock that only goes forward, by which an unattended session is told; that of the system where absent. */
  readonly elapsedMs?: (() => number) | undefined;
  readonly openFile?: ((path: string) => Promise<void>) | undefined;
  /** Where bench IDs come from; the random source of the system where absent. */
  readonly randomBytes?: ((count: number) => Uint8Array) | undefined;
  /** What the host knows of the PC; what it tells is not known where this is absent. */
  readonly surroundings?: Surroundings | undefined;
  /** Told each time that what is under way changes, so that the PC is kept awake for it. */
  readonly onUnderWay?: ((begun: readonly Begun[]) => void) | undefined;
  /** Told of a fault inside the program; the caller of the operation gets a plain sentence instead. */
  readonly onFault?: ((error: unknown, operation: string) => void) | undefined;
}

/** One request of a session: a window, or a terminal. */
export interface Request {
  readonly session: string;
  /** A window where absent. A terminal is not locked: it ends with what it was asked for. */
  readonly from?: RequestFrom | undefined;
  readonly operation: string;
  readonly input: unknown;
  readonly language: Language;
}

/** What a call leaves to be done once it is answered. */
interface AfterCall {
  restore?: WantedRestore;
}

export interface Station {
  /** Never throws: every error is a value with a code and a sentence. */
  call(request: Request): Promise<CallResult>;
  /** Forgets who was signed in on a session. */
  endSession(session: string): void;
  /** Every session stays with who is signed in on it and does nothing for them until a badge is scanned: the PC goes to sleep. */
  lockSessions(): void;
  /** What was begun and would be missed if the program ended now, each kind once. */
  underWay(): readonly Begun[];
  /** Resolves as soon as nothing of that is under way. */
  whenIdle(): Promise<void>;
  /** Does what keeps the record safe and is due today; called every now and then for as long as the station is open. */
  keep(): Promise<void>;
  /** Waits for what is under way, then gives the data folder free. */
  close(): Promise<void>;
}

export const openStation = async (options: StationOptions): Promise<Station | Refusal> => {
  const productFolder = options.productFolder ?? fileURLToPath(new URL('../..', import.meta.url));
  const rules = await loadRules(`${productFolder}/assets`);
  const record = await OpenRecord.open(options.folder);
  if (isRefusal(record)) return record;
  const evidence = new EvidenceFolder(options.folder);
  const sessions = new Sessions(options.elapsedMs ?? (() => performance.now()));
  const calls = new Set<Promise<unknown>>();
  let signing = 0;
  const underWay = new UnderWay(options.onUnderWay);
  const begins =
    (kind: Begun) =>
    (work: Promise<void>): void =>
      underWay.begin(kind, work);
  const printJobs = new WorkJobs<Printed, JobProgress>(
    100,
    (error) => faultOf(error, 'tag.print'),
    begins('print'),
  );
  const importJobs = new WorkJobs<ImportOutcome>(
    5,
    (error) => faultOf(error, 'import.run'),
    begins('import'),
  );
  const exportJobs = new WorkJobs<ExportOutcome>(5, (error) => faultOf(error, 'record.export'));
  const verifyJobs = new WorkJobs<RecordVerification>(5, (error) => faultOf(error, 'ledger.verify-start'));
  const reportJobs = new WorkJobs<ReportOutcome>(20, (error) => faultOf(error, 'report.make'));
  const returnPlanJobs = new WorkJobs<PlannedReturns>(5, (error) => faultOf(error, 'return-plan.start'));
  const noticeJobs = new WorkJobs<RecordedNotice>(
    5,
    (error) => faultOf(error, 'notice.record'),
    begins('notice'),
  );
  const healthJobs = new WorkJobs<Examination>(5, (error) => faultOf(error, 'health.start'));
  const keeper = new Keeper((error, operation) => faultOf(error, operation), begins);
  const planner = new BenchPlanner((error) => faultOf(error, 'schedule.plan'));
  const now = options.now ?? (() => instant(new Date().toISOString()));

  const occasionBy =
    (by: string): OperationContext['occasion'] =>
    ({ timeZone }) => {
      const at = now();
      return { at, on: dateInZone(at, timeZone), by };
    };
  await keepKey(record.opened.ledger, occasionBy('station'));
  const clockWatch = new ClockWatch(now);
  const notes = new StationNotes(options.folder);
  await notes.noteStart(zoneOfPc(), now());

  /** What a person who stands back and waits for it must not be locked out of. */
  const isHeldOpen = (): boolean => printJobs.isWorking || noticeJobs.isWorking || signing > 0;

  const lockIfUnattended = async ({ session, from }: Request, { ledger }: RecordInUse): Promise<void> => {
    if (from === 'terminal' || sessions.idleMs(session) < leastUnattendedMs) return;
    if (isHeldOpen()) return sessions.attend(session);
    const station = await ledger.read((reader) => reader.station());
    if (sessions.idleMs(session) >= unattendedMs(station)) sessions.lock(session);
  };

  const contextOf = async (
    { session, from = 'window', language }: Request,
    { ledger, pins }: RecordInUse,
    after: AfterCall,
  ): Promise<OperationContext> => {
    const signedIn = sessions.of(session);
    const holder = await personOf(ledger, signedIn?.personId);
    if (holder === undefined && sessions.of(session)?.personId === signedIn?.personId)
      sessions.signOut(session);
    const isLocked = signedIn?.isLocked === true;
    const person = isLocked ? undefined : holder;
    const occasion = occasionBy(person?.personId ?? 'station');
    return {
      ledger,
      evidence,
      rules,
      pins: pins({ from, occasion }),
      printJobs,
      importJobs,
      exportJobs,
      verifyJobs,
      reportJobs,
      returnPlanJobs,
      noticeJobs,
      healthJobs,
      keeper,
      planner,
      clockWatch,
      notes,
      surroundings: options.surroundings,
      folder: options.folder,
      productFolder,
      language,
      person,
      now,
      openFile: options.openFile,
      randomBytes: options.randomBytes ?? randomBytes,
      occasion,
      restoreAfterwards: (restore) => {
        after.restore = restore;
      },
      session: {
        lockedFor: isLocked ? holder : undefined,
        attend: () => sessions.attend(session),
        idleMs: () => sessions.idleMs(session),
        signIn: (personId) => sessions.signIn(session, personId),
        signOut: () => sessions.signOut(session),
      },
    };
  };

  const run = async (request: Request, inUse: RecordInUse, after: AfterCall): Promise<unknown> => {
    const operation = contract.get(request.operation);
    if (operation === undefined)
      return refusal('operation-unknown', { operation: request.operation.slice(0, 60) });
    await lockIfUnattended(request, inUse);
    const context = await contextOf(request, inUse, after);
    const denied = denial(operation.access, context);
    if (denied !== undefined) return denied;
    if (isDeeperThan(request.input, mostLevels)) return refusal('input-too-deep');
    if (!isWellFormed(request.input))
      return refusal('input-invalid', { field: 'input', why: 'half a character' });
    const input = operation.input.safeParse(request.input, { reportInput: true });
    if (!input.success) return invalidInput(input.error, request.language);
    const run: (context: OperationContext, input: never) => Promise<unknown> = operation.run;
    const output = await whileSigning(input.data, () => run(context, input.data as never));
    return isRefusal(output) ? output : { output: operation.output.parse(output) };
  };

  const whileSigning = async <Output>(input: unknown, work: () => Promise<Output>): Promise<Output> => {
    const isSigned = typeof input === 'object' && input !== null && 'pin' in input;
    if (isSigned) signing += 1;
    try {
      return await work();
    } finally {
      if (isSigned) signing -= 1;
    }
  };

  const faultOf = async (error: unknown, operation: string): Promise<Refusal> => {
    try {
      return await storageRefusal(error, options.folder);
    } catch {
      options.onFault?.(error, operation);
      return refusal('internal-error');
    }
  };

  const answer = async (request: Request, inUse: RecordInUse, after: AfterCall): Promise<CallResult> => {
    try {
      const outcome = await run(request, inUse, after);
      if (!isRefusal(outcome)) return { ok: true, output: (outcome as { output: unknown }).output };
      return failed(outcome, request.language);
    } catch (error) {
      return failed(await faultOf(error, request.operation), request.language);
    }
  };

  const untilIdle = async (): Promise<void> => {
    await Promise.allSettled(calls);
    for (const jobs of [
      printJobs,
      importJobs,
      exportJobs,
      verifyJobs,
      reportJobs,
      returnPlanJobs,
      noticeJobs,
      healthJobs,
      keeper,
      planner,
    ])
      await jobs.close();
  };

  /** Nobody is signed in afterwards: the people of the restored record may be others. */
  const restore = async ({ plan, restored, by }: WantedRestore): Promise<Refusal | undefined> => {
    const inUse = await record.replace(plan, untilIdle);
    if (isRefusal(inUse)) return inUse;
    sessions.signOutAll();
    const { ledger } = inUse;
    await keepKey(ledger, occasionBy('station'));
    const station = await ledger.read(stationIn);
    if (isRefusal(station)) return station;
    const recorded = await ledger.append(occasionBy(by)(station), async () => [restored]);
    return isRefusal(recorded) ? recorded : undefined;
  };

  const begin = <Result>(work: Promise<Result>): Promise<Result> => {
    calls.add(work);
    return work.finally(() => calls.delete(work));
  };

  const call = async (request: Request): Promise<CallResult> => {
    clockWatch.look();
    const inUse = await record.current();
    if (isRefusal(inUse)) return failed(inUse, request.language);
    const after: AfterCall = {};
    const result = await begin(answer(request, inUse, after));
    if (!result.ok || after.restore === undefined) return result;
    const refused = await restore(after.restore).catch((error: unknown) => faultOf(error, request.operation));
    return refused === undefined ? result : failed(refused, request.language);
  };

  return {
    call: (request) => {
      const answered = call(request);
      if (contract.get(request.operation)?.kind === 'command') underWay.begin('command', answered);
      return answered;
    },
    underWay: () => underWay.kinds,
    whenIdle: () => underWay.whenNone(),
    endSession: (session) => sessions.signOut(session),
    lockSessions: () => sessions.lockAll(),
    keep: async () => {
      const inUse = await record.current();
      if (isRefusal(inUse)) return;
      const { ledger } = inUse;
      const occasion = occasionBy('station');
      await keeper.keep({ ledger, evidence, dataFolder: options.folder, occasion }, now());
    },
    close: async () => {
      await untilIdle();
      await record.close();
    },
  };
};

/** The shortest that can be set: before it nothing need be looked up. */
const leastUnattendedMs = unattendedMs({ unattendedMinutes: 1 });

/** Nobody where the person has left since. */
const personOf = async (ledger: Ledger, personId: string | undefined): Promise<Person | undefined> => {
  if (personId === undefined) return undefined;
  const person = await ledger.read((reader) => reader.person(personId));
  return person?.left === undefined ? person : undefined;
};

const denial = (access: Access, { person, session }: OperationContext): Refusal | undefined => {
  if (access === 'anyone') return undefined;
  if (session.lockedFor !== undefined) return refusal('session-locked', { name: session.lockedFor.name });
  if (person === undefined) return refusal('sign-in-needed');
  return access.some((role) => person.roles.includes(role))
    ? undefined
    : refusal('role-needed', { roles: access.join(', ') });
};

/** No input of the contract has half as many lists and objects within one another. */
const mostLevels = 50;

/** Level by level, for what is too deep is too deep to be walked down into. */
const isDeeperThan = (value: unknown, levels: number): boolean => {
  let level = [value];
  for (let depth = 0; depth <= levels; depth += 1) {
    level = level.flatMap((each) => (typeof each === 'object' && each !== null ? Object.values(each) : []));
    if (level.length === 0) return false;
  }
  return true;
};

/** False where a text holds half a surrogate pair, which has no canonical JSON (RFC 8785 §3.2.2.2). */
const isWellFormed = (value: unknown): boolean => {
  if (typeof value === 'string') return value.isWellFormed();
  return typeof value !== 'object' || value === null || Object.values(value).every(isWellFormed);
};

const invalidInput = (error: z.ZodError, language: Language): Refusal => {
  const issue = error.issues[0];
  const field = issue?.path.join('.') ?? '';
  const why = issue === undefined ? '' : issueText(issue, language);
  return refusal('input-invalid', { field: field === '' ? 'input' : field, why }, field);
};

const failed = (refused: Refusal, language: Language): CallResult => ({
  ok: false,
  error: {
    code: refused.code,
    sentence: sentenceOf(refused, language),
    ...(refused.field === undefined ? {} : { field: refused.field }),
  },
});

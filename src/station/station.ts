/** The station: the contract over one data folder, for every window, terminal and carrier that is connected to it. */
import { randomBytes } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import type { z } from 'zod';
import { type Instant, instant } from '../domain/brand.ts';
import { dateInZone } from '../domain/calendar.ts';
import type { Language } from '../domain/message.ts';
import type { Person } from '../domain/person.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { EvidenceFolder } from '../ledger/evidence-folder.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { openSqliteLedger } from '../ledger/sqlite/sqlite-ledger.ts';
import { storageRefusal } from '../ledger/storage-refusal.ts';
import type { JobProgress, Printed } from '../printing/destination.ts';
import { type CallResult, contract } from './contract.ts';
import type { ExportOutcome } from './exchange/export-record.ts';
import type { ImportOutcome } from './exchange/import-outcome.ts';
import type { Access, OperationContext } from './operation.ts';
import { pinGuard } from './pin.ts';
import type { ReportOutcome } from './reports/make-report.ts';
import { loadRules } from './rules.ts';
import { issueText, sentenceOf } from './sentence.ts';
import { keepKey } from './station-key.ts';
import type { RecordVerification } from './verify-record.ts';
import { WorkJobs } from './work-jobs.ts';

export interface StationOptions {
  /** The data folder; it is made where it does not exist. */
  readonly folder: string;
  /** Where the product's `assets` and `demo-data` are; beside the source where absent. */
  readonly productFolder?: string | undefined;
  readonly now?: (() => Instant) | undefined;
  readonly openFile?: ((path: string) => Promise<void>) | undefined;
  /** Told of a fault inside the program; the caller of the operation gets a plain sentence instead. */
  readonly onFault?: ((error: unknown, operation: string) => void) | undefined;
}

/** One request of a session: a window, or a terminal. */
export interface Request {
  readonly session: string;
  readonly operation: string;
  readonly input: unknown;
  readonly language: Language;
}

export interface Station {
  /** Never throws: every error is a value with a code and a sentence. */
  call(request: Request): Promise<CallResult>;
  /** Forgets who was signed in on a session. */
  endSession(session: string): void;
  /** Waits for what is under way, then gives the data folder free. */
  close(): Promise<void>;
}

export const openStation = async (options: StationOptions): Promise<Station | Refusal> => {
  const productFolder = options.productFolder ?? fileURLToPath(new URL('../..', import.meta.url));
  const rules = await loadRules(`${productFolder}/assets`);
  const ledger = await openSqliteLedger(options.folder);
  if (isRefusal(ledger)) return ledger;
  const evidence = new EvidenceFolder(options.folder);
  const signedIn = new Map<string, string>();
  const underWay = new Set<Promise<unknown>>();
  const pins = pinGuard(ledger);
  const printJobs = new WorkJobs<Printed, JobProgress>(100, (error) => faultOf(error, 'tag.print'));
  const importJobs = new WorkJobs<ImportOutcome>(5, (error) => faultOf(error, 'import.run'));
  const exportJobs = new WorkJobs<ExportOutcome>(5, (error) => faultOf(error, 'record.export'));
  const verifyJobs = new WorkJobs<RecordVerification>(5, (error) => faultOf(error, 'ledger.verify-start'));
  const reportJobs = new WorkJobs<ReportOutcome>(20, (error) => faultOf(error, 'report.make'));
  const now = options.now ?? (() => instant(new Date().toISOString()));

  const occasionBy =
    (by: string): OperationContext['occasion'] =>
    (station) => {
      const at = now();
      return { at, on: dateInZone(at, station.timeZone), by };
    };
  await keepKey(ledger, occasionBy('station'));

  const contextOf = async ({ session, language }: Request): Promise<OperationContext> => {
    const personId = signedIn.get(session);
    const person = await personOf(ledger, personId);
    if (person === undefined && signedIn.get(session) === personId) signedIn.delete(session);
    return {
      ledger,
      evidence,
      rules,
      pins,
      printJobs,
      importJobs,
      exportJobs,
      verifyJobs,
      reportJobs,
      folder: options.folder,
      productFolder,
      language,
      person,
      now,
      openFile: options.openFile,
      randomBytes,
      occasion: occasionBy(person?.personId ?? 'station'),
      session: {
        signIn: (personId) => void signedIn.set(session, personId),
        signOut: () => void signedIn.delete(session),
      },
    };
  };

  const run = async (request: Request): Promise<unknown> => {
    const operation = contract.get(request.operation);
    if (operation === undefined)
      return refusal('operation-unknown', { operation: request.operation.slice(0, 60) });
    const context = await contextOf(request);
    const denied = denial(operation.access, context.person);
    if (denied !== undefined) return denied;
    if (!isWellFormed(request.input))
      return refusal('input-invalid', { field: 'input', why: 'half a character' });
    const input = operation.input.safeParse(request.input);
    if (!input.success) return invalidInput(input.error, request.language);
    const run: (context: OperationContext, input: never) => Promise<unknown> = operation.run;
    const output = await run(context, input.data as never);
    return isRefusal(output) ? output : { output: operation.output.parse(output) };
  };

  const faultOf = async (error: unknown, operation: string): Promise<Refusal> => {
    try {
      return await storageRefusal(error, options.folder);
    } catch {
      options.onFault?.(error, operation);
      return refusal('internal-error');
    }
  };

  const answer = async (request: Request): Promise<CallResult> => {
    try {
      const outcome = await run(request);
      if (!isRefusal(outcome)) return { ok: true, output: (outcome as { output: unknown }).output };
      return failed(outcome, request.language);
    } catch (error) {
      return failed(await faultOf(error, request.operation), request.language);
    }
  };

  return {
    call: (request) => {
      const answering = answer(request);
      underWay.add(answering);
      return answering.finally(() => underWay.delete(answering));
    },
    endSession: (session) => void signedIn.delete(session),
    close: async () => {
      await Promise.allSettled(underWay);
      await printJobs.close();
      await importJobs.close();
      await exportJobs.close();
      await verifyJobs.close();
      await reportJobs.close();
      await ledger.close();
    },
  };
};

/** Nobody where the person has left since. */
const personOf = async (ledger: Ledger, personId: string | undefined): Promise<Person | undefined> => {
  if (personId === undefined) return undefined;
  const person = await ledger.read((reader) => reader.person(personId));
  return person?.left === undefined ? person : undefined;
};

const denial = (access: Access, person: Person | undefined): Refusal | undefined => {
  if (access === 'anyone') return undefined;
  if (person === undefined) return refusal('sign-in-needed');
  return access.some((role) => person.roles.includes(role))
    ? undefined
    : refusal('role-needed', { roles: access.join(', ') });
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

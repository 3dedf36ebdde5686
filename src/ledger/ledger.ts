/** The ledger as the station sees it: one append-only record, read through projections that are filled with it. */
import type { BenchId, CalendarDate, Instant } from '../domain/brand.ts';
import type { CustodySpell } from '../domain/custody/custody.ts';
import type { Decision } from '../domain/decide/decision.ts';
import type { Device, Standing } from '../domain/device.ts';
import type { Occasion, RecordedEvent } from '../domain/event.ts';
import type { Station } from '../domain/evolve.ts';
import type { CaseFile, CaseFileKind } from '../domain/held/case-file.ts';
import type { IdentityCase } from '../domain/identity/identity-case.ts';
import type { EarlierCases } from '../domain/identity/rank-candidates.ts';
import type { RegisteredDevice } from '../domain/identity/registered-device.ts';
import type { Inspection } from '../domain/inspection.ts';
import type { ModelSheet } from '../domain/model-sheet.ts';
import type { Person } from '../domain/person.ts';
import type { Notice } from '../domain/recall/notice.ts';
import type { Refusal } from '../domain/refusal.ts';
import type { Checkpoint } from './checkpoint.ts';

/** A person's PIN as scrypt left it, and the wrong tries since. Kept beside the record, never in it, never exported. */
export interface Credential {
  readonly personId: string;
  readonly salt: string;
  readonly hash: string;
  readonly failures: number;
  /** Moment in UTC until which no PIN is tried, or null. */
  readonly lockedUntil: string | null;
}

export interface DeviceQuery {
  /**
   * Words that must all occur in bench ID, maker, model, serial number or an other code. Letters and digits count; case,
   * accents, hyphens, spaces and other marks do not.
   */
  readonly search?: string | undefined;
  readonly standing?: readonly Standing[] | undefined;
  /** Only devices in service whose due date is before this date. */
  readonly dueBefore?: CalendarDate | undefined;
  /** Only devices in service whose due date is this date or later. */
  readonly dueFrom?: CalendarDate | undefined;
  /** Only devices whose tag nobody has scanned on them yet. */
  readonly unprovedTag?: boolean | undefined;
  /** Only devices that are out: with anybody, or with this person; `false` for those that nobody has. */
  readonly out?: boolean | { readonly userId: string } | undefined;
  /** Only devices that are out and were expected back before this date. */
  readonly returnBefore?: CalendarDate | undefined;
  /** Only devices that have their place there. */
  readonly storedAt?: string | undefined;
  readonly limit: number;
  readonly offset: number;
}

/** Which signed inspections are asked for; what is absent does not matter. */
export interface InspectionQuery {
  /** First and last calendar date of the signature. */
  readonly from?: CalendarDate | undefined;
  readonly until?: CalendarDate | undefined;
  readonly personId?: string | undefined;
  readonly verdict?: 'pass' | 'remove from service' | undefined;
  readonly benchId?: BenchId | undefined;
  readonly limit: number;
  readonly offset: number;
}

export interface DeviceRow {
  readonly device: Device;
  readonly modelSheet: ModelSheet;
}

export interface Counts {
  readonly devices: number;
  readonly inService: number;
  readonly neverInspected: number;
  readonly overdue: number;
  readonly dueSoon: number;
  readonly held: number;
  readonly openInspections: number;
  /** Devices whose tag nobody has scanned on them yet. */
  readonly unprovedTags: number;
  /** Devices with a user, those written off as lost among them. */
  readonly out: number;
  /** Devices in service that nobody has and that are not overdue. */
  readonly ready: number;
  /** Devices that were expected back before today. */
  readonly overdueReturns: number;
}

/** A device that must come to the bench one day: in service, or never inspected, and not written off as lost. */
export interface DeviceToPlan {
  readonly benchId: BenchId;
  /** Absent where it was never inspected. */
  readonly dueOn?: CalendarDate | undefined;
  readonly lastInspectedOn?: CalendarDate | undefined;
  /** Who has it, a person's ID; absent where it is in store. */
  readonly holderId?: string | undefined;
  /** When it is expected back from a job; absent where nobody said. */
  readonly outUntil?: CalendarDate | undefined;
}

/** Which times that somebody had a device are asked for: of one device or of one user. */
export type CustodyQuery = ({ readonly benchId: BenchId } | { readonly userId: string }) & {
  readonly limit: number;
  readonly offset: number;
};

/** Reads of one consistent state of the projections. */
export interface LedgerReader {
  station(): Promise<Station | undefined>;
  person(personId: string): Promise<Person | undefined>;
  personByBadge(badge: string): Promise<Person | undefined>;
  people(): Promise<readonly Person[]>;
  /** A secret of the station, kept beside the record and never exported. */
  secret(name: string): Promise<string | undefined>;
  credential(personId: string): Promise<Credential | undefined>;
  modelSheet(modelSheetId: string): Promise<ModelSheet | undefined>;
  modelSheets(): Promise<readonly ModelSheet[]>;
  device(benchId: BenchId): Promise<DeviceRow | undefined>;
  /** By any other code bound to it; letter case matters, surrounding space does not. */
  deviceByCode(code: string): Promise<BenchId | undefined>;
  /** By serial number, letter case aside, within one model sheet, or over all of them where none is given. */
  devicesBySerial(serial: string, modelSheetId?: string): Promise<readonly BenchId[]>;
  /** A page of the register, ordered by maker, model, serial number; `total` counts all that match. */
  devices(query: DeviceQuery): Promise<{ readonly rows: readonly DeviceRow[]; readonly total: number }>;
  /** At most `limit` of all bench IDs, in their order, from the first after `after` on. */
  benchIds(after: BenchId | undefined, limit: number): Promise<readonly BenchId[]>;
  /** At most `limit` of all devices, in the order of their bench IDs, from the first after `after` on. */
  devicesAfter(after: BenchId | undefined, limit: number): Promise<readonly DeviceRow[]>;
  /** In no order. */
  devicesToPlan(): Promise<readonly DeviceToPlan[]>;
  counts(today: CalendarDate, dueSoonUntil: CalendarDate): Promise<Counts>;
  inspection(inspection: number): Promise<Inspection | undefined>;
  /** Newest first. */
  inspectionsOf(benchId: BenchId): Promise<readonly Inspection[]>;
  /** A page of the signed inspections, the latest calendar date first, and of one date the highest number. */
  signedInspections(query: InspectionQuery): Promise<readonly Inspection[]>;
  openInspections(): Promise<readonly Inspection[]>;
  nextInspectionNumber(): Promise<number>;
  /** Of every device, what tells it from the others. */
  registeredDevices(): Promise<readonly RegisteredDevice[]>;
  identityCase(identityCase: number): Promise<IdentityCase | undefined>;
  /** Those that wait for a person, oldest first. */
  openIdentityCases(): Promise<readonly IdentityCase[]>;
  /** Those of which no device of the register was taken, and so lie somewhere under no name. */
  unrecognisedCases(): Promise<readonly IdentityCase[]>;
  /** Every notice of a manufacturer, the latest first. */
  notices(): Promise<readonly Notice[]>;
  /** How many were closed, and how many of them with none of these. */
  closedIdentityCases(): Promise<EarlierCases>;
  nextIdentityCaseNumber(): Promise<number>;
  caseFile(key: string): Promise<CaseFile | undefined>;
  /** All of a kind, or those in one of these phases, the newest first. */
  caseFiles<Kind extends CaseFileKind>(
    kind: Kind,
    phases?: readonly string[],
  ): Promise<readonly Extract<CaseFile, { kind: Kind }>[]>;
  nextCaseFileNumber(kind: CaseFileKind): Promise<number>;
  /** The latest first. */
  custodySpells(query: CustodyQuery): Promise<readonly CustodySpell[]>;
  /** The places that devices have in store, by code, with how many each. */
  places(): Promise<readonly { readonly place: string; readonly devices: number }[]>;
  /** How many events are recorded. */
  size(): Promise<number>;
  /** By its number. */
  event(seq: number): Promise<RecordedEvent | undefined>;
  /** The events that touch a device, oldest first. */
  eventsOf(benchId: BenchId): Promise<readonly RecordedEvent[]>;
  /** The canonical JSON of an event, the bytes that its hash is of. */
  eventText(seq: number): Promise<string | undefined>;
  /** The event with which an inspection was signed. */
  signatureOf(inspection: number): Promise<RecordedEvent | undefined>;
}

/** What may be written beside the events in the same transaction. */
export interface SideWriter {
  putCredential(credential: Credential): Promise<void>;
  /** Keeps the secret that is there already. */
  keepSecret(name: string, value: string): Promise<void>;
}

/** The size and root hash (hex) of the RFC 6962 Merkle tree over all events. */
export interface TreeHead {
  readonly size: number;
  readonly rootHash: string;
}

/** A checkpoint that the ledger keeps. */
export interface KeptCheckpoint {
  /** How many events it covers, from the first on. */
  readonly size: number;
  /** When the last event that it covers was recorded, moment in UTC. */
  readonly at: Instant;
  /** The signed note, to be kept elsewhere as it is. */
  readonly note: string;
}

export type LedgerFault =
  | { readonly kind: 'event changed'; readonly seq: number }
  | { readonly kind: 'event missing'; readonly seq: number }
  /** The stored hash over `events` events, the last of which is number `lastSeq`, is not theirs. */
  | { readonly kind: 'subtree differs'; readonly lastSeq: number; readonly events: number }
  /** A kept checkpoint of the ledger itself: its form, its signature, or its events. */
  | { readonly kind: 'checkpoint differs'; readonly size: number }
  /** The checkpoint that somebody kept elsewhere covers more than is recorded, or other events. */
  | { readonly kind: 'record lost events'; readonly covered: number; readonly recorded: number }
  | { readonly kind: 'record rewritten'; readonly covered: number }
  | { readonly kind: 'tree head does not match'; readonly stored: TreeHead; readonly computed: TreeHead }
  | { readonly kind: 'projection differs'; readonly table: string; readonly key: string }
  | { readonly kind: 'database damaged'; readonly detail: string };

export interface Verification {
  readonly sound: boolean;
  /** Of the events as they are now. */
  readonly head: TreeHead;
  /** How many checkpoints of its own were held against the events. */
  readonly checkpoints: number;
  /** At most 1,000 are named. */
  readonly faults: readonly LedgerFault[];
}

/**
 * `events` is the record itself: every event, every hash, every stored subtree, every checkpoint; of signatures that the
 * station can make again, only the half that nobody without its key can write. `file` adds the form of the file. `everything`
 * makes the projections and those signatures again as well.
 */
export type VerificationExtent = 'events' | 'file' | 'everything';

export interface VerifyOptions {
  /** Ends the verification; the promise is then rejected with the signal's reason. */
  readonly signal?: AbortSignal | undefined;
  /** Told how many of the events were looked at. */
  readonly onProgress?: ((progress: { readonly done: number; readonly of: number }) => void) | undefined;
  /** A checkpoint that was kept elsewhere: everything that it covers must still be there, as it was. */
  readonly kept?: Checkpoint | undefined;
  /** How much is looked at; everything where nothing is said. */
  readonly extent?: VerificationExtent | undefined;
}

/**
 * What the storage refuses (a full disk, a folder that cannot be written, a damaged file) comes as a refusal from `append`
 * and `appendAll`, and is thrown as `StorageFault` by the others. Nothing is half-written, and the next try works once the
 * cause is gone.
 */
export interface Ledger {
  /** One consistent read; reads do not wait for writes. */
  read<Result>(query: (reader: LedgerReader) => Promise<Result>): Promise<Result>;
  /**
   * Runs `decide` on the state as it is, alone, and records its events with their projections in one transaction that is
   * on the disk when the promise resolves (`synchronous=FULL`): that is what *acknowledged* means. A refusal records
   * nothing; an event that does not fit its schema throws and records nothing. Several batches may be given with their own
   * occasion through `appendAll`. Neither function may itself append: it would wait for itself.
   */
  append(
    occasion: Occasion,
    decide: (reader: LedgerReader) => Promise<Decision>,
    alongside?: (writer: SideWriter) => Promise<void>,
  ): Promise<readonly RecordedEvent[] | Refusal>;
  /** Only what is kept beside the record, such as the count of wrong PINs. */
  writeAside(write: (writer: SideWriter) => Promise<void>): Promise<void>;
  /**
   * Many decisions in one transaction, all or nothing; each sees the state that the ones before it left. Used to load the
   * demo fleet. Stops at the first refusal and records nothing.
   */
  appendAll(
    steps: AsyncIterable<{
      readonly occasion: Occasion;
      readonly decide: (reader: LedgerReader) => Promise<Decision>;
    }>,
  ): Promise<number | Refusal>;
  /**
   * Recomputes every hash, every stored subtree, every checkpoint and every projection from the events and names whatever
   * differs. Others go on reading and writing meanwhile.
   */
  verify(options?: VerifyOptions): Promise<Verification>;
  /** Throws the projections away and fills them again from the events; returns the number of events. */
  rebuild(): Promise<number>;
  /** Every event as its canonical JSON (RFC 8785), oldest first. */
  export(): AsyncIterable<string>;
  head(): Promise<TreeHead>;
  /**
   * A copy of one state of the whole record, with what is kept beside it, in a file that is not there yet; on the disk when
   * the promise resolves. Neither reads nor writes wait for it.
   */
  copyTo(file: string): Promise<void>;
  /**
   * The signed note over everything that is recorded; it is signed now where the latest checkpoint does not cover it all.
   * Refuses with `checkpoint-none` where nothing is recorded or the station has made no key. By itself the ledger signs one
   * with every signed inspection and one with the first events of each calendar day, in the transaction that records them.
   */
  checkpoint(): Promise<string | Refusal>;
  /** The signed note of the latest checkpoint. */
  latestCheckpoint(): Promise<string | undefined>;
  /** The latest `limit` checkpoints, newest first. */
  checkpoints(limit: number): Promise<readonly KeptCheckpoint[]>;
  /**
   * The proof that event `seq` is in the record, as text that can be checked offline (c2sp.org/tlog-proof); it costs
   * O(log n) reads. It is against `checkpoint`, a signed note that somebody kept, or else against the first checkpoint that
   * covers the event, so that it is the same whenever it is asked for. Refuses with `event-unknown`, `checkpoint-none`,
   * `checkpoint-malformed`, `checkpoint-does-not-cover`, `checkpoint-ahead` or `checkpoint-not-of-record`.
   */
  prove(seq: number, checkpoint?: string): Promise<string | Refusal>;
  /**
   * The consistency path (base64) from a signed note that somebody kept to the record as it is: nothing that the note covers
   * was changed or removed since. O(log n) reads. Refuses with `checkpoint-malformed`, `checkpoint-ahead` or
   * `checkpoint-not-of-record`. Whose signature it bears is not asked.
   */
  proveGrowth(checkpoint: string): Promise<readonly string[] | Refusal>;
  close(): Promise<void>;
}

/** The tables of the ledger in SQLite, and how a file of an older version becomes one of this version. */
import type { Kysely } from 'kysely';
import type { Standing } from '../../domain/device.ts';
import type { DueWhat } from '../../domain/due/due-date.ts';
import type { CaseFile } from '../../domain/held/case-file.ts';
import type { IdentityCase } from '../../domain/identity/identity-case.ts';
import type { Inspection } from '../../domain/inspection.ts';
import type { SqliteConnection } from './connection.ts';
import { fillSubtrees } from './fill-subtrees.ts';

export interface LedgerTables {
  event: EventTable;
  tree_head: TreeHeadTable;
  subtree: SubtreeTable;
  checkpoint: CheckpointTable;
  station: { id: 1; state: string };
  person: { person_id: string; badge: string; name_key: string; state: string };
  model_sheet: { model_sheet_id: string; manufacturer_key: string; model_key: string; state: string };
  device: DeviceTable;
  other_code: { code: string; bench_id: string };
  inspection: { inspection: number; bench_id: string; phase: Inspection['state']; state: string };
  identity_case: { identity_case: number; phase: IdentityCase['state']; state: string };
  notice: { notice: number; state: string };
  custody_spell: { spell: number; bench_id: string; user_id: string; state: string };
  case_file: CaseFileTable;
  credential: CredentialTable;
  secret: { name: string; value: string };
}
export type LedgerDatabase = Kysely<LedgerTables>;

/** `bytes` is the canonical JSON of the recorded event in UTF-8; `bench_id` and `inspection` repeat what it says. */
interface EventTable {
  seq: number;
  bytes: Buffer;
  leaf_hash: Buffer;
  bench_id: string | null;
  inspection: number | null;
}

/** The Merkle tree over all events; `frontier` is the roots of its perfect subtrees, the largest first. */
interface TreeHeadTable {
  id: 1;
  size: number;
  root_hash: Buffer;
  frontier: Buffer;
}

/** `hashes` is the roots of the perfect subtrees of 2, 4, 8, … events that end with event `last_seq`, one after the other. */
interface SubtreeTable {
  last_seq: number;
  hashes: Buffer;
}

/** `note` is the signed note over the first `size` events. */
interface CheckpointTable {
  size: number;
  note: string;
}

/** The `_key` columns are in the form in which they are ordered and compared; `search` in that of search words. */
interface DeviceTable {
  bench_id: string;
  model_sheet_id: string;
  manufacturer_key: string;
  model_key: string;
  serial_key: string;
  standing: Standing;
  /** The earliest of every rule that holds now and the tag; `due_what` says what for. Null while it is not in service. */
  due_on: string | null;
  due_what: DueWhat | null;
  /** 1 where the tag waits for its scan on the device. */
  unproved_tag: 0 | 1;
  /** Who has it; null in store. */
  custody_user: string | null;
  /** When it is expected back; null where nobody said, and where it is written off. */
  expected_on: string | null;
  stored_at: string | null;
  search: string;
  state: string;
}

/** `number` counts up within a kind, and is null where the key alone names it; `phase` is `recorded` where there is none. */
interface CaseFileTable {
  case_file: string;
  kind: CaseFile['kind'];
  number: number | null;
  phase: string;
  state: string;
}

interface CredentialTable {
  person_id: string;
  salt: string;
  hash: string;
  failures: number;
  locked_until: string | null;
}

/** The tables that can be filled again from the events, with their primary key; those that others refer to come first. */
export const projectionKeys = {
  station: 'id',
  person: 'person_id',
  model_sheet: 'model_sheet_id',
  device: 'bench_id',
  other_code: 'code',
  inspection: 'inspection',
  identity_case: 'identity_case',
  notice: 'notice',
  custody_spell: 'spell',
  case_file: 'case_file',
} as const satisfies Partial<Record<keyof LedgerTables, string>>;
export type ProjectionTable = keyof typeof projectionKeys;
export const projectionTables = Object.keys(projectionKeys) as readonly ProjectionTable[];

/**
 * The number at position n is what leads from version n to version n + 1; a released one is never edited.
 *
 * An event can be added only as the next one, which also keeps `INSERT OR REPLACE` from passing the other triggers.
 */
const migrations: readonly string[] = [
  `
  create table event (
    seq integer primary key,
    bytes blob not null,
    leaf_hash blob not null check (length(leaf_hash) = 32),
    bench_id text,
    inspection integer
  ) strict;
  create index event_by_device on event (bench_id, seq) where bench_id is not null;
  create index event_by_inspection on event (inspection, seq) where inspection is not null;
  create trigger event_follows before insert on event
    when new.seq is not (select coalesce(max(seq), 0) + 1 from event)
    begin select raise(abort, 'events follow one another without a gap'); end;
  create trigger event_unchanged before update on event
    begin select raise(abort, 'a recorded event is never changed'); end;
  create trigger event_kept before delete on event
    begin select raise(abort, 'a recorded event is never removed'); end;

  create table tree_head (
    id integer primary key check (id = 1),
    size integer not null,
    root_hash blob not null,
    frontier blob not null
  ) strict;
  insert into tree_head values
    (1, 0, x'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', x'');

  create table station (id integer primary key check (id = 1), state text not null) strict;

  create table person (
    person_id text primary key not null,
    badge text not null unique,
    name_key text not null,
    state text not null
  ) strict;

  create table model_sheet (
    model_sheet_id text primary key not null,
    manufacturer_key text not null,
    model_key text not null,
    state text not null
  ) strict;

  create table device (
    bench_id text primary key not null,
    model_sheet_id text not null references model_sheet deferrable initially deferred,
    manufacturer_key text not null,
    model_key text not null,
    serial_key text not null,
    standing text not null,
    due_on text,
    unproved_tag integer not null,
    search text not null,
    state text not null
  ) strict;
  create index device_in_order on device
    (manufacturer_key, model_key, serial_key, bench_id, standing, due_on, search);
  create index device_by_unproved_tag on device (unproved_tag) where unproved_tag = 1;
  create index device_by_standing on device (standing, due_on);
  create index device_by_serial on device (serial_key, model_sheet_id);
  create index device_by_model_sheet on device (model_sheet_id, bench_id);

  create table other_code (
    code text primary key not null,
    bench_id text not null references device deferrable initially deferred
  ) strict, without rowid;
  create index other_code_by_device on other_code (bench_id);

  create table inspection (
    inspection integer primary key,
    bench_id text not null references device deferrable initially deferred,
    phase text not null,
    state text not null
  ) strict;
  create index inspection_by_device on inspection (bench_id, inspection);
  create index inspection_open on inspection (inspection) where phase = 'open';

  create table credential (
    person_id text primary key not null references person deferrable initially deferred,
    salt text not null,
    hash text not null,
    failures integer not null,
    locked_until text
  ) strict;

  create table secret (name text primary key not null, value text not null) strict;
  `,
  `
  create table identity_case (
    identity_case integer primary key,
    phase text not null,
    state text not null
  ) strict;
  create index identity_case_by_phase on identity_case (phase, identity_case);
  `,
  `
  create table subtree (last_seq integer primary key, hashes blob not null) strict;
  create trigger subtree_follows before insert on subtree
    when new.last_seq is not (select coalesce(max(last_seq), 0) + 2 from subtree)
    begin select raise(abort, 'subtrees follow one another without a gap'); end;
  create trigger subtree_unchanged before update on subtree
    begin select raise(abort, 'a subtree is never changed'); end;
  create trigger subtree_kept before delete on subtree
    begin select raise(abort, 'a subtree is never removed'); end;

  create table checkpoint (size integer primary key, note text not null) strict;
  create trigger checkpoint_follows before insert on checkpoint
    when new.size <= (select coalesce(max(size), 0) from checkpoint)
    begin select raise(abort, 'a checkpoint covers more than the one before'); end;
  create trigger checkpoint_unchanged before update on checkpoint
    begin select raise(abort, 'a checkpoint is never changed'); end;
  create trigger checkpoint_kept before delete on checkpoint
    begin select raise(abort, 'a checkpoint is never removed'); end;
  `,
  `
  create index inspection_by_signature on inspection
    (json_extract(state, '$.signed.on'), inspection) where phase = 'signed';
  create index inspection_by_signer on inspection
    (json_extract(state, '$.signed.by'), json_extract(state, '$.signed.on'), inspection) where phase = 'signed';
  `,
  'alter table device add column due_what text;',
  `
  alter table device add column custody_user text;
  alter table device add column expected_on text;
  alter table device add column stored_at text;
  create index device_by_custody on device (custody_user, bench_id) where custody_user is not null;
  create index device_by_return on device (expected_on, bench_id) where custody_user is not null;
  create index device_by_place on device (stored_at, bench_id) where stored_at is not null;

  create table custody_spell (
    spell integer primary key,
    bench_id text not null references device deferrable initially deferred,
    user_id text not null,
    state text not null
  ) strict;
  create index custody_spell_by_device on custody_spell (bench_id, spell);
  create index custody_spell_by_user on custody_spell (user_id, spell);
  `,
  `
  create index device_out_by_standing on device (standing, due_on, custody_user) where custody_user is not null;
  `,
  `
  create table case_file (
    case_file text primary key not null,
    kind text not null,
    number integer,
    phase text not null,
    state text not null
  ) strict;
  create index case_file_by_kind on case_file (kind, phase, number);
  `,
  'create table notice (notice integer primary key, state text not null) strict;',
];

/** What SQL alone cannot compute, by the version that it leads to. */
const fills: Readonly<Record<number, (connection: SqliteConnection) => Promise<void>>> = {
  3: fillSubtrees,
};

export const schemaVersion = migrations.length;

/** The version of a file; 0 where nothing is in it. */
export const versionOf = async (connection: SqliteConnection): Promise<number> => {
  const [row] = await connection.all<{ user_version: number }>('pragma user_version');
  return row?.user_version ?? 0;
};

export const isEmpty = async (connection: SqliteConnection): Promise<boolean> => {
  const rows = await connection.all('select 1 from sqlite_schema limit 1');
  return rows.length === 0;
};

/** Each step is one transaction: a file is at one version or the next, never between. A new file takes all steps as one. */
export const migrate = async (connection: SqliteConnection): Promise<void> => {
  const version = await versionOf(connection);
  if (version === 0) return step(connection, migrations.join(';'), migrations.length);
  for (const [index, migration] of migrations.entries()) {
    if (index < version) continue;
    await step(connection, migration, index + 1, fills[index + 1]);
  }
};

/** `fill` makes from what is recorded already what the step adds. */
const step = async (
  connection: SqliteConnection,
  migration: string,
  version: number,
  fill?: (connection: SqliteConnection) => Promise<void>,
): Promise<void> => {
  try {
    await connection.exec(`begin immediate; ${migration}`);
    await fill?.(connection);
    await connection.exec(`pragma user_version = ${version}; commit`);
  } catch (error) {
    await connection.exec('rollback').catch(() => undefined);
    throw error;
  }
};

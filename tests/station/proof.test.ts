/** Checkpoints and proofs through the contract: what is handed out, what is checked, and what is kept elsewhere. */
import { execFileSync } from 'node:child_process';
import { createPublicKey } from 'node:crypto';
import { cp, mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readCheckpoint } from '../../src/ledger/checkpoint.ts';
import { readNoteKey } from '../../src/ledger/signed-note.ts';
import { requireTool } from '../support/debian-tools.ts';
import {
  demo,
  demoStation,
  type TestStation,
  temporaryFolder,
  testStation,
} from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';

const setUpStation = {
  name: 'Cold Ridge depot',
  timeZone: 'America/Denver',
  lengthUnit: 'ft' as const,
  administrator: { name: 'Mara Quill', badge: 'CR20011', pin: '602214' },
};

const event = (seq: number) => ({ kind: 'event' as const, seq });

/** Walks and signs the inspection of the first device that is due, and returns its number. */
const inspected = async (station: TestStation): Promise<number> => {
  const { devices } = await station.expectOutput('device.list', { standing: ['in service'], limit: 1 });
  const { inspection } = await walk(station, devices[0]!.benchId);
  await station.expectOutput('inspection.sign', { inspection, pin: demo.pin });
  return inspection;
};

describe('a checkpoint', () => {
  test('is signed by a station from its set-up on, under the key that its record names', async () => {
    const { expectOutput } = await testStation();
    expect(await expectOutput('checkpoint.list', {})).toEqual({ recorded: 0, checkpoints: [] });
    await expectOutput('station.setup', setUpStation);
    const { recorded, key, checkpoints } = await expectOutput('checkpoint.list', {});
    expect(checkpoints).toMatchObject([{ size: recorded }]);
    expect(readNoteKey(key!)!.name).toBe(readCheckpoint(checkpoints[0]!.note)!.origin);
  });

  test('is signed with every signed inspection, and covers it', async () => {
    const station = await demoStation();
    const before = await station.expectOutput('checkpoint.list', { limit: 1 });
    await inspected(station);
    const after = await station.expectOutput('checkpoint.list', { limit: 1 });
    expect(after.checkpoints[0]!.size).toBe(after.recorded);
    expect(after.recorded).toBeGreaterThan(before.recorded);
  });

  test('is signed when a station is opened again, over what none covers yet', async () => {
    const station = await demoStation();
    await station.expectOutput('session.sign-in', { badge: demo.administrator });
    await station.expectOutput('person.add', { name: 'Ola Brandt', badge: 'HP10099', roles: ['user'] });
    await station.expectOutput('person.add', { name: 'Ode Brandt', badge: 'HP10098', roles: ['user'] });
    const before = await station.expectOutput('checkpoint.list', { limit: 1 });
    const again = await station.reopen();
    const after = await again.expectOutput('checkpoint.list', { limit: 1 });
    expect(after.recorded).toBe(before.recorded);
    expect(before.checkpoints[0]!.size).toBeLessThan(before.recorded);
    expect(after.checkpoints[0]!.size).toBe(after.recorded);
  });

  test.runIf(requireTool('openssl'))(
    'bears a signature that OpenSSL finds good, and no more once it is changed',
    async () => {
      const station = await demoStation();
      const { key, checkpoints } = await station.expectOutput('checkpoint.list', { limit: 1 });
      const { note } = readCheckpoint(checkpoints[0]!.note)!;
      const folder = await temporaryFolder();
      const file = (name: string) => join(folder, name);
      const x = readNoteKey(key!)!.publicKey.toString('base64url');
      const publicKey = createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x }, format: 'jwk' });
      await writeFile(file('key.pem'), publicKey.export({ type: 'spki', format: 'pem' }));
      await writeFile(file('signature'), note.signatures[0]!.signature);
      const opensslSays = async (text: string): Promise<string> => {
        await writeFile(file('text'), text);
        const args = [
          'pkeyutl',
          '-verify',
          '-pubin',
          '-inkey',
          file('key.pem'),
          '-rawin',
          '-in',
          file('text'),
        ];
        try {
          return execFileSync('openssl', [...args, '-sigfile', file('signature')], { encoding: 'utf8' });
        } catch {
          return 'refused';
        }
      };
      expect(await opensslSays(note.text)).toContain('Signature Verified Successfully');
      expect(await opensslSays(note.text.replace(/\n\d+\n/, '\n7\n'))).toBe('refused');
    },
  );

  test('is written to a folder under one name, and to the file that is named', async () => {
    const station = await demoStation();
    const folder = await temporaryFolder();
    const first = await station.expectOutput('checkpoint.export', { path: folder });
    expect(await readdir(folder)).toHaveLength(1);
    expect(first.path).toMatch(/srl-bench-[0-9a-f-]{36}\.checkpoint$/);
    await inspected(station);
    const second = await station.expectOutput('checkpoint.export', { path: folder });
    expect(second).toMatchObject({ path: first.path, before: first.size });
    expect(second.size).toBeGreaterThan(first.size);
    expect(await readdir(folder)).toHaveLength(1);
    expect(readCheckpoint(await readFile(first.path, 'utf8'))!.size).toBe(second.size);
    const named = await station.expectOutput('checkpoint.export', { path: join(folder, 'mine.txt') });
    expect(named.key).toBe((await station.expectOutput('checkpoint.list', {})).key);
    expect(await readFile(named.path)).toEqual(await readFile(first.path));
  });

  test('does not take the place of another file, of another station, or of one that covers more', async () => {
    const station = await demoStation();
    const { path } = await station.expectOutput('checkpoint.export', { path: await temporaryFolder() });
    const text = await readFile(path, 'utf8');
    const refusedFor = async (there: string) => {
      await writeFile(path, there);
      const { code } = await station.expectError('checkpoint.export', { path });
      expect(await readFile(path, 'utf8')).toBe(there);
      return code;
    };
    expect(await refusedFor('Bring bolts.')).toBe('checkpoint-place-taken');
    expect(await refusedFor(text.replace(/\n\d+\n/, '\n1\n'))).toBe('checkpoint-signature-wrong');
    const other = await testStation();
    await other.expectOutput('station.setup', setUpStation);
    const [theirs] = (await other.expectOutput('checkpoint.list', {})).checkpoints;
    expect(await refusedFor(theirs!.note)).toBe('checkpoint-of-other-station');
    const ahead = await testStation({ folder: await copyOf(station) }, station.clock);
    await ahead.expectOutput('session.sign-in', { badge: demo.inspector });
    await inspected(ahead);
    const [later] = (await ahead.expectOutput('checkpoint.list', { limit: 1 })).checkpoints;
    expect(await refusedFor(later!.note)).toBe('checkpoint-ahead');
  });

  test('is refused a place that is no whole path, or no place at all', async () => {
    const { expectError, folder } = await demoStation();
    expect(await expectError('checkpoint.export', { path: 'here' })).toMatchObject({
      code: 'path-not-absolute',
    });
    const nowhere = join(folder, 'not', 'there', 'x.checkpoint');
    expect((await expectError('checkpoint.export', { path: nowhere })).code).toBe(
      'checkpoint-place-unwritable',
    );
  });
});

/** The record of a station as it is now; nothing is written while it is copied. */
const copyOf = async (station: TestStation): Promise<string> => {
  const folder = join(await temporaryFolder(), 'copy');
  await mkdir(folder);
  for (const name of ['ledger.sqlite', 'ledger.sqlite-wal'])
    await cp(join(station.folder, name), join(folder, name)).catch(() => undefined);
  return folder;
};

describe('a proof', () => {
  test('of the signature of an inspection holds at another place, with nothing but the public key', async () => {
    const station = await demoStation();
    const inspection = await inspected(station);
    const { seq, proof, record } = await station.expectOutput('ledger.prove', {
      what: { kind: 'inspection', inspection },
    });
    expect(JSON.parse(record)).toMatchObject({ seq, event: { type: 'inspection.signed', inspection } });
    const { key } = await station.expectOutput('checkpoint.list', {});
    const elsewhere = await testStation();
    const held = await elsewhere.expectOutput('ledger.check-proof', { proof, record, key: key! });
    expect(held).toMatchObject({ seq, key, isKept: false });
    expect(await station.expectOutput('ledger.check-proof', { proof, record })).toEqual(held);
  });

  test('does not hold for another record, under another key, or once it is changed', async () => {
    const station = await demoStation();
    const { proof, record } = await station.expectOutput('ledger.prove', { what: event(30) });
    const { key } = await station.expectOutput('checkpoint.list', {});
    const other = await testStation();
    await other.expectOutput('station.setup', setUpStation);
    const otherKey = (await other.expectOutput('checkpoint.list', {})).key!;
    const code = async (input: { proof?: string; record?: string; key?: string }) =>
      (await station.expectError('ledger.check-proof', { proof, record, key: key!, ...input })).code;
    expect(await code({ record: record.replace('2', '3') })).toBe('proof-of-other-record');
    expect(await code({ proof: proof.replace('index 29', 'index 28') })).toBe('proof-of-other-record');
    expect(await code({ key: otherKey })).toBe('proof-of-other-station');
    expect(await code({ key: 'srl-bench/x+00' })).toBe('key-malformed');
    expect(await code({ proof: 'index 3' })).toBe('proof-malformed');
    const origin = readCheckpoint(proof.slice(proof.indexOf('\n\n') + 2))!.origin;
    const renamed = `${origin}-b`;
    expect(await code({ proof: proof.replaceAll(origin, renamed) })).toBe('proof-of-other-station');
    const signature = proof.trimEnd();
    const at = signature.length - 12;
    const flipped = `${signature.slice(0, at)}${signature[at] === 'A' ? 'B' : 'A'}${signature.slice(at + 1)}\n`;
    expect(await code({ proof: flipped })).toBe('checkpoint-signature-wrong');
  });

  test('is given against a checkpoint that was kept, and says that it is the one', async () => {
    const station = await demoStation();
    const checkpoint = (await station.expectOutput('checkpoint.list', { limit: 1 })).checkpoints[0]!.note;
    await inspected(station);
    const against = await station.expectOutput('ledger.prove', { what: event(12), checkpoint });
    const { proof, record } = against;
    expect(await station.expectOutput('ledger.check-proof', { proof, record, checkpoint })).toMatchObject({
      seq: 12,
      isKept: true,
    });
    const first = await station.expectOutput('ledger.prove', { what: event(12) });
    expect(
      (await station.expectError('ledger.check-proof', { proof: first.proof, record, checkpoint })).code,
    ).toBe('proof-of-other-checkpoint');
  });

  test('is refused of what is not there, and of an inspection that nobody signed', async () => {
    const station = await demoStation();
    const refusedFor = async (what: Parameters<typeof station.expectError<'ledger.prove'>>[1]['what']) =>
      (await station.expectError('ledger.prove', { what })).code;
    expect(await refusedFor(event(999_999))).toBe('event-unknown');
    expect(await refusedFor({ kind: 'inspection', inspection: 99_999 })).toBe('inspection-unknown');
    const { devices } = await station.expectOutput('device.list', { standing: ['in service'], limit: 1 });
    const { inspection } = await station.expectOutput('inspection.start', { benchId: devices[0]!.benchId });
    expect(await refusedFor({ kind: 'inspection', inspection: inspection.inspection })).toBe(
      'inspection-not-signed',
    );
  });
});

describe('verification as a long work', () => {
  const ended = async (station: TestStation, job: number) => {
    for (;;) {
      const status = await station.expectOutput('ledger.verify-status', { job });
      if (status.state !== 'working') return status;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  };

  test('ends with what the verification at once says, and holds a kept checkpoint against the record', async () => {
    const station = await demoStation();
    const checkpoint = (await station.expectOutput('checkpoint.list', { limit: 1 })).checkpoints[0]!;
    const { job } = await station.expectOutput('ledger.verify-start', { checkpoint: checkpoint.note });
    const verified = await ended(station, job);
    expect(verified).toMatchObject({ state: 'verified', sound: true, keptSize: checkpoint.size });
    const atOnce = await station.expectOutput('ledger.verify', { checkpoint: checkpoint.note });
    expect(verified).toEqual({ state: 'verified', ...atOnce });
  });

  test('is canceled, and says so', async () => {
    const station = await demoStation();
    const { job } = await station.expectOutput('ledger.verify-start', {});
    await station.expectOutput('ledger.verify-cancel', { job });
    expect(await ended(station, job)).toMatchObject({ state: 'refused', code: 'verify-canceled' });
    expect((await station.expectError('ledger.verify-cancel', { job: 99 })).code).toBe(
      'verify-job-not-known',
    );
  });

  test('refuses a checkpoint of another station, and what is none', async () => {
    const station = await demoStation();
    const other = await testStation();
    await other.expectOutput('station.setup', setUpStation);
    const [theirs] = (await other.expectOutput('checkpoint.list', {})).checkpoints;
    const code = async (checkpoint: string) =>
      (await station.expectError('ledger.verify', { checkpoint })).code;
    expect(await code(theirs!.note)).toBe('checkpoint-of-other-station');
    expect(await code('a shopping list')).toBe('checkpoint-malformed');
    const { job } = await station.expectOutput('ledger.verify-start', { checkpoint: 'a shopping list' });
    expect(await ended(station, job)).toMatchObject({ state: 'refused', code: 'checkpoint-malformed' });
  });
});

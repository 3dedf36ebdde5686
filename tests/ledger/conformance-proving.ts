/** What every ledger must prove about what it recorded: checkpoints, inclusion and growth. */
import { describe, expect, it } from 'vitest';
import type { DomainEvent, Occasion, RecordedEvent } from '../../src/domain/event.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import { readCheckpoint } from '../../src/ledger/checkpoint.ts';
import {
  checkpointKeyFrom,
  checkpointKeyOf,
  newCheckpointSecret,
  signCheckpoint,
} from '../../src/ledger/checkpoint-key.ts';
import { readProof } from '../../src/ledger/inclusion-proof.ts';
import type { Ledger } from '../../src/ledger/ledger.ts';
import { judgeNote } from '../../src/ledger/signed-note.ts';
import { leafOf, rootByPath, rootsBySubproof } from './proof-by-definition.ts';
import { benchId, deviceRegistered, inspectedDevice, occasion, occasionOn, setUp } from './sample-events.ts';

interface ProvingBench {
  readonly ledger: Ledger;
  record(events: readonly DomainEvent[], when?: Occasion): Promise<readonly RecordedEvent[]>;
  exported(): Promise<readonly string[]>;
  reopen(): Promise<Ledger>;
}

/** The station of the sample events signs under this name. */
const origin = 'srl-bench/harrow-point';

export const provingConformance = (bench: () => ProvingBench): void => {
  const made = async (): Promise<readonly DomainEvent[]> => {
    const { publicKey } = await checkpointKeyOf(bench().ledger);
    return [...setUp, { type: 'station.key-made', publicKey }];
  };
  const text = (value: unknown): string => {
    if (typeof value !== 'string') throw new Error(JSON.stringify(value));
    return value;
  };
  const sizesOf = async () => (await bench().ledger.checkpoints(100)).map(({ size }) => size).reverse();
  const noteKey = async () => {
    const { publicKey } = await checkpointKeyOf(bench().ledger);
    return { name: origin, publicKey: Buffer.from(publicKey, 'base64') };
  };

  describe('checkpoints', () => {
    it('are none while the station has no key', async () => {
      const { ledger, record } = bench();
      expect(await ledger.checkpoint()).toMatchObject({ code: 'checkpoint-none' });
      await record(setUp);
      expect(await ledger.latestCheckpoint()).toBeUndefined();
      expect(await ledger.checkpoint()).toMatchObject({ code: 'checkpoint-none' });
      expect(await ledger.checkpoints(10)).toEqual([]);
      expect(await ledger.prove(1)).toMatchObject({ code: 'checkpoint-none' });
    });

    it('are signed with the first events of a day and with every signed inspection, and with nothing else', async () => {
      const { record } = bench();
      await record(await made());
      expect(await sizesOf()).toEqual([5]);
      await record([deviceRegistered(benchId(90), 'A')]);
      expect(await sizesOf()).toEqual([5]);
      await record(inspectedDevice(0));
      expect(await sizesOf()).toEqual([5, 12]);
      await record([deviceRegistered(benchId(91), 'B')], occasionOn('2026-03-03'));
      await record([deviceRegistered(benchId(92), 'C')], occasionOn('2026-03-03'));
      expect(await sizesOf()).toEqual([5, 12, 13]);
      await record([]);
      expect(await sizesOf()).toEqual([5, 12, 13]);
    });

    it('come with every inspection that is loaded, too', async () => {
      const { ledger } = bench();
      const events = await made();
      await ledger.appendAll(
        (async function* () {
          yield { occasion, decide: async () => events };
          yield { occasion, decide: async () => inspectedDevice(0) };
          yield { occasion, decide: async () => inspectedDevice(1) };
        })(),
      );
      expect(await sizesOf()).toEqual([5, 11, 17]);
    });

    it('say size and root of the tree, and bear the signature of the station', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record(inspectedDevice(0));
      const note = text(await ledger.latestCheckpoint());
      const checkpoint = readCheckpoint(note)!;
      expect({ size: checkpoint.size, rootHash: checkpoint.rootHash.toString('hex') }).toEqual(
        await ledger.head(),
      );
      expect(checkpoint.origin).toBe(origin);
      expect(judgeNote(checkpoint.note, await noteKey())).toBe('good');
      expect((await ledger.checkpoints(1))[0]).toEqual({ size: 11, at: occasion.at, note });
    });

    it('can be asked for at any time, and are signed anew only where something is not covered', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record([deviceRegistered(benchId(90), 'A')]);
      const note = text(await ledger.checkpoint());
      expect(readCheckpoint(note)).toMatchObject({ size: 6 });
      expect(await ledger.checkpoint()).toBe(note);
      expect(await sizesOf()).toEqual([5, 6]);
    });

    it('are the same after the ledger was closed and opened again', async () => {
      const { ledger, record, reopen } = bench();
      await record(await made());
      await record(inspectedDevice(0));
      const before = await ledger.checkpoints(10);
      expect(await (await reopen()).checkpoints(10)).toEqual(before);
    });

    it('are not signed, and nothing is recorded, where the key is not the one in the record', async () => {
      const { ledger, record } = bench();
      await record(await made());
      const other: DomainEvent = {
        type: 'station.key-made',
        publicKey: checkpointKeyFrom(newCheckpointSecret()).publicKey,
      };
      expect(await ledger.append(occasionOn('2026-03-03'), async () => [other])).toMatchObject({
        code: 'ledger-damaged',
      });
      expect((await ledger.head()).size).toBe(5);
    });
  });

  describe('proofs of inclusion', () => {
    it('of every event lead from its exported bytes to the root of the first checkpoint that covers it', async () => {
      const { ledger, record, exported } = bench();
      await record(await made());
      for (let n = 0; n < 9; n += 1) await record(inspectedDevice(n));
      const sizes = await sizesOf();
      for (const [index, line] of (await exported()).entries()) {
        const proof = readProof(text(await ledger.prove(index + 1)))!;
        const { size, rootHash } = proof.checkpoint;
        expect(proof.index).toBe(index);
        expect(size).toBe(sizes.find((each) => each > index));
        expect(rootByPath(index, size, leafOf(Buffer.from(line)), proof.path)).toEqual(rootHash);
        expect(judgeNote(proof.checkpoint.note, await noteKey())).toBe('good');
      }
    });

    it('of an event that no checkpoint covers yet has one signed for it', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record([deviceRegistered(benchId(90), 'A')]);
      expect(readProof(text(await ledger.prove(6)))).toMatchObject({ index: 5, checkpoint: { size: 6 } });
      expect(await sizesOf()).toEqual([5, 6]);
    });

    it('stay the same, however the record grows', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record(inspectedDevice(0));
      const before = await ledger.prove(7);
      for (let n = 1; n < 6; n += 1) await record(inspectedDevice(n));
      expect(await ledger.prove(7)).toBe(before);
    });

    it('stand against a checkpoint that somebody kept', async () => {
      const { ledger, record, exported } = bench();
      await record(await made());
      await record(inspectedDevice(0));
      await record(inspectedDevice(1));
      const kept = text(await ledger.latestCheckpoint());
      for (let n = 2; n < 6; n += 1) await record(inspectedDevice(n));
      const proof = readProof(text(await ledger.prove(3, kept)))!;
      expect(proof.checkpoint).toEqual(readCheckpoint(kept));
      const leaf = leafOf(Buffer.from((await exported())[2]!));
      expect(rootByPath(2, 17, leaf, proof.path)).toEqual(proof.checkpoint.rootHash);
      expect(await ledger.prove(18, kept)).toMatchObject({ code: 'checkpoint-does-not-cover' });
    });

    it('are refused of an event that is not there', async () => {
      const { ledger, record } = bench();
      await record(await made());
      expect(await ledger.prove(6)).toMatchObject({ code: 'event-unknown', values: { seq: 6 } });
      expect(await ledger.prove(0)).toMatchObject({ code: 'event-unknown' });
    });
  });

  describe('proofs of growth', () => {
    it('from every checkpoint show by the definition that the record of today begins with it', async () => {
      const { ledger, record } = bench();
      await record(await made());
      for (let n = 0; n < 9; n += 1) await record(inspectedDevice(n));
      const { size, rootHash } = await ledger.head();
      for (const { note } of await ledger.checkpoints(100)) {
        const kept = readCheckpoint(note)!;
        const path = await ledger.proveGrowth(note);
        if (isRefusal(path)) throw new Error(path.code);
        const hashes = path.map((hash) => Buffer.from(hash, 'base64'));
        expect(rootsBySubproof(kept.size, size, kept.rootHash, hashes)).toEqual({
          earlier: kept.rootHash,
          later: Buffer.from(rootHash, 'hex'),
        });
      }
    });

    it('are refused to a checkpoint of more than is recorded, of other events, and to what is none', async () => {
      const { ledger, record } = bench();
      await record(await made());
      const key = await checkpointKeyOf(ledger);
      const signed = (size: number) =>
        signCheckpoint('harrow-point', key, { size, rootHash: Buffer.alloc(32, 7) });
      expect(await ledger.proveGrowth(signed(6))).toMatchObject({
        code: 'checkpoint-ahead',
        values: { size: 6, recorded: 5 },
      });
      expect(await ledger.prove(2, signed(6))).toMatchObject({ code: 'checkpoint-ahead' });
      expect(await ledger.proveGrowth(signed(3))).toMatchObject({ code: 'checkpoint-not-of-record' });
      expect(await ledger.prove(2, signed(3))).toMatchObject({ code: 'checkpoint-not-of-record' });
      expect(await ledger.proveGrowth('a note')).toMatchObject({ code: 'checkpoint-malformed' });
      expect(await ledger.prove(2, 'a note')).toMatchObject({ code: 'checkpoint-malformed' });
    });
  });

  describe('verification with a checkpoint that was kept elsewhere', () => {
    it('holds while everything under it is there, and says how many checkpoints it looked at', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record(inspectedDevice(0));
      const kept = readCheckpoint(text(await ledger.latestCheckpoint()))!;
      for (let n = 1; n < 4; n += 1) await record(inspectedDevice(n));
      expect(await ledger.verify({ kept })).toMatchObject({
        sound: true,
        checkpoints: 5,
        head: { size: 29 },
      });
      expect(await ledger.verify({ kept, extent: 'events' })).toMatchObject({
        sound: true,
        checkpoints: 5,
      });
    });

    it('names how much of it is missing, or that it is of other events', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record(inspectedDevice(0));
      const head = await ledger.head();
      const kept = (size: number) => ({ origin, size, rootHash: Buffer.from(head.rootHash, 'hex') });
      expect((await ledger.verify({ kept: kept(12) })).faults).toEqual([
        { kind: 'record lost events', covered: 12, recorded: 11 },
      ]);
      expect((await ledger.verify({ kept: kept(10) })).faults).toEqual([
        { kind: 'record rewritten', covered: 10 },
      ]);
    });

    it('tells how far it is, and ends when it is told to', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record(Array.from({ length: 400 }, (_, n) => inspectedDevice(n)).flat());
      const seen: number[] = [];
      await ledger.verify({ onProgress: ({ done, of }) => seen.push(done, of) });
      expect(seen).toEqual([1000, 2405, 2000, 2405, 2405, 2405]);
      const controller = new AbortController();
      const ending = ledger.verify({ signal: controller.signal, onProgress: () => controller.abort() });
      await expect(ending).rejects.toThrow('aborted');
      expect((await ledger.verify()).sound).toBe(true);
    });
  });

  describe('the bytes of one event', () => {
    it('are those of the export', async () => {
      const { ledger, record, exported } = bench();
      await record(await made());
      const lines = await exported();
      expect(await ledger.read((reader) => reader.eventText(4))).toBe(lines[3]);
      expect(await ledger.read((reader) => reader.eventText(6))).toBeUndefined();
    });

    it('are found by the inspection that they sign', async () => {
      const { ledger, record } = bench();
      await record(await made());
      await record(inspectedDevice(0));
      const signature = await ledger.read((reader) => reader.signatureOf(1));
      expect(signature).toMatchObject({ seq: 11, event: { type: 'inspection.signed', inspection: 1 } });
      expect(await ledger.read((reader) => reader.signatureOf(2))).toBeUndefined();
    });
  });
};

/** What the disk refuses, through the contract: one clear sentence, nothing lost, and on it goes when there is room. */
import { readdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isRefusal } from '../../src/domain/refusal.ts';
import { openStation } from '../../src/station/station.ts';
import { requireSmallDisk } from '../support/small-disk.ts';
import { testStation } from '../support/station-fixture.ts';

const setup = {
  name: 'Cold Ridge depot',
  timeZone: 'America/Denver',
  lengthUnit: 'ft' as const,
  administrator: { name: 'Mara Quill', badge: 'CR20011', pin: '602214' },
};

/** Leaves less than a page of room on the disk. */
const fill = async (folder: string): Promise<void> => {
  for (let size = 1 << 20; size >= 1 << 10; size >>= 1) {
    for (let n = 0; ; n += 1) {
      try {
        await writeFile(join(folder, `fill-${size}-${n}`), Buffer.alloc(size));
      } catch {
        break;
      }
    }
  }
};

const makeRoom = async (folder: string): Promise<void> => {
  for (const name of await readdir(folder)) if (name.startsWith('fill-')) await rm(join(folder, name));
};

describe('a disk that is full', () => {
  test('refuses a change and a tag with a sentence, loses nothing, and goes on when there is room', async (context) => {
    const disk = await requireSmallDisk(context, 6 * 1024);
    try {
      const station = await testStation({ folder: disk.folder });
      await station.expectOutput('station.setup', setup);
      const before = (await station.expectOutput('ledger.verify', {})).head;
      await fill(disk.folder);
      const error = await station.expectError('person.add', {
        name: 'Jonas Veld',
        badge: 'CR20028',
        roles: ['user'],
      });
      expect(error).toMatchObject({ code: 'disk-full' });
      expect(error.sentence).toMatch(/Make room/);
      expect(await station.expectError('ledger.export', {})).toMatchObject({ code: 'disk-full' });
      await makeRoom(disk.folder);
      expect((await station.expectOutput('ledger.verify', {})).head).toEqual(before);
      await station.expectOutput('person.add', { name: 'Jonas Veld', badge: 'CR20028', roles: ['user'] });
      expect(await station.expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
      await station.close();
    } finally {
      await disk.remove();
    }
  });
});

describe('a folder that cannot be written', () => {
  test('is named in a sentence, and is not opened', async (context) => {
    const disk = await requireSmallDisk(context, 1024);
    try {
      disk.remount('ro');
      const refused = await openStation({ folder: disk.folder });
      expect(isRefusal(refused) && [refused.code, refused.values.folder]).toEqual([
        'folder-not-writable',
        disk.folder,
      ]);
    } finally {
      await disk.remove();
    }
  });
});

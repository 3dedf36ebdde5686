import { once } from 'node:events';
import { rm } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { newFolder, opened, spawnStation } from './sqlite-places.ts';

const kills = 12;

it(`keeps everything that was acknowledged, and nothing half-written, over ${kills} kills in the middle of recording`, async () => {
  const folder = await newFolder();
  let acknowledged = 0;
  for (let round = 0; round < kills; round += 1) {
    const child = spawnStation('append', folder);
    let output = '';
    child.stdout.on('data', (chunk: Buffer) => {
      output += chunk.toString();
    });
    const closed = once(child, 'close');
    await once(child.stdout, 'data');
    await setTimeout(Math.random() * 150);
    child.kill('SIGKILL');
    await closed;
    const before = acknowledged;
    acknowledged = Number(output.slice(0, output.lastIndexOf('\n')).split('\n').at(-1));
    expect(acknowledged).toBeGreaterThan(before);

    const ledger = await opened(folder);
    const { sound, head, faults } = await ledger.verify();
    expect(faults).toEqual([]);
    expect(sound).toBe(true);
    expect(head).toEqual(await ledger.head());
    expect(head.size).toBeGreaterThanOrEqual(acknowledged);
    // Every append after the first, of 4 events, is of 6: a whole one more may have reached the disk unacknowledged.
    expect((head.size - acknowledged) % 6).toBe(0);
    expect(head.size - acknowledged).toBeLessThanOrEqual(6);
    await ledger.close();
  }
  await rm(folder, { recursive: true });
}, 180_000);

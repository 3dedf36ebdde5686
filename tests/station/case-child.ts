/**
 * A station in a process of its own, `FOLDER ROUND`: takes one device after another from a fall back to the bench until it is
 * killed, and prints a line for everything that was acknowledged: the bench ID, and how many steps are done.
 */
import { writeSync } from 'node:fs';
import { isRefusal } from '../../src/domain/refusal.ts';
import { productFolder } from '../../src/host/product-folder.ts';
import type { Call } from '../../src/station/contract.ts';
import { openStation } from '../../src/station/station.ts';
import { movingClock, register, steps } from './case-steps.ts';

const run = async (folder: string, round: string): Promise<void> => {
  const station = await openStation({
    folder,
    productFolder: process.env.PRODUCT_FOLDER ?? productFolder,
    now: movingClock(),
  });
  if (isRefusal(station)) throw new Error(station.code);
  const as = async (badge: string): Promise<Call> => {
    const call = ((operation, input) =>
      station.call({ session: badge, operation, input, language: 'en' })) as Call;
    await call('session.sign-in', { badge });
    return call;
  };
  const people = { attendant: await as('HP10055'), administrator: await as('HP10017') };
  for (let device = 1; ; device += 1) {
    const benchId = await register(people, `KILL-${round}-${device}`);
    writeSync(1, `${benchId} 0\n`);
    for (const [index, step] of steps.entries()) {
      await step.run(people, benchId);
      writeSync(1, `${benchId} ${index + 1}\n`);
    }
  }
};

const [folder = '', round = ''] = process.argv.slice(2);
void run(folder, round);

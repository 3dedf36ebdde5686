/** The crew of a desk day: the invented depot in a real window, with an attendant, two users, and what is ready to go out. */
import type { BenchId } from '../../src/domain/brand.ts';
import { demo } from '../support/station-fixture.ts';
import { type BenchWindow, openBenchWindow } from './bench-window.ts';

export const secondUser = 'HP20010';

export interface DeskCrew {
  readonly window: BenchWindow;
  readonly secondUserId: string;
  /** In service, in time, proved, and in store. */
  readonly ready: readonly BenchId[];
  readonly overdue: BenchId;
  readonly held: BenchId;
  /** Asks the station, as the one who is signed in at the window. */
  ask<Output>(operation: string, input?: object): Promise<Output>;
}

export const openDesk = async (): Promise<DeskCrew> => {
  const window = await openBenchWindow();
  const { page, scan } = window;
  await page.getByRole('heading', { name: 'This station is empty' }).waitFor();
  await window.command('1');
  await page.getByRole('heading', { name: 'Scan a device, or your badge' }).waitFor({ timeout: 60_000 });
  const ask = <Output>(operation: string, input: object = {}): Promise<Output> =>
    page.evaluate(
      async ({ operation, input }) => {
        const response = await fetch('/call', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({ operation, input, language: 'en' }),
        });
        const answer = await response.json();
        if (!answer.ok) throw new Error(`${operation}: ${answer.error.sentence}`);
        return answer.output;
      },
      { operation, input },
    );
  await scan(demo.administrator);
  await page.getByRole('banner').getByText('Ilse Marrowby').waitFor();
  const { personId: secondUserId } = await ask<{ personId: string }>('person.add', {
    name: 'Mara Quill',
    badge: secondUser,
    roles: ['user'],
  });
  const { devices } = await ask<{
    devices: readonly { benchId: BenchId; standing: string; dueState: string }[];
  }>('device.list', { limit: 500 });
  const ready: BenchId[] = [];
  for (const { benchId } of devices) {
    const checked = await ask<{ refused?: object; heldBy?: string }>('custody.check', {
      benchId,
      userId: 'P006',
    });
    if (checked.refused === undefined) ready.push(benchId);
  }
  const overdue = devices.find(({ dueState }) => dueState === 'overdue')!.benchId;
  const held = devices.find(({ standing }) => standing === 'quarantined')!.benchId;
  await scan(demo.attendant);
  await page.getByRole('banner').getByText('Bram Kestrin').waitFor();
  return { window, secondUserId, ready, overdue, held, ask };
};

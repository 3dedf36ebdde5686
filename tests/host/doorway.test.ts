/** What a browser asks for before there is a station to answer it. */
import { expect, test } from 'vitest';
import { isRefusal, type Refusal, refusal } from '../../src/domain/refusal.ts';
import { openDoorway } from '../../src/host/doorway.ts';
import { startWebHost } from '../../src/host/web-host.ts';
import { openStation, type Station } from '../../src/station/station.ts';
import { smallPage, temporaryFolder } from './small-page.ts';

/** Where a promise stands after everything that is under way in this process was given time. */
const isSettled = async (promise: Promise<unknown>): Promise<boolean> => {
  const waiting = Symbol('waiting');
  const pause = new Promise((resolve) => setTimeout(() => resolve(waiting), 300));
  return (await Promise.race([promise, pause])) !== waiting;
};

const hosted = async (station: Promise<Station | Refusal>) => {
  const door = await openDoorway(0);
  const entry = fetch(door.newAddress(), { redirect: 'manual' });
  expect(await isSettled(entry)).toBe(false);
  const host = startWebHost({ station, files: await smallPage(), door });
  const cookie = (await entry).headers.get('set-cookie')?.split(';')[0] ?? '';
  const call = () =>
    fetch(`${door.origin}/call`, {
      method: 'POST',
      headers: { cookie, origin: door.origin, 'content-type': 'application/json' },
      body: JSON.stringify({ operation: 'station.status', input: {}, language: 'en' }),
    });
  return { door, host, cookie, call };
};

test('a window comes in and has its page before the station is open, and its calls are answered then', async () => {
  let open = (_station: Station): void => undefined;
  const opening = new Promise<Station>((resolve) => {
    open = resolve;
  });
  const { door, host, cookie, call } = await hosted(opening);
  expect(await (await fetch(door.origin, { headers: { cookie } })).text()).toContain('id="root"');
  const answer = call();
  expect(await isSettled(answer)).toBe(false);
  const station = await openStation({ folder: await temporaryFolder() });
  if (isRefusal(station)) throw new Error(station.code);
  open(station);
  expect(await (await answer).json()).toMatchObject({ ok: true, output: { state: 'empty' } });
  await host.close();
  await station.close();
});

test('a station that could not be opened answers no call', async () => {
  const { host, call } = await hosted(Promise.resolve(refusal('internal-error')));
  const answer = await call();
  expect(answer.status).toBe(503);
  expect(await answer.json()).toMatchObject({ ok: false, error: { code: 'not-open' } });
  await host.close();
});

test('a port that is taken cannot be had', async () => {
  const first = await openDoorway(0);
  await expect(openDoorway(first.port)).rejects.toMatchObject({ code: 'EADDRINUSE' });
  await first.close();
});

/** Where a window comes up, and what is kept of it. */
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { placeOf } from '../../electron/window-place.ts';
import { WindowStates } from '../../electron/window-state.ts';
import { temporaryFolder } from '../support/station-fixture.ts';

const display = { x: 0, y: 0, width: 1920, height: 1040 };
const right = { x: 1920, y: 0, width: 1280, height: 984 };

describe('a window', () => {
  test('that was never open stands in the middle of the first display', () => {
    expect(placeOf(undefined, [display])).toEqual({ x: 277, y: 136, width: 1366, height: 768 });
  });

  test('comes up where it was, on whichever display that is', () => {
    const there = { x: 2000, y: 100, width: 1100, height: 700 };
    expect(placeOf(there, [display, right])).toEqual(there);
  });

  test.each([
    ['on a display that is gone', { x: 2000, y: 100, width: 1100, height: 700 }],
    ['above the edge, where nobody can take hold of it', { x: 100, y: -60, width: 1100, height: 700 }],
    ['below the display', { x: 100, y: 1020, width: 1100, height: 700 }],
    ['with all but a strip of it outside', { x: 1800, y: 0, width: 1100, height: 700 }],
    ['to the left with all but a strip', { x: -1000, y: 0, width: 1100, height: 700 }],
  ])('that was %s is brought back to the middle', (_where, was) => {
    expect(placeOf(was, [display])).toEqual({ x: 410, y: 170, width: 1100, height: 700 });
  });

  test('is never larger than its display, nor smaller than the screens need', () => {
    expect(placeOf({ x: 0, y: 0, width: 3000, height: 2000 }, [display])).toMatchObject({
      width: 1920,
      height: 1040,
    });
    expect(placeOf({ x: 0, y: 0, width: 300, height: 200 }, [display])).toMatchObject({
      width: 1024,
      height: 640,
    });
    expect(placeOf(undefined, [{ x: 0, y: 0, width: 800, height: 560 }])).toEqual({
      x: 0,
      y: 0,
      width: 800,
      height: 560,
    });
  });
});

describe('what is kept of windows', () => {
  const state = { bounds: { x: 10, y: -20, width: 1200, height: 800 }, isMaximised: true, isKiosk: false };

  test('is there at the next start, for each window by itself, and no part of a file is left', async () => {
    const folder = join(await temporaryFolder(), 'not', 'there yet');
    const states = await WindowStates.read(folder);
    expect(states.of('bench')).toBeUndefined();
    states.set('bench', state);
    states.set('desk', { ...state, isKiosk: true });
    await states.flush();
    const again = await WindowStates.read(folder);
    expect(again.of('bench')).toEqual(state);
    expect(again.of('desk')).toEqual({ ...state, isKiosk: true });
    expect(await readdir(folder)).toEqual(['windows.json']);
  });

  test.each([
    ['cut off', '{"bench":{"bounds":{"x":1'],
    ['empty', ''],
    ['no object', '7'],
    ['of another shape', '{"bench":{"bounds":{"x":"1"}}}'],
    [
      'with sizes that cannot be',
      '{"bench":{"bounds":{"x":0,"y":0,"width":-5,"height":1e99},"isMaximised":false,"isKiosk":false}}',
    ],
  ])('is forgotten where the file is %s', async (_how, text) => {
    const folder = await temporaryFolder();
    await writeFile(join(folder, 'windows.json'), text);
    expect((await WindowStates.read(folder)).of('bench')).toBeUndefined();
  });

  test('costs nothing but its place where the folder cannot be written', async () => {
    const folder = await temporaryFolder();
    await mkdir(join(folder, 'windows.json'));
    const states = await WindowStates.read(folder);
    states.set('bench', state);
    await expect(states.flush()).resolves.toBeUndefined();
    expect(states.of('bench')).toEqual(state);
  });

  test('is written whole, the latest of many changes', async () => {
    const folder = await temporaryFolder();
    const states = await WindowStates.read(folder);
    const flushed = [];
    for (let x = 0; x < 50; x += 1) {
      states.set('bench', { ...state, bounds: { ...state.bounds, x } });
      flushed.push(states.flush());
    }
    await Promise.all(flushed);
    const kept: unknown = JSON.parse(await readFile(join(folder, 'windows.json'), 'utf8'));
    expect(kept).toMatchObject({ bench: { bounds: { x: 49 } } });
  });
});

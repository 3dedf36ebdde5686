import { describe, expect, test } from 'vitest';
import { Presence } from '../../src/host/presence.ts';

const seconds = 1_000;
const hours = 3_600_000;

const room = () => {
  let nowMs = 0;
  const presence = new Presence({ afterLeavingMs: 90 * seconds, unheardMs: 4 * hours }, () => nowMs);
  return { presence, pass: (ms: number) => (nowMs += ms) };
};

describe('a session', () => {
  test('ends a minute and a half after its window said that it closes, not before', () => {
    const { presence, pass } = room();
    presence.heard('one');
    presence.left('one');
    pass(89 * seconds);
    expect(presence.gone()).toEqual([]);
    pass(seconds);
    expect(presence.gone()).toEqual(['one']);
  });

  test('stays where the window only loads itself anew, or another of its windows is heard of', () => {
    const { presence, pass } = room();
    presence.heard('one');
    presence.left('one');
    pass(2 * seconds);
    presence.heard('one');
    pass(90 * seconds);
    expect(presence.gone()).toEqual([]);
  });

  test('is not kept by what its window asked for just before it closed', () => {
    const { presence, pass } = room();
    presence.heard('one');
    presence.left('one');
    pass(20);
    presence.heard('one');
    pass(90 * seconds);
    expect(presence.gone()).toEqual(['one']);
  });

  test('ends four hours after the last word of a browser that was killed', () => {
    const { presence, pass } = room();
    presence.heard('one');
    pass(4 * hours - 1);
    expect(presence.gone()).toEqual([]);
    pass(1);
    expect(presence.gone()).toEqual(['one']);
  });
});

describe('the host', () => {
  test('is deserted once the last window is gone, and not while one is left', () => {
    const { presence, pass } = room();
    presence.heard('one');
    presence.heard('two');
    presence.left('one');
    presence.forget('one');
    expect(presence.isDeserted).toBe(false);
    presence.left('two');
    pass(90 * seconds);
    presence.forget('two');
    expect(presence.isDeserted).toBe(true);
  });

  test('is deserted where no window came for four hours, and not before', () => {
    const { presence, pass } = room();
    pass(4 * hours - 1);
    expect(presence.isDeserted).toBe(false);
    pass(1);
    expect(presence.isDeserted).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { noBurst, pressKey } from '../../../renderer/scan/wedge.ts';
import { commandSymbols } from '../../../src/domain/command-symbol.ts';
import { struck } from '../struck.ts';

/** Types a text with a key every `gapMs`, ended by Enter, and says what the last key was taken for. */
const typed = (text: string, gapMs: number) => {
  let burst = noBurst;
  let last = pressKey(burst, struck({ key: 'Shift', at: 0 }));
  [...text, 'Enter'].forEach((key, index) => {
    last = pressKey(burst, struck({ key, at: 1000 + index * gapMs }));
    burst = last.burst;
  });
  return last.decision;
};

describe('a symbol of the command sheet', () => {
  it('is taken for a scan at scanner speed, the digits with their three characters too', () => {
    for (const { text } of commandSymbols) {
      const decision = typed(text, 5);
      const keys = decision.kind === 'scan' ? decision.scan.keys : [];
      expect(keys.map((key) => key.text).join('')).toBe(text);
    }
  });

  it('is not taken for a scan when a person types it', () => {
    for (const { text } of commandSymbols) expect(typed(text, 120).kind, text).toBe('other');
  });

  it('does not make a scan of three other characters', () => {
    expect(typed('X12', 5).kind).toBe('other');
  });
});

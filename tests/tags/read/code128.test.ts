import { describe, expect, test } from 'vitest';
import { code128Modules, code128Values, everyShape } from '../../../src/tags/read/bars/code128.ts';
import { encodeSymbol } from '../../../src/typesetting/symbol.ts';

/** Ten characters with digits at the places of the mask. */
const textWithDigitsAt = (mask: number): string =>
  Array.from({ length: 10 }, (_none, at) =>
    ((mask >> at) & 1) === 1 ? String((at * 7 + 3) % 10) : 'ABCDEFGHJK'.charAt(at),
  ).join('');

describe('the Code 128 of a bench ID', () => {
  test('has the modules that bwip-js gives it, wherever its digits stand', () => {
    for (let mask = 0; mask < 1024; mask += 1) {
      const text = textWithDigitsAt(mask);
      const modules = code128Values(text).flatMap((value) => [...(code128Modules[value] ?? [])]);
      expect(modules, text).toEqual([...encodeSymbol('Code 128', text).dark]);
    }
  });

  test('has every symbol in eleven modules of three bars and three spaces, and the stop pattern in thirteen', () => {
    // ISO/IEC 15417: from memory.
    expect(code128Modules).toHaveLength(107);
    for (const [value, modules] of code128Modules.entries()) {
      expect(modules).toHaveLength(value === 106 ? 13 : 11);
      const darkModules = modules.reduce((sum, dark) => sum + dark, 0);
      expect(darkModules % 2, `the bars of ${value} have an even sum`).toBe(0);
    }
    expect(new Set(code128Modules.map((modules) => modules.join(''))).size).toBe(107);
  });

  test('takes one of twenty shapes, most often ten characters of code set B', () => {
    // Twenty: counted from what bwip-js makes of all 1,024 patterns of digits.
    const shapes = everyShape(10);
    expect(shapes).toHaveLength(20);
    expect(shapes[0]?.slots.every((slot) => slot.kind === 'character')).toBe(true);
  });
});

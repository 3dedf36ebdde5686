import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/ledger/canonical-json.ts';

/** The double with this IEEE 754 pattern. */
const double = (hex: string): number => Buffer.from(hex, 'hex').readDoubleBE();

describe('canonical JSON', () => {
  it('serialises the sample of RFC 8785 section 3.2.2 as section 3.2.3 shows it', () => {
    const sample = String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`;
    expect(canonicalJson(JSON.parse(sample))).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  it('orders names by UTF-16 code units, as in the sorting sample of RFC 8785 section 3.2.3', () => {
    const sample = String.raw`{
      "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
    }`;
    expect([...canonicalJson(JSON.parse(sample)).matchAll(/:"([^"]+)"/g)].map(([, value]) => value)).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  // RFC 8785 appendix B, "Number Serialization Samples".
  it.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555555', '333333333.3333333'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('writes the double %s as %s', (pattern, text) => {
    expect(canonicalJson(double(pattern))).toBe(text);
  });

  it('does not write what JSON cannot say', () => {
    const circle: Record<string, unknown> = {};
    circle.self = circle;
    for (const value of [
      Number.NaN,
      Number.POSITIVE_INFINITY,
      undefined,
      { note: 'half a pair \ud83d' },
      circle,
    ]) {
      expect(() => canonicalJson(value)).toThrow(TypeError);
    }
  });
});

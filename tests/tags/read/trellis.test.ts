import { describe, expect, test } from 'vitest';
import { benchIdAlphabet, benchIdFrom } from '../../../src/domain/bench-id/bench-id.ts';
import { code128Values, everyShape } from '../../../src/tags/read/bars/code128.ts';
import { emissionsOf, everyCode, readShape, widthsBetween } from '../../../src/tags/read/bars/trellis.ts';
import { encodeSymbol } from '../../../src/typesetting/symbol.ts';

/** The bars as bwip-js gives them, four samples a module in the middle and fewer towards the ends, as on a round neck. */
const seriesOf = (text: string, bend: number) => {
  const { dark } = encodeSymbol('Code 128', text);
  const quiet = Array<number>(10).fill(0);
  const modules = [...quiet, ...dark, ...quiet];
  const darkness: number[] = [];
  for (const [index, module] of modules.entries()) {
    const off = (index - modules.length / 2) / (modules.length / 2);
    const samples = Math.round(4 * (index + 1) - bend * off ** 3 * 40) - darkness.length;
    for (let each = 0; each < samples; each += 1) darkness.push(module === 1 ? 1 : -1);
  }
  return {
    darkness: Float32Array.from(darkness),
    precision: new Float32Array(darkness.length).fill(1),
  };
};

describe('a Code 128 in a series of darkness', () => {
  test.each([
    ['flat', [19, 7, 20, 3, 29, 4], 0],
    ['on a round neck', [19, 7, 20, 3, 29, 4], 1],
    ['with digits in pairs', [1, 2, 3, 4, 5, 6], 0],
  ])('is read: %s', (_name, data, bend) => {
    const benchId = benchIdFrom(data as number[]);
    const emissions = emissionsOf(seriesOf(benchId, bend as number), 0.5, widthsBetween(30, 56), everyCode);
    const best = everyShape(10)
      .map((shape) => readShape(emissions, shape, benchIdAlphabet, 40))
      .sort((a, b) => (b?.score ?? 0) - (a?.score ?? 0))[0];
    expect(best?.path.map(({ code }) => code)).toEqual(code128Values(benchId));
  });
});

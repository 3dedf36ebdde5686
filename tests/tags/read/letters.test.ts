import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { benchIdAlphabet } from '../../../src/domain/bench-id/bench-id.ts';
import { letterOutlines } from '../../../src/tags/read/characters/letter-outlines.ts';
import { bottomEm, letterRaster, topEm } from '../../../src/tags/read/characters/letter-raster.ts';
import { shape } from '../../../src/typesetting/typeface.ts';

const characters = [...benchIdAlphabet, '-'];

const outlineInFont = (character: string) => {
  const { segments, widthEm } = shape(character, 'bold');
  const glyph = segments[0]?.glyphs[0]?.glyph as unknown as { path: { toSVG: () => string } };
  return { advance: Math.round(1000 * widthEm), path: glyph.path.toSVG() };
};

test('the outlines are those of the embedded font, for every character of a bench ID', () => {
  expect(Object.keys(letterOutlines).sort()).toEqual([...characters].sort());
  for (const character of characters)
    expect(letterOutlines[character], character).toEqual(outlineInFont(character));
});

describe('a letter on a grid', () => {
  // The independent renderer is librsvg, inside sharp.
  test.each(characters)('has the ink that librsvg gives it: %s', async (character) => {
    const em = 40;
    const { ink, columns, rows } = letterRaster(character, em, em);
    const { path } = outlineInFont(character);
    const scale = em / 1000;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${columns}" height="${rows}"><rect width="100%" height="100%" fill="#fff"/><path transform="translate(0,${topEm * em}) scale(${scale},${-scale})" d="${path}"/></svg>`;
    const drawn = await sharp(Buffer.from(svg)).toColourspace('b-w').raw().toBuffer();
    let off = 0;
    let all = 0;
    for (let at = 0; at < ink.length; at += 1) {
      const theirs = 1 - (drawn[at] ?? 0) / 255;
      off += Math.abs((ink[at] ?? 0) - theirs);
      all += theirs;
    }
    expect(off / all).toBeLessThan(0.06);
  });

  test('reaches from a little over the cap height to a little under the baseline', () => {
    expect(letterRaster('H', 100, 100).rows).toBe(Math.ceil(100 * (topEm + bottomEm)));
  });

  test('is refused for a character that no bench ID contains', () => {
    expect(() => letterRaster('U', 20, 20)).toThrow(RangeError);
  });
});

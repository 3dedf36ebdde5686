/**
 * The typeface of everything printed, Atkinson Hyperlegible (SIL Open Font License): measuring, outlines and kerning.
 *
 * The PDF embeds the same files that are measured here, and the raster fills the same outlines, so that no text depends
 * on a font of the computer. Sizes are em sizes in millimetres.
 */
import fontkit, { type Font, type Glyph } from '@pdf-lib/fontkit';
import { readFontFile } from './font-file.ts';
import { unpackWoff } from './woff.ts';

export type Weight = 'regular' | 'bold';

/** One font file of a weight: Latin first, then what Latin Extended-A adds. */
export interface Face {
  readonly key: string;
  readonly bytes: Uint8Array;
  readonly font: Font;
}

/** Consecutive characters set in one face. Positions are in em, from the start of the text. */
export interface Segment {
  readonly face: Face;
  readonly text: string;
  readonly startEm: number;
  readonly glyphs: readonly {
    readonly glyph: Glyph;
    readonly xEm: number;
    readonly kernEm: number;
  }[];
}

export interface InkBox {
  readonly leftEm: number;
  readonly rightEm: number;
  /** Above the baseline. */
  readonly topEm: number;
  /** Below the baseline; negative where the ink ends above it. */
  readonly bottomEm: number;
}

export interface ShapedText {
  readonly segments: readonly Segment[];
  readonly widthEm: number;
  readonly ink: InkBox;
}

/** Height of `H` and `x` of both weights over the em, from the font's own OS/2 table. */
export const capHeightEm = 0.668;
export const xHeightEm = 0.496;

const fileNames: Record<Weight, readonly string[]> = {
  regular: ['atkinson-hyperlegible-latin-400-normal.woff', 'atkinson-hyperlegible-latin-ext-400-normal.woff'],
  bold: ['atkinson-hyperlegible-latin-700-normal.woff', 'atkinson-hyperlegible-latin-ext-700-normal.woff'],
};

const loaded = new Map<Weight, readonly Face[]>();

const facesOf = (weight: Weight): readonly Face[] => {
  const known = loaded.get(weight);
  if (known !== undefined) return known;
  const faces = fileNames[weight].map((key) => {
    const bytes = unpackWoff(readFontFile(key));
    return { key, bytes, font: knownByCharacter(fontkit.create(bytes)) };
  });
  loaded.set(weight, faces);
  return faces;
};

/**
 * fontkit keeps a glyph as it first met it, and one met as a part of another (the `o` of `ó`) would stand for no
 * character in the PDF. So every glyph is met by its character first.
 */
const knownByCharacter = (font: Font): Font => {
  for (const codePoint of font.characterSet) font.glyphForCodePoint(codePoint);
  return font;
};

/** White space of any kind becomes one plain space, and letters with accents one character each. */
export const printable = (text: string): string => text.normalize('NFC').replace(/\s+/gu, ' ').trim();

const faceFor = (character: string, weight: Weight): Face | undefined =>
  facesOf(weight).find((face) => face.font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0));

const shaped = new Map<string, ShapedText>();
const shapedAtMost = 1000;

/** The glyphs of one line with kerning. A character that no face can draw stands as `?`: a print with one beats none. */
export const shape = (text: string, weight: Weight): ShapedText => {
  const key = `${weight} ${text}`;
  const known = shaped.get(key);
  if (known !== undefined) return known;
  if (shaped.size >= shapedAtMost) shaped.clear();
  const result = shapeAnew(text, weight);
  shaped.set(key, result);
  return result;
};

const shapeAnew = (text: string, weight: Weight): ShapedText => {
  const segments: Segment[] = [];
  const ink = { leftEm: 0, rightEm: 0, topEm: 0, bottomEm: 0 };
  let xEm = 0;
  for (const run of runsOf(text, weight)) {
    const startEm = xEm;
    const scale = 1 / run.face.font.unitsPerEm;
    const layout = run.face.font.layout(run.text);
    const glyphs = layout.glyphs.map((glyph, index) => {
      const advance = layout.positions[index]?.xAdvance ?? glyph.advanceWidth;
      const placed = {
        glyph,
        xEm,
        kernEm: (advance - glyph.advanceWidth) * scale,
      };
      const box = glyph.bbox;
      if (box.maxX > box.minX) {
        ink.leftEm = Math.min(ink.leftEm, xEm + box.minX * scale);
        ink.rightEm = Math.max(ink.rightEm, xEm + box.maxX * scale);
        ink.topEm = Math.max(ink.topEm, box.maxY * scale);
        ink.bottomEm = Math.max(ink.bottomEm, -box.minY * scale);
      }
      xEm += advance * scale;
      return placed;
    });
    segments.push({ face: run.face, text: run.text, startEm, glyphs });
  }
  return { segments, widthEm: xEm, ink };
};

const runsOf = (text: string, weight: Weight): readonly { face: Face; text: string }[] => {
  const runs: { face: Face; text: string }[] = [];
  for (const original of text) {
    const character = faceFor(original, weight) === undefined ? '?' : original;
    const face = faceFor(character, weight);
    if (face === undefined) continue;
    const last = runs.at(-1);
    if (last?.face === face) last.text += character;
    else runs.push({ face, text: character });
  }
  return runs;
};

/** A text is tried at many sizes and on many stocks: its width is kept longer than its glyphs, for it takes little room. */
const widths: Record<Weight, Map<string, number>> = { regular: new Map(), bold: new Map() };
const widthsAtMost = 20_000;

export const textWidthMm = (text: string, weight: Weight, sizeMm: number): number => {
  const known = widths[weight];
  const widthEm = known.get(text) ?? shape(text, weight).widthEm;
  if (known.size >= widthsAtMost) known.clear();
  known.set(text, widthEm);
  return widthEm * sizeMm;
};

/** A layout as a PNG at the dots of a printer: outlines of letters filled, symbols on whole dots. */
import sharp from 'sharp';
import { inks } from '../typesetting/colours.ts';
import { darkRuns } from '../typesetting/dark-runs.ts';
import {
  type Colour,
  dotMm,
  type Layout,
  type Path,
  type PlacedSymbol,
  type Primitive,
  type Rectangle,
  type Text,
} from '../typesetting/primitive.ts';
import { roundedRectangle } from '../typesetting/rounded-rectangle.ts';
import { shape } from '../typesetting/typeface.ts';

/** `two levels`: every dot black or white and one bit deep, as a thermal head prints it. */
export type Depth = 'shades' | 'two levels';

/** Carries its density, so that it prints at true size. */
export const toPng = (layout: Layout, depth: Depth = 'shades'): Promise<Buffer> => {
  const picture = sharp(Buffer.from(toSvg(layout)), { limitInputPixels: 120_000_000, unlimited: true })
    .flatten({ background: '#fff' })
    .removeAlpha()
    .withMetadata({ density: layout.dotsPerInch });
  return depth === 'shades'
    ? picture.png({ compressionLevel: 6 }).toBuffer()
    : picture
        .greyscale()
        .threshold(128)
        .toColourspace('b-w')
        .png({ compressionLevel: 6, palette: true, colours: 2, dither: 0 })
        .toBuffer();
};

/** One unit of the picture is one dot of the printer. */
const toSvg = (layout: Layout): string => {
  const dots = 1 / dotMm(layout.dotsPerInch);
  const width = Math.round(layout.widthMm * dots);
  const height = Math.round(layout.heightMm * dots);
  const marks = layout.primitives.map((primitive) => markOf(primitive, dots));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${marks.join('')}</svg>`;
};

const markOf = (primitive: Primitive, dots: number): string => {
  switch (primitive.kind) {
    case 'rectangle':
      return rectangleMark(primitive, dots);
    case 'path':
      return pathMark(primitive, dots);
    case 'symbol':
      return symbolMark(primitive);
    case 'text':
      return textMark(primitive, dots);
  }
};

const ink = (colour: Colour): string => `rgb(${inks[colour].join(',')})`;

const rectangleMark = (box: Rectangle, dots: number): string =>
  `<path fill="${ink(box.colour)}" transform="scale(${dots})" d="${roundedRectangle(box)}"/>`;

const pathMark = (path: Path, dots: number): string => {
  const paint =
    path.strokeUnits === undefined
      ? `fill="${ink(path.colour)}"`
      : `fill="none" stroke="${ink(path.colour)}" stroke-width="${path.strokeUnits}" stroke-linecap="round" stroke-linejoin="round"`;
  const scale = path.unitMm * dots * (path.turned === true ? -1 : 1);
  const transform = `translate(${path.xMm * dots},${path.yMm * dots}) scale(${scale})`;
  return `<path ${paint} transform="${transform}" d="${path.data}"/>`;
};

const symbolMark = (symbol: PlacedSymbol): string => {
  const data = darkRuns(symbol).map(
    (run) => `M${run.leftDots},${run.topDots}h${run.widthDots}v${run.heightDots}h${-run.widthDots}z`,
  );
  return `<path fill="#000" shape-rendering="crispEdges" d="${data.join('')}"/>`;
};

const textMark = (text: Text, dots: number): string => {
  const size = text.sizeMm * dots;
  const turn = text.turned === true ? -1 : 1;
  const glyphs = shape(text.text, text.weight).segments.flatMap((segment) =>
    segment.glyphs.map(({ glyph, xEm }) => {
      const data = glyph.path.toSVG();
      const scale = (turn * size) / segment.face.font.unitsPerEm;
      const x = text.xMm * dots + turn * xEm * size;
      return data === ''
        ? ''
        : `<path transform="matrix(${scale},0,0,${-scale},${x},${text.baselineMm * dots})" d="${data}"/>`;
    }),
  );
  return `<g fill="${ink(text.colour)}">${glyphs.join('')}</g>`;
};

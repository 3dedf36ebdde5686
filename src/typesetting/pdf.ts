/** Pages as a PDF of their true size, with real text in the embedded typeface. */
import fontkit from '@pdf-lib/fontkit';
import {
  beginText,
  concatTransformationMatrix,
  degrees,
  endText,
  fill,
  LineCapStyle,
  LineJoinStyle,
  PDFArray,
  PDFDocument,
  type PDFFont,
  PDFHexString,
  type PDFImage,
  PDFNumber,
  PDFOperator,
  PDFOperatorNames,
  type PDFPage,
  PrintScaling,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  rgb,
  setFillingRgbColor,
  setFontAndSize,
  setLineJoin,
  setTextMatrix,
} from 'pdf-lib';
import { inks } from './colours.ts';
import { darkRuns } from './dark-runs.ts';
import {
  type Colour,
  dotMm,
  mmPerInch,
  type Page,
  type Path,
  type Picture,
  type PlacedSymbol,
  type Rectangle,
  type Text,
} from './primitive.ts';
import { roundedRectangle } from './rounded-rectangle.ts';
import { type Face, type Segment, shape } from './typeface.ts';

/** A PDF point is 1/72 in (ISO 32000-1 §8.3.2.3). */
const pointsPerMm = 72 / mmPerInch;

export interface PdfDescription {
  readonly title: string;
  /** BCP 47, of the words on the pages. */
  readonly language?: string;
  /** When what the pages say was recorded. */
  readonly createdAt?: Date;
}

/** One page for each layout. The same layouts give the same bytes: the file carries no time of its making. */
export const toPdf = async (layouts: readonly Page[], title: string): Promise<Uint8Array> => {
  const writer = await PdfWriter.begin({ title });
  for (const layout of layouts) await writer.add(layout);
  return writer.save();
};

/** Takes pages one after another, so that whoever gives them can stop in between. */
export class PdfWriter {
  readonly #document: PDFDocument;
  readonly #fonts: EmbeddedFonts;
  readonly #pictures = new Map<Uint8Array, PDFImage>();

  private constructor(document: PDFDocument) {
    this.#document = document;
    this.#fonts = new EmbeddedFonts(document);
  }

  static async begin({ title, language, createdAt }: PdfDescription): Promise<PdfWriter> {
    const document = await PDFDocument.create({ updateMetadata: false });
    document.setTitle(title, { showInWindowTitleBar: true });
    document.setProducer('SRL Bench');
    if (language !== undefined) document.setLanguage(language);
    if (createdAt !== undefined) document.setCreationDate(createdAt);
    document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
    return new PdfWriter(document);
  }

  async add(layout: Page): Promise<void> {
    const page = this.#document.addPage([layout.widthMm * pointsPerMm, layout.heightMm * pointsPerMm]);
    page.pushOperators(setLineJoin(LineJoinStyle.Round));
    await drawPage(page, layout, this.#fonts, (jpeg) => this.#embedded(jpeg));
  }

  save(): Promise<Uint8Array> {
    return this.#document.save();
  }

  async #embedded(jpeg: Uint8Array): Promise<PDFImage> {
    const known = this.#pictures.get(jpeg);
    if (known !== undefined) return known;
    const image = await this.#document.embedJpg(jpeg);
    this.#pictures.set(jpeg, image);
    return image;
  }
}

const drawPage = async (
  page: PDFPage,
  layout: Page,
  fonts: EmbeddedFonts,
  embedded: (jpeg: Uint8Array) => Promise<PDFImage>,
): Promise<void> => {
  for (const primitive of layout.primitives) {
    switch (primitive.kind) {
      case 'rectangle':
        drawRectangle(page, primitive);
        break;
      case 'path':
        drawPath(page, primitive);
        break;
      case 'symbol':
        drawSymbol(page, primitive);
        break;
      case 'text':
        await drawText(page, primitive, fonts);
        break;
      case 'picture':
        drawPicture(page, primitive, await embedded(primitive.jpeg));
        break;
    }
  }
};

/** Fonts of one document: each face embedded when it is first needed, its parsed form shared by all documents. */
class EmbeddedFonts {
  readonly #document: PDFDocument;
  readonly #fonts = new Map<Face, PDFFont>();

  constructor(document: PDFDocument) {
    this.#document = document;
  }

  async of(face: Face): Promise<PDFFont> {
    const known = this.#fonts.get(face);
    if (known !== undefined) return known;
    this.#document.registerFontkit({ ...fontkit, create: () => face.font });
    const font = await this.#document.embedFont(face.bytes, { subset: true });
    this.#fonts.set(face, font);
    return font;
  }
}

const inkColour = (colour: Colour) => {
  const [red, green, blue] = inks[colour];
  return rgb(red / 255, green / 255, blue / 255);
};

const fillWith = (colour: Colour): PDFOperator => {
  const { red, green, blue } = inkColour(colour);
  return setFillingRgbColor(red, green, blue);
};

const drawRectangle = (page: PDFPage, box: Rectangle): void => {
  page.drawSvgPath(roundedRectangle(box), {
    x: 0,
    y: page.getHeight(),
    scale: pointsPerMm,
    color: inkColour(box.colour),
  });
};

const drawPicture = (page: PDFPage, box: Picture, image: PDFImage): void =>
  page.drawImage(image, {
    x: box.xMm * pointsPerMm,
    y: page.getHeight() - (box.yMm + box.heightMm) * pointsPerMm,
    width: box.widthMm * pointsPerMm,
    height: box.heightMm * pointsPerMm,
  });

const drawPath = (page: PDFPage, path: Path): void => {
  const colour = inkColour(path.colour);
  page.drawSvgPath(path.data, {
    x: path.xMm * pointsPerMm,
    y: page.getHeight() - path.yMm * pointsPerMm,
    scale: path.unitMm * pointsPerMm,
    ...(path.turned === true ? { rotate: degrees(180) } : {}),
    ...(path.strokeUnits === undefined
      ? { color: colour }
      : {
          borderColor: colour,
          borderWidth: path.strokeUnits,
          borderLineCap: LineCapStyle.Round,
        }),
  });
};

/**
 * All dark modules are one path, so that no hairline shows between two rows. One unit is one dot of the printer, counted
 * down from the top: whole numbers, exact in the file.
 */
const drawSymbol = (page: PDFPage, symbol: PlacedSymbol): void => {
  const dot = dotMm(symbol.dotsPerInch) * pointsPerMm;
  page.pushOperators(
    pushGraphicsState(),
    concatTransformationMatrix(dot, 0, 0, -dot, 0, page.getHeight()),
    fillWith('black'),
    ...darkRuns(symbol).map((run) => rectangle(run.leftDots, run.topDots, run.widthDots, run.heightDots)),
    fill(),
    popGraphicsState(),
  );
};

const drawText = async (page: PDFPage, text: Text, fonts: EmbeddedFonts): Promise<void> => {
  const size = text.sizeMm * pointsPerMm;
  const turn = text.turned === true ? -1 : 1;
  for (const segment of shape(text.text, text.weight).segments) {
    const font = await fonts.of(segment.face);
    page.pushOperators(
      beginText(),
      fillWith(text.colour),
      setFontAndSize(fontName(page, font), size),
      setTextMatrix(
        turn,
        0,
        0,
        turn,
        (text.xMm + turn * segment.startEm * text.sizeMm) * pointsPerMm,
        page.getHeight() - text.baselineMm * pointsPerMm,
      ),
      PDFOperator.of(PDFOperatorNames.ShowTextAdjusted, [kernedText(page, font, segment)]),
      endText(),
    );
  }
};

const pageFonts = new WeakMap<PDFPage, Map<PDFFont, ReturnType<PDFPage['node']['newFontDictionary']>>>();

const fontName = (page: PDFPage, font: PDFFont) => {
  const names = pageFonts.get(page) ?? new Map<PDFFont, ReturnType<PDFPage['node']['newFontDictionary']>>();
  pageFonts.set(page, names);
  const known = names.get(font);
  if (known !== undefined) return known;
  const name = page.node.newFontDictionary(font.name, font.ref);
  names.set(font, name);
  return name;
};

/** Glyph codes of four digits, with the kerning after each glyph in thousandths of the em (ISO 32000-1 §9.4.3). */
const kernedText = (page: PDFPage, font: PDFFont, segment: Segment): PDFArray => {
  const codes = font.encodeText(segment.text).asString().match(/.{4}/g) ?? [];
  const array = PDFArray.withContext(page.doc.context);
  let run = '';
  for (const [index, code] of codes.entries()) {
    run += code;
    const kernEm = segment.glyphs[index]?.kernEm ?? 0;
    if (Math.abs(kernEm) < 1e-6 && index < codes.length - 1) continue;
    array.push(PDFHexString.of(run));
    if (index < codes.length - 1) array.push(PDFNumber.of(-Math.round(kernEm * 1000)));
    run = '';
  }
  return array;
};

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';
import { afterAll, describe, expect, test } from 'vitest';
import { millimetres } from '../../src/domain/brand.ts';
import { commandSymbols } from '../../src/domain/command-symbol.ts';
import { isRefusal } from '../../src/domain/refusal.ts';
import type { TagContent } from '../../src/domain/tag-content.ts';
import { writeTagText } from '../../src/domain/tag-text.ts';
import { renderCommandSheet } from '../../src/tags/command-sheet.ts';
import { type RenderedTag, renderTag, type TagOptions } from '../../src/tags/render-tag.ts';
import { shape } from '../../src/typesetting/typeface.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { benchId, idLabel, longStatusTag, quarantineTag, reasons, statusTag } from './sample-tags.ts';

const folder = mkdtempSync(join(tmpdir(), 'tags-'));
afterAll(() => rmSync(folder, { recursive: true }));

const rendered = async (content: TagContent, options: TagOptions = {}): Promise<RenderedTag> => {
  const tag = await renderTag(content, options);
  if (isRefusal(tag)) throw new Error(JSON.stringify(tag));
  return tag;
};

const stock = (widthMm: number, heightMm: number) => ({
  widthMm: millimetres(widthMm),
  heightMm: millimetres(heightMm),
});

let files = 0;
const saved = (bytes: Uint8Array, ending: string): string => {
  files += 1;
  const path = join(folder, `${files}.${ending}`);
  writeFileSync(path, bytes);
  return path;
};

const rasterised = (pdf: Uint8Array, page = '1'): string => {
  const path = saved(pdf, 'pdf');
  runTool('pdftoppm', ['-r', '300', '-f', page, '-png', '-singlefile', path, path]);
  return `${path}.png`;
};

const readByZbar = (picture: string): string[] =>
  runTool('zbarimg', ['-q', '-Sdisable', '-Scode128.enable', '-Sqrcode.enable', picture])
    .trim()
    .split('\n')
    .sort();

/** The words in the order in which they were drawn, line ends as spaces. */
const wordsOf = (pdf: Uint8Array): string =>
  runTool('pdftotext', ['-raw', '-enc', 'UTF-8', saved(pdf, 'pdf'), '-']).replace(/\s+/g, ' ');

const printed: [string, TagContent, TagOptions][] = [
  ['status, English', statusTag(['en']), {}],
  ['status, both languages', statusTag(['en', 'es']), {}],
  ['status, long words', longStatusTag(['es', 'en']), {}],
  ['status at 203 dpi', statusTag(['en', 'es']), { dpi: 203 }],
  ['status at 600 dpi', statusTag(['en', 'es']), { dpi: 600 }],
  ['quarantine, one reason', quarantineTag(['en'], 1), {}],
  ['quarantine, three reasons, both languages', quarantineTag(['en', 'es'], 3), {}],
  ['quarantine, twelve reasons, English', quarantineTag(['en'], 12), {}],
  [
    'quarantine, twelve reasons on A5, both languages',
    quarantineTag(['en', 'es'], 12),
    { stock: stock(148, 210) },
  ],
];

describe.runIf(requireTool('pdftoppm') && requireTool('zbarimg'))('an independent decoder', () => {
  test.each(printed)('reads bench ID and tag text from PDF and PNG: %s', async (_name, content, options) => {
    const tag = await rendered(content, options);
    if (content.kind === 'id') throw new Error('not a label');
    const expected = [`CODE-128:${benchId}`, `QR-Code:${writeTagText(content)}`];
    expect(readByZbar(rasterised(tag.pdf))).toEqual(expected);
    expect(readByZbar(saved(tag.png, 'png'))).toEqual(expected);
    expect(tag.symbols.map(({ text }) => text).sort()).toEqual([benchId, writeTagText(content)].sort());
    expect(tag.proof).toBe('read back');
  });

  test('reads every command of the command sheet on A4 and on Letter', async () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const sheet = await renderCommandSheet(commandSymbols, paper);
      if (isRefusal(sheet)) throw new Error(JSON.stringify(sheet));
      const read = ['1', '2'].flatMap((page) => readByZbar(rasterised(sheet.pdf, page)));
      expect(read.sort()).toEqual(commandSymbols.map(({ text }) => `CODE-128:${text}`).sort());
    }
  });
});

describe.runIf(requireTool('pdftoppm') && requireTool('dmtxread'))(
  'an independent Data Matrix decoder',
  () => {
    test.each([203, 300, 600] as const)('reads the bench ID from the label at %i dpi', async (dpi) => {
      const label = await rendered(idLabel, { dpi });
      expect(runTool('dmtxread', ['-N1', rasterised(label.pdf)])).toBe(benchId);
      expect(runTool('dmtxread', ['-N1', saved(label.png, 'png')])).toBe(benchId);
    });
  },
);

describe.runIf(requireTool('pdftotext'))('the text of the PDF', () => {
  test('of a status tag names what its date is the date of', async () => {
    const headings = async (dueFor?: 'revalidation' | 'service life') =>
      wordsOf((await rendered({ ...statusTag(['en']), ...(dueFor === undefined ? {} : { dueFor }) })).pdf);
    expect(await headings()).toContain('NEXT INSPECTION DUE');
    const revalidation = await headings('revalidation');
    expect(revalidation).toContain('REVALIDATION DUE');
    expect(revalidation).not.toContain('INSPECTION DUE');
    expect(await headings('service life')).toContain('SERVICE LIFE ENDS');
  });

  test('holds every reason in both languages, with its accents', async () => {
    const { pdf } = await rendered(quarantineTag(['en', 'es'], 12), {
      stock: stock(148, 210),
    });
    const words = wordsOf(pdf);
    for (const { sentence } of reasons) {
      expect(words).toContain(sentence.en);
      expect(words).toContain(sentence.es);
    }
    for (const part of [
      'DANGER',
      'PELIGRO',
      'DO NOT USE',
      'NO USAR',
      'dañado',
      'Jaula roja, puesto 2',
      '24 NOV 2026',
    ]) {
      expect(words).toContain(part);
    }
  });

  test('holds only the language that was asked for', async () => {
    const words = wordsOf((await rendered(quarantineTag(['es'], 2))).pdf);
    expect(words).toContain('PELIGRO');
    expect(words).not.toContain('DANGER');
    expect(words).not.toContain(reasons[0]!.sentence.en);
  });

  test('holds names with letters beyond Latin-1', async () => {
    const words = wordsOf((await rendered(statusTag(['en'], { inspectorMark: 'Łukasz Dvořák' }))).pdf);
    expect(words).toContain('Łukasz Dvořák');
  });

  test('shows months in both languages where they differ', async () => {
    const words = wordsOf((await rendered(longStatusTag(['en', 'es']))).pdf);
    expect(words).toContain('DEC/DIC 2027');
    expect(words).toContain('3 DEC/DIC 2026');
  });
});

test.runIf(requireTool('pdffonts'))('every font of the PDF is embedded', async () => {
  const lines = runTool('pdffonts', [saved((await rendered(statusTag(['en']))).pdf, 'pdf')])
    .trim()
    .split('\n')
    .slice(2);
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) expect(line).toMatch(/AtkinsonHyperlegible.*CID TrueType\s+Identity-H\s+yes/);
});

describe('a rendered tag', () => {
  test('has a page of the true size of the stock and a raster that carries its density', async () => {
    const tag = await rendered(statusTag(['en']), { dpi: 203 });
    const page = (await PDFDocument.load(tag.pdf)).getPage(0);
    // 1 pt = 1/72 in.
    expect(page.getWidth()).toBeCloseTo((100 / 25.4) * 72, 6);
    expect(page.getHeight()).toBeCloseTo((50 / 25.4) * 72, 6);
    const picture = await sharp(tag.png).metadata();
    expect([picture.width, picture.height, picture.density]).toEqual([799, 400, 203]);
  });

  test('is the same to the byte when it is rendered again', async () => {
    const [first, again] = [
      await rendered(quarantineTag(['en', 'es'], 3)),
      await rendered(quarantineTag(['en', 'es'], 3)),
    ];
    expect(Buffer.from(again.pdf).equals(Buffer.from(first.pdf))).toBe(true);
    expect(Buffer.from(again.png).equals(Buffer.from(first.png))).toBe(true);
  });
});

describe.runIf(requireTool('pdftotext'))('a tag after other tags', () => {
  test('has all its letters in the text of the PDF, also those that are parts of accented ones', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'srl-bench-tag-text-'));
    const texts: string[] = [];
    for (const turn of [1, 2]) {
      const rendered = await renderTag(quarantineTag(['en', 'es'], 3));
      if (isRefusal(rendered)) throw new Error(rendered.code);
      writeFileSync(join(folder, 'tag.pdf'), rendered.pdf);
      texts.push(runTool('pdftotext', ['-layout', join(folder, 'tag.pdf'), '-']));
      expect(texts.at(-1), `turn ${turn}`).toContain('Antes de que pueda volver');
    }
    rmSync(folder, { recursive: true });
    expect(texts[1]).toBe(texts[0]);
    expect(texts[0]).toContain('Retirado del servicio');
  });
});

describe('a character that the typeface lacks', () => {
  test('stands as a question mark, since a tag with one beats no tag', async () => {
    expect(isRefusal(await renderTag(statusTag(['en'], { model: 'Ж-15' })))).toBe(false);
    expect(
      shape('Ж-15', 'bold')
        .segments.map(({ text }) => text)
        .join(''),
    ).toBe('?-15');
  });
});

describe('a tag that cannot be made', () => {
  test('is refused with what does not fit and with a stock that takes it', async () => {
    const content = quarantineTag(['en', 'es'], 12);
    const refused = await renderTag(content);
    if (!isRefusal(refused)) throw new Error('was rendered');
    expect(refused.code).toBe('tag-does-not-fit');
    expect(refused.values.missing).toBe('The list of reasons');
    const { widthMm, heightMm } = refused.values;
    expect(
      isRefusal(
        await renderTag(content, {
          stock: stock(Number(widthMm), Number(heightMm)),
        }),
      ),
    ).toBe(false);
  });

  test('is refused where the stock is too small for a symbol at the least module', async () => {
    const refused = await renderTag(statusTag(['en']), {
      stock: stock(40, 20),
    });
    expect(refused).toMatchObject({ refused: true, code: 'tag-does-not-fit' });
  });

  test('is refused rather than clipped where a word has no end', async () => {
    const refused = await renderTag(statusTag(['en'], { serial: 'N'.repeat(300) }));
    expect(refused).toMatchObject({ code: 'tag-does-not-fit' });
  });

  test('is refused where the stock is larger than any that is printed', async () => {
    expect(await renderTag(idLabel, { stock: stock(5000, 5000) })).toMatchObject({
      code: 'input-invalid',
      field: 'stock',
    });
  });
});

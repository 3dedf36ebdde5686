import { describe, expect, test } from 'vitest';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import type { PrintableTag } from '../../src/domain/tag-content.ts';
import { type LaidOut, layOutTag } from '../../src/tags/lay-out-tag.ts';
import { smallestStock } from '../../src/tags/smallest-stock.ts';
import { dateText } from '../../src/tags/tag-date.ts';
import { word } from '../../src/tags/words.ts';
import { dotDensities, type Layout, symbolsOf, textsOf } from '../../src/typesetting/primitive.ts';
import { contentsIn, languageChoices, type StockCase, stockCases, stocks } from './every-stock.ts';
import { expectSound } from './sound-layout.ts';

const laidOut = ({ content, stock, dpi }: StockCase): LaidOut => layOutTag(content, stock, dpi);

/** From the OS/2 table of the typeface: height of `H` and of `x` over the em. */
const capHeightEm = 0.668;
const xHeightEm = 0.496;

/**
 * Least height of capitals by role. Signal word 1/150 and major message 1/300 of 5 ft (ANSI Z535.2 §9.2.3, 29 CFR
 * 1910.145(f)(4)(ii)); bench ID, month, place and its code 1/300 of an arm's length of 0.7 m (common practice, no source
 * for the 0.7 m).
 */
const leastCapMm: Record<string, number> = {
  'signal word': (60 * 25.4) / 150,
  'major message': (60 * 25.4) / 300,
  'bench ID': 700 / 300,
  'due month': 700 / 300,
  place: 700 / 300,
  'bin code': 700 / 300,
};

const expectLegible = (layout: Layout): void => {
  for (const { role, sizeMm, text } of textsOf(layout)) {
    expect(sizeMm * capHeightEm, text).toBeGreaterThanOrEqual((leastCapMm[role] ?? 0) - 1e-6);
    // Regulation (EU) 1169/2011 article 13(2), from memory: x-height of at least 1.2 mm.
    expect(sizeMm * xHeightEm, text).toBeGreaterThanOrEqual(1.2 - 1e-9);
  }
};

const expectReadableSymbols = (layout: Layout): void => {
  for (const symbol of symbolsOf(layout)) {
    // Common practice, no source: 0.25 mm (10 mil) for bars and 0.33 mm (13 mil) for matrices, by hand-held scanner.
    const least = symbol.symbology === 'Code 128' ? 0.25 : 0.33;
    expect((symbol.moduleWidthDots * 25.4) / layout.dotsPerInch).toBeGreaterThanOrEqual(least);
    for (const dots of [symbol.leftDots, symbol.topDots, symbol.moduleWidthDots, symbol.moduleHeightDots])
      expect(Number.isInteger(dots)).toBe(true);
    if (symbol.symbology !== 'Code 128') {
      expect(symbol.moduleHeightDots).toBe(symbol.moduleWidthDots);
      continue;
    }
    // Common practice, no source: bars no lower than 6.35 mm (¼ in), nor than 15 % of their length.
    const barsMm = (symbol.moduleHeightDots * 25.4) / layout.dotsPerInch;
    const lengthMm = (symbol.modules.columns * symbol.moduleWidthDots * 25.4) / layout.dotsPerInch;
    expect(barsMm).toBeGreaterThanOrEqual(Math.max(6.35, 0.15 * lengthMm) - 1e-9);
  }
};

/** What must be on the tag in words, whatever the stock. */
const requiredWords = (content: PrintableTag): readonly string[] => {
  switch (content.kind) {
    case 'id':
      return [formatBenchId(content.benchId)];
    case 'bin':
      return [content.code, ...content.languages.map((language) => content.place[language])];
    case 'status':
      return [
        formatBenchId(content.benchId),
        content.model,
        content.serial,
        content.inspectorMark,
        content.ratedLength,
        dateText(content.dueOn, content.languages),
        dateText(content.inspectedOn, content.languages),
        `${content.tagNumber}`,
        ...content.languages.flatMap((language) => [word('notMarking')[language], word('nextDue')[language]]),
      ];
    case 'quarantine':
      return [
        formatBenchId(content.benchId),
        content.model,
        content.serial,
        content.removedBy,
        dateText(content.removedOn, content.languages),
        `${content.tagNumber}`,
        ...content.languages.flatMap((language) => [
          word('danger')[language],
          word('doNotUse')[language],
          content.keptAt[language],
          ...content.reasons.map(({ sentence }) => sentence[language]),
          ...content.evidence.flatMap(({ anyOf }) => anyOf.map((message) => message[language].slice(1))),
          ...content.beforeReturn.map((message) => message[language]),
        ]),
      ];
  }
};

/** Without white space, since a line may end anywhere. */
const run = (text: string): string => text.replaceAll(/\s+/g, '');

const expectNothingRequiredDropped = (content: PrintableTag, layout: Layout): void => {
  const said = run(
    textsOf(layout)
      .map(({ text }) => text)
      .join(''),
  );
  for (const words of requiredWords(content)) expect(said).toContain(run(words));
  const found = symbolsOf(layout).map(({ symbology }) => symbology);
  expect(found).toContain(content.kind === 'id' || content.kind === 'bin' ? 'Data Matrix' : 'QR Code');
};

describe.each(dotDensities)('on every stock at %i dots per inch', (dpi) => {
  describe.each(languageChoices.map((languages) => [languages.join('+')]))('in %s', (named) => {
    const here = stockCases.filter((each) => each.dpi === dpi && each.languages.join('+') === named);
    test.each(contentsIn(here[0]!.languages).map(([name]) => name))(
      'nothing overlaps, is clipped, is too small to read or left out, or the tag is refused with what is missing: %s',
      (name) => {
        const cases = here.filter((each) => each.name.startsWith(`${name}, `));
        expect(cases).toHaveLength(stocks.length);
        for (const each of cases) {
          const laid = laidOut(each);
          if (!laid.fits) {
            expect(word(`part-${laid.missing}`).es, each.name).not.toBe('');
            continue;
          }
          expectSound(laid.layout);
          expectLegible(laid.layout);
          expectReadableSymbols(laid.layout);
          expectNothingRequiredDropped(each.content, laid.layout);
        }
      },
    );
  });
});

describe('a stock that is refused', () => {
  const refused = stockCases.filter((each) => each.dpi === 300 && !laidOut(each).fits);

  test('is answered with one that takes the tag, where there is any up to A3', () => {
    expect(refused.length).toBeGreaterThan(0);
    for (const { name, content, dpi } of refused) {
      const enough = smallestStock(content, dpi);
      expect(enough, name).toBeDefined();
      if (enough !== undefined) expect(layOutTag(content, enough, dpi).fits, name).toBe(true);
    }
  });

  test('is never refused for an ID label, nor for a short bin label', () => {
    const kinds = new Set(refused.map(({ name }) => name.split(',', 2).join(',')));
    expect(kinds).not.toContain('ID label, shortest');
    expect(kinds).not.toContain('bin label, shortest');
  });

  test('is never 60×40 mm or larger for a short status tag in one language', () => {
    const large = refused.filter(
      ({ name, languages, stock }) =>
        name.startsWith('status, shortest') &&
        languages.length === 1 &&
        stock.widthMm * stock.heightMm >= 2400,
    );
    expect(large.map(({ name }) => name)).toEqual([]);
  });

  test('is never 100×75 mm or larger for a quarantine tag with one reason in one language', () => {
    const large = refused.filter(
      ({ name, languages, stock }) =>
        name.startsWith('quarantine, shortest') &&
        languages.length === 1 &&
        stock.widthMm >= 100 &&
        stock.heightMm >= 75,
    );
    expect(large.map(({ name }) => name)).toEqual([]);
  });

  test('is refused for the signal word where it is narrower than the word at its least height', () => {
    // DANGER is six letters, none narrower than 0.6 em in the bold face: 6 × 0.6 × 15.2 mm is over 50 mm.
    for (const each of refused.filter(({ name }) => name.startsWith('quarantine'))) {
      const laid = laidOut(each);
      // The QR symbol of the longest text, 33 modules and two quiet zones at 0.33 mm, leaves nothing of 20 mm either.
      const first = each.stock.heightMm > 20 ? ['signalWord'] : ['signalWord', 'qrCode'];
      if (each.stock.widthMm <= 50 && !laid.fits) expect(first, each.name).toContain(laid.missing);
    }
  });
});

describe('Code 128', () => {
  test('is left out of a status tag only where the bars are wider than the stock at their least module', () => {
    for (const each of stockCases.filter(({ name }) => name.startsWith('status'))) {
      const laid = laidOut(each);
      if (!laid.fits) continue;
      // 145 modules and twice 10 X at 0.25 mm are 41.25 mm (ISO/IEC 15417).
      const narrow = each.stock.widthMm < 41.25;
      expect(laid.dropped.includes('code128'), each.name).toBe(narrow);
    }
  });
});

/** Every kind of tag with the least and the most that people write, on twelve stocks, three densities, three choices of language. */
import type { Language } from '../../src/domain/message.ts';
import type { PrintableTag } from '../../src/domain/tag-content.ts';
import { type DotDensity, dotDensities } from '../../src/typesetting/primitive.ts';
import {
  binLabel,
  evidenceOfTwelve,
  idLabel,
  longBinLabel,
  longStatusTag,
  quarantineTag,
  statusTag,
} from './sample-tags.ts';

/** From 40×20 mm to A5, portrait and landscape. */
export const stocks = [
  [40, 20],
  [50, 25],
  [60, 40],
  [50, 50],
  [75, 50],
  [100, 50],
  [50, 100],
  [100, 75],
  [100, 150],
  [150, 100],
  [148, 210],
  [210, 148],
] as const;

export const languageChoices: readonly Language[][] = [['en'], ['es'], ['en', 'es']];

export const contentsIn = (languages: Language[]): readonly (readonly [string, PrintableTag])[] => [
  ['status, shortest', statusTag(languages)],
  ['status, longest', longStatusTag(languages)],
  ['quarantine, shortest', quarantineTag(languages, 1)],
  [
    'quarantine, longest',
    quarantineTag(languages, 12, {
      ...longStatusTag(languages),
      kind: 'quarantine',
      removedBy: 'Rosalía Ibarra Muñoz',
      evidence: evidenceOfTwelve,
    }),
  ],
  ['ID label, shortest', idLabel],
  ['ID label, longest', idLabel],
  ['bin label, shortest', binLabel(languages)],
  ['bin label, longest', longBinLabel(languages)],
];

export interface StockCase {
  readonly name: string;
  readonly content: PrintableTag;
  readonly stock: { readonly widthMm: number; readonly heightMm: number };
  readonly dpi: DotDensity;
  readonly languages: Language[];
}

/** 8 contents × 12 stocks × 3 densities × 3 choices of language. */
export const stockCases: readonly StockCase[] = dotDensities.flatMap((dpi) =>
  languageChoices.flatMap((languages) =>
    contentsIn(languages).flatMap(([name, content]) =>
      stocks.map(([widthMm, heightMm]) => ({
        name: `${name}, ${languages.join('+')}, ${widthMm}×${heightMm} at ${dpi}`,
        content,
        stock: { widthMm, heightMm },
        dpi,
        languages,
      })),
    ),
  ),
);

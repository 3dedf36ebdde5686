/** The bench ID in letters as large as the width allows: one line, or two where one would be too small to read. */
import { formatBenchId } from '../domain/bench-id/bench-id.ts';
import type { BenchId } from '../domain/brand.ts';
import { type Block, headline, type Style, sizeForWidth } from '../typesetting/paragraph.ts';
import { capHeightEm } from '../typesetting/typeface.ts';
import { armsLengthCapMm } from './letter-height.ts';
import { pile } from './tag-layout.ts';

/** `undefined` where even two lines would not read at arm's length. */
export const identityHeadline = (
  benchId: BenchId,
  widthMm: number,
  preferredMm: number,
): Block | undefined => {
  const shown = formatBenchId(benchId);
  return identityLines([shown], widthMm, preferredMm) ?? identityLines(halves(shown), widthMm, preferredMm);
};

/** The lines in one size, with the distance of lines that belong together. */
export const identityLines = (
  lines: readonly string[],
  widthMm: number,
  preferredMm: number,
): Block | undefined => {
  const sizeMm = Math.min(...lines.map((line) => sizeForWidth(line, 'bold', widthMm, preferredMm)));
  if (sizeMm * capHeightEm < armsLengthCapMm) return undefined;
  const style: Style = { role: 'bench ID', weight: 'bold', sizeMm };
  return pile(
    lines.map((line) => headline(line, style)),
    sizeMm * capHeightEm * 0.55,
  );
};

/** `K7M3X-` over `4Q9TD`: the hyphen says that the ID goes on. */
export const halves = (shown: string): readonly [string, string] => {
  const cut = shown.indexOf('-') + 1;
  return [shown.slice(0, cut), shown.slice(cut)];
};

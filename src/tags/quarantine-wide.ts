/** The quarantine tag on landscape stock: the reasons at the left, where it is kept and what it is at the right. */
import type { QuarantineTag } from '../domain/tag-content.ts';
import type { Arrangement, Face } from './arrange.ts';
import { identityColumn } from './identity-column.ts';
import { beforeReturn, footer, reasonParts, removalUnder, type Sheet } from './quarantine-parts.ts';
import { headerInOneRow } from './signal-header.ts';
import { atLargestSizes, type Place, type Stacked, stack } from './stack.ts';
import { edgeMm } from './tag-layout.ts';
import type { TagPart } from './words.ts';

const marginMm = 3;
const columnGapMm = 4;

export const quarantineWide = (tag: QuarantineTag, face: Face): Arrangement => ({
  name: 'wide',
  at: (tightness, dropped) => {
    const scale = Math.min(face.widthMm / 170, face.heightMm / 115);
    const widthMm = face.widthMm - 2 * marginMm;
    const header = headerInOneRow(tag.languages, {
      widthMm,
      scale: scale * 1.2,
      tightness,
      paddingMm: 2.8,
      signalWord: face.signalWord,
    });
    if (!header.fits) return header;
    const topMm = marginMm + header.block.heightMm + 2 * scale;
    const heightMm = face.heightMm - marginMm - topMm;
    const rightMm = Math.max(48, widthMm * 0.4);
    const leftMm = widthMm - columnGapMm - rightMm;
    const left: Sheet = { tag, widthMm: leftMm, scale: scale * 1.1, tightness };
    const reasons = stack(
      [
        ...reasonParts(left),
        { part: 'beforeReturn', block: beforeReturn(left), gapMm: 1.6, gapShare: 2, claim: 3 },
      ],
      { xMm: marginMm, yMm: topMm, heightMm },
    );
    if (!reasons.fits) return reasons;
    const facts = atLargestSizes((ofFacts) =>
      factsColumn({ tag, widthMm: rightMm, scale: scale * 1.3, tightness: ofFacts }, face, dropped, {
        xMm: marginMm + leftMm + columnGapMm,
        yMm: topMm,
        heightMm,
      }),
    );
    if (!facts.fits) return facts;
    return {
      fits: true,
      primitives: [...header.block.draw(marginMm, marginMm), ...reasons.primitives, ...facts.primitives],
    };
  },
});

/** Has its own sizes: it holds far less than the reasons do. */
const factsColumn = (sheet: Sheet, face: Face, dropped: ReadonlySet<TagPart>, place: Place): Stacked => {
  const identity = identityColumn(sheet.tag, {
    ...sheet,
    besideMm: marginMm - edgeMm,
    dotsPerInch: face.dotsPerInch,
    bars: !dropped.has('code128'),
  });
  if (!identity.fits) return identity;
  return stack(
    [
      { part: 'removal', block: removalUnder(sheet), gapMm: 0, claim: 1 },
      { part: 'benchId', block: identity.block, gapMm: 1.6, gapShare: 2, claim: 0 },
      { part: 'removal', block: footer(sheet, dropped), gapMm: 0.8, gapShare: 1, claim: 1 },
    ],
    place,
  );
};

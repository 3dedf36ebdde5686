/** The quarantine tag on little stock: the header in as few rows as it takes, the reasons beside the QR Code, running lines under them. */
import type { QuarantineTag } from '../domain/tag-content.ts';
import { writeTagText } from '../domain/tag-text.ts';
import { type Block, paragraph, sizeForCapHeight } from '../typesetting/paragraph.ts';
import { dotMm } from '../typesetting/primitive.ts';
import { encodeSymbol, moduleDots } from '../typesetting/symbol.ts';
import type { Arrangement, Face } from './arrange.ts';
import { deviceLines } from './identity-block.ts';
import { identityHeadline } from './identity-headline.ts';
import { besideMatrix, widthBesideMatrixMm } from './matrix-block.ts';
import { beforeReturn, footer, reasonParts, removalRunning, type Sheet } from './quarantine-parts.ts';
import { headerInOneRow, headerParts } from './signal-header.ts';
import { type StackPart, stack } from './stack.ts';
import { beside, edgeMm, indented, leastBarsBlock, pile } from './tag-layout.ts';
import type { TagPart } from './words.ts';

const marginMm = 2;
/** The least width of a column of words beside the bars. */
const leastWordsMm = 30;

export const quarantineCompact = (tag: QuarantineTag, face: Face): Arrangement => ({
  name: 'compact',
  at: (tightness, dropped) => {
    const scale = Math.min(face.widthMm / 100, face.heightMm / 90);
    const widthMm = face.widthMm - 2 * marginMm;
    const sheet: Sheet = { tag, widthMm, scale, tightness };
    const listed = reasonsBesideQr(sheet, face);
    if (!listed.fits) return listed;
    return stack(
      [
        ...header(sheet, face),
        { part: 'reasons', block: listed.block, gapMm: 1, gapShare: 1, claim: 2 },
        { part: 'removal', block: removalRunning(sheet), gapMm: 0.6, gapShare: 1, claim: 1 },
        { part: 'benchId', block: identity(sheet, face, dropped), gapMm: 1, gapShare: 1, claim: 0 },
        { part: 'removal', block: footer(sheet, dropped), gapMm: 0.4, gapShare: 0.5, claim: 1 },
      ],
      { xMm: marginMm, yMm: marginMm, heightMm: face.heightMm - 2 * marginMm },
    );
  },
});

const header = (sheet: Sheet, face: Face): readonly StackPart[] => {
  const space = { ...sheet, paddingMm: 1.6, signalWord: face.signalWord };
  const row = headerInOneRow(sheet.tag.languages, space);
  return row.fits
    ? [{ part: 'signalWord', block: row.block, gapMm: 0, claim: 0 }]
    : headerParts(sheet.tag.languages, space);
};

type BesideQr =
  | { readonly fits: true; readonly block: Block }
  | { readonly fits: false; readonly missing: TagPart };

const reasonsBesideQr = (sheet: Sheet, face: Face): BesideQr => {
  const { tag, widthMm, scale, tightness } = sheet;
  const modules = encodeSymbol('QR Code', writeTagText(tag));
  const widthDots = moduleDots(modules, widthMm * 0.4, 0.5 * scale, face.dotsPerInch);
  if (widthDots === undefined) return { fits: false, missing: 'qrCode' };
  const qr = { modules, widthDots, dotsPerInch: face.dotsPerInch };
  const space = { widthMm, besideMm: marginMm - edgeMm };
  const left: Sheet = { tag, widthMm: widthBesideMatrixMm(qr, space) - 1, scale, tightness };
  const parts = [...reasonParts(left).map(({ block }) => block), beforeReturn(left)];
  const known = parts.filter((block) => block !== undefined);
  if (known.length < parts.length) return { fits: false, missing: 'reasons' };
  return { fits: true, block: besideMatrix(pile(known, 0.8), qr, space, 'top') };
};

/** Bench ID over the bars, and the device beside them, or under them where there is little width. */
const identity = (sheet: Sheet, face: Face, dropped: ReadonlySet<TagPart>): Block | undefined => {
  const { tag, widthMm, scale, tightness } = sheet;
  const words = (roomMm: number): Block | undefined =>
    paragraph(deviceLines(tag, scale, tightness), roomMm, tightness === 1);
  const capMm = sizeForCapHeight(5.5 * scale);
  if (dropped.has('code128')) {
    const parts = [identityHeadline(tag.benchId, widthMm, capMm), words(widthMm)];
    const known = parts.filter((block) => block !== undefined);
    return known.length < parts.length ? undefined : pile(known, 1);
  }
  const modules = encodeSymbol('Code 128', tag.benchId);
  const besideMm = marginMm - edgeMm;
  const widthDots = moduleDots(modules, widthMm + 2 * besideMm, 0.3, face.dotsPerInch);
  if (widthDots === undefined) return undefined;
  const moduleMm = widthDots * dotMm(face.dotsPerInch);
  const quietMm = modules.quietX * moduleMm;
  const barsMm = modules.columns * moduleMm;
  const indentMm = Math.max(0, quietMm - besideMm);
  const benchId = identityHeadline(tag.benchId, barsMm, capMm);
  if (benchId === undefined) return undefined;
  const bars = indented(leastBarsBlock(modules, widthDots, face.dotsPerInch), -quietMm);
  const column = indented(pile([benchId, bars], 1), indentMm);
  const rightMm = indentMm + barsMm + quietMm + 1;
  const roomMm = widthMm - rightMm;
  const device = words(roomMm >= leastWordsMm ? roomMm : widthMm);
  if (device === undefined) return undefined;
  return roomMm >= leastWordsMm
    ? beside([
        { block: column, xMm: 0 },
        { block: device, xMm: rightMm },
      ])
    : pile([column, device], 0.8);
};

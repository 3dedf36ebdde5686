/** The ways in which a tag can be given out, in the order in which they are offered. */
import type { CurrentTag } from '../../../src/domain/device.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import type { OutputOf } from '../../../src/station/contract.ts';

export type PrinterView = OutputOf<'printer.list'>['printers'][number];

export type PrintWay =
  | { readonly way: 'printer'; readonly printer: PrinterView }
  /** Saved, and opened with whatever shows PDF here. */
  | { readonly way: 'open' };

export const openWay: PrintWay = { way: 'open' };

/** Choices are picked by one digit. */
const most = 9;

export interface PrintCase {
  readonly printers: readonly PrinterView[];
  readonly kind: TagKind;
  /** It was printed before: the next thing to do is to scan it, not to print it. */
  readonly isAgain: boolean;
  /** Somebody asked to see every way. */
  readonly isWhole: boolean;
  /** The printer that it just came out of. */
  readonly used: PrinterView | undefined;
  /** The way that was just refused. */
  readonly failed: PrintWay | undefined;
  /** A printer on whose stock the tag has no room. */
  readonly misfit: PrinterView | undefined;
}

export interface PrintOffer {
  readonly ways: readonly PrintWay[];
  /** The one next thing to do. */
  readonly primary: PrintWay | undefined;
  /** There are more ways than these. */
  readonly isFolded: boolean;
}

/** What is offered: after a refusal the same way first and then all others; else the usual way, and the others on demand. */
export const offerOf = ({
  printers,
  kind,
  isAgain,
  isWhole,
  used,
  failed,
  misfit,
}: PrintCase): PrintOffer => {
  const all = waysOf(printers, kind);
  const usual = primaryWayOf(printers, kind);
  if (failed !== undefined) {
    const ways = [...all.filter((way) => isSame(way, failed)), ...all.filter((way) => !isSame(way, failed))];
    return { ways, primary: isOn(failed, misfit) ? openWay : failed, isFolded: false };
  }
  if (isOn(usual, misfit)) return { ways: all, primary: isAgain ? undefined : openWay, isFolded: false };
  const primary = isAgain ? undefined : usual;
  const lead = used === undefined ? usual : ({ way: 'printer', printer: used } as const);
  if (lead === undefined || isWhole || all.length <= 2) return { ways: all, primary, isFolded: false };
  return { ways: [lead], primary, isFolded: true };
};

/** Where this kind of tag goes, then the other printers, then the document; the document first where it goes nowhere. */
export const waysOf = (printers: readonly PrinterView[], kind: TagKind): readonly PrintWay[] => {
  const meant = printers.filter(({ tagKinds }) => tagKinds.includes(kind));
  const others = printers.filter(({ tagKinds }) => !tagKinds.includes(kind));
  const ways = [...meant, ...others]
    .slice(0, most - 1)
    .map((printer): PrintWay => ({ way: 'printer', printer }));
  return meant.length === 0 ? [openWay, ...ways] : [...ways, openWay];
};

/** The usual way: none where several printers are meant, for their stock may differ. */
export const primaryWayOf = (printers: readonly PrinterView[], kind: TagKind): PrintWay | undefined => {
  const [first, second] = printers.filter(({ tagKinds }) => tagKinds.includes(kind));
  if (second !== undefined) return undefined;
  return first === undefined ? openWay : { way: 'printer', printer: first };
};

export const keyOf = (way: PrintWay): string => (way.way === 'open' ? 'open' : way.printer.printerId);

export const isSame = (one: PrintWay, other: PrintWay): boolean => keyOf(one) === keyOf(other);

const isOn = (way: PrintWay | undefined, printer: PrinterView | undefined): boolean =>
  way?.way === 'printer' && way.printer.printerId === printer?.printerId;

/** Whether a further print must be explained. An ID label is never counted. */
export const needsReason = (kind: TagKind, tag: CurrentTag | undefined): tag is CurrentTag =>
  kind !== 'id' && tag?.kind === kind && tag.printed > 0;

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

/** Where this kind of tag goes, then the other printers, then the document; the document first where it goes nowhere. */
export const waysOf = (printers: readonly PrinterView[], kind: TagKind): readonly PrintWay[] => {
  const meant = printers.filter(({ tagKinds }) => tagKinds.includes(kind));
  const others = printers.filter(({ tagKinds }) => !tagKinds.includes(kind));
  const ways = [...meant, ...others]
    .slice(0, most - 1)
    .map((printer): PrintWay => ({ way: 'printer', printer }));
  return meant.length === 0 ? [openWay, ...ways] : [...ways, openWay];
};

/** The one next thing to do: nothing stands out where several printers are meant, for their stock may differ. */
export const primaryWayOf = (printers: readonly PrinterView[], kind: TagKind): PrintWay | undefined => {
  const [first, second] = printers.filter(({ tagKinds }) => tagKinds.includes(kind));
  if (second !== undefined) return undefined;
  return first === undefined ? openWay : { way: 'printer', printer: first };
};

/** After a refusal: the same printer once more, then the rest. */
export const waysAgain = (ways: readonly PrintWay[], printerId: string): readonly PrintWay[] => [
  ...ways.filter((each) => isOn(each, printerId)),
  ...ways.filter((each) => !isOn(each, printerId)),
];

export const isOn = (way: PrintWay, printerId: string | undefined): boolean =>
  way.way === 'printer' && way.printer.printerId === printerId;

/** Whether a further print must be explained. An ID label is never counted. */
export const needsReason = (kind: TagKind, tag: CurrentTag | undefined): tag is CurrentTag =>
  kind !== 'id' && tag?.kind === kind && tag.printed > 0;

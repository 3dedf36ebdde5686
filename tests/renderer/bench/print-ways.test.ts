/** In which ways a tag can be given out, and which of them is the one to take next. */
import { describe, expect, it } from 'vitest';
import {
  keyOf,
  needsReason,
  offerOf,
  openWay,
  type PrintCase,
  type PrinterView,
  type PrintWay,
  primaryWayOf,
  waysOf,
} from '../../../renderer/screens/bench/print-ways.ts';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { CurrentTag } from '../../../src/domain/device.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';

const printer = (printerId: string, ...tagKinds: TagKind[]): PrinterView => ({
  printerId,
  tagKinds,
  face: { form: { shape: 'flat' } },
  settings: {
    kind: 'folder',
    name: printerId,
    stock: { widthMm: 100, heightMm: 50 },
    dpi: 300,
    offset: { xMm: 0, yMm: 0 },
    colour: 'monochrome',
    folder: '/tags',
    withPicture: true,
  },
});

const on = (view: PrinterView): PrintWay => ({ way: 'printer', printer: view });
const keys = (ways: readonly PrintWay[]): readonly string[] => ways.map(keyOf);

const labels = printer('labels', 'status');
const danger = printer('danger', 'quarantine');
const spare = printer('spare');
const all = [danger, labels, spare];

const calm: PrintCase = {
  printers: all,
  kind: 'status',
  isAgain: false,
  isWhole: false,
  used: undefined,
  failed: undefined,
  misfit: undefined,
};

const tag: CurrentTag = {
  kind: 'status',
  tagNumber: 3,
  issuedOn: calendarDate('2026-11-24'),
  printed: 1,
};

describe('the ways to give a tag out', () => {
  it('begin with the printer that the kind is meant for and end with the document', () => {
    expect(keys(waysOf(all, 'status'))).toEqual(['labels', 'danger', 'spare', 'open']);
    expect(keys(waysOf(all, 'quarantine'))).toEqual(['danger', 'labels', 'spare', 'open']);
  });

  it('begin with the document where the kind is meant for no printer', () => {
    expect(keys(waysOf(all, 'id'))).toEqual(['open', 'danger', 'labels', 'spare']);
    expect(primaryWayOf(all, 'id')).toEqual(openWay);
  });

  it('are never more than one digit can pick, the document among them', () => {
    const many = Array.from({ length: 12 }, (_, index) => printer(`p${index}`, 'status'));
    const ways = keys(waysOf(many, 'status'));
    expect(ways).toHaveLength(9);
    expect(ways.at(-1)).toBe('open');
  });

  it('have none that stands out where several printers are meant', () => {
    expect(primaryWayOf([labels, printer('second', 'status')], 'status')).toBeUndefined();
  });
});

describe('what is offered', () => {
  it('is the usual printer, with the others folded away', () => {
    const offer = offerOf(calm);
    expect(keys(offer.ways)).toEqual(['labels']);
    expect(offer).toMatchObject({ isFolded: true, primary: on(labels) });
  });

  it('is everything once somebody asks for it', () => {
    const offer = offerOf({ ...calm, isWhole: true });
    expect(keys(offer.ways)).toEqual(['labels', 'danger', 'spare', 'open']);
    expect(offer.isFolded).toBe(false);
  });

  it('has nothing to do next when the tag was printed: it is to be scanned', () => {
    expect(offerOf({ ...calm, isAgain: true }).primary).toBeUndefined();
  });

  it('leads with the printer that the tag just came out of', () => {
    expect(keys(offerOf({ ...calm, isAgain: true, used: spare }).ways)).toEqual(['spare']);
  });

  it('leads after a refusal with the same printer and shows all the others', () => {
    const offer = offerOf({ ...calm, failed: on(spare) });
    expect(keys(offer.ways)).toEqual(['spare', 'labels', 'danger', 'open']);
    expect(offer).toMatchObject({ isFolded: false, primary: on(spare) });
  });

  it('is the document first of all where the tag has no room on the stock of its printer', () => {
    expect(offerOf({ ...calm, misfit: labels })).toMatchObject({ isFolded: false, primary: openWay });
    expect(offerOf({ ...calm, failed: on(labels), misfit: labels }).primary).toEqual(openWay);
  });
});

describe('a further print', () => {
  it('must be explained once the tag was printed', () => {
    expect(needsReason('status', tag)).toBe(true);
    expect(needsReason('status', { ...tag, printed: 0 })).toBe(false);
  });

  it('of an ID label is never asked about', () => {
    expect(needsReason('id', tag)).toBe(false);
  });
});

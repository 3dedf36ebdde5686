/** Where everything on a tag stands: its content laid out on every face of its form, clear of the hole and of pre-printed red. */
import type { PrintableTag } from '../domain/tag-content.ts';
import { type Box, type DotDensity, dotMm, type Layout, type Primitive } from '../typesetting/primitive.ts';
import type { Arranged, ArrangementName, Face } from './arrange.ts';
import { binLabelStock, layOutBinLabel } from './bin-label.ts';
import { type FormFace, foldMark, planForm, type TagForm } from './form.ts';
import { type Circle, type Hole, keepOutOf, partsBeside, touches } from './hole.ts';
import { idLabelStock, layOutIdLabel } from './id-label.ts';
import { type Ink, inInk } from './ink.ts';
import { markBoxOf } from './mark-box.ts';
import { layOutQuarantineTag, quarantineTagStock } from './quarantine-tag.ts';
import { halfTurned, shifted } from './shift.ts';
import { layOutStatusTag, statusTagStock } from './status-tag.ts';
import type { Stock } from './tag-layout.ts';
import type { TagPart } from './words.ts';

export const defaultStock: Record<PrintableTag['kind'], Stock> = {
  status: statusTagStock,
  quarantine: quarantineTagStock,
  id: idLabelStock,
  bin: binLabelStock,
};

export interface LayoutOptions {
  /** Flat where it is absent. */
  readonly form?: TagForm;
  readonly hole?: Hole;
  /** `colour` where it is absent. */
  readonly ink?: Ink;
  /** Height of the pre-printed red from the top of the stock; only with `pre-printed header`. */
  readonly headerMm?: number;
}

export type LaidOut =
  | {
      readonly fits: true;
      readonly layout: Layout;
      readonly arrangement: ArrangementName;
      /** Parts that the tag can go without, left out for want of room. */
      readonly dropped: readonly TagPart[];
      /** The boxes of the stock that print may stand in. */
      readonly faces: readonly FormFace[];
    }
  | { readonly fits: false; readonly missing: TagPart };

/** Never clips: a part that does not fit at its legible minimum is named instead. */
export const layOutTag = (
  content: PrintableTag,
  stock: Stock,
  dotsPerInch: DotDensity,
  options: LayoutOptions = {},
): LaidOut => {
  const { form = { shape: 'flat' }, hole, ink = 'colour', headerMm = 0 } = options;
  const plan = planForm(stock, form, ink === 'pre-printed header' ? headerMm : 0);
  const circles = hole === undefined ? [] : circlesOf(hole, stock, form);
  const primitives: Primitive[] = [];
  let first: Extract<Arranged, { fits: true }> | undefined;
  for (const face of plan.faces) {
    const laid = layOutFace(content, face, circles, { dotsPerInch, ink });
    if (!laid.fits) return laid;
    first ??= laid;
    primitives.push(...laid.primitives);
  }
  if (first === undefined) return { fits: false, missing: 'width' };
  if (plan.fold !== undefined) primitives.push(foldMark(stock, plan.fold));
  const layout = { ...stock, dotsPerInch, primitives };
  return {
    fits: true,
    layout: inInk(layout, ink),
    arrangement: first.arrangement,
    dropped: first.dropped,
    faces: plan.faces,
  };
};

/** The hole goes through both layers of a folded flag. */
const circlesOf = (hole: Hole, stock: Stock, form: TagForm): readonly Circle[] => {
  const here = keepOutOf(hole);
  if (form.shape !== 'flag') return [here];
  return form.fold === 'upright'
    ? [here, { ...here, xMm: stock.widthMm - here.xMm }]
    : [here, { ...here, yMm: stock.heightMm - here.yMm }];
};

interface Printing {
  readonly dotsPerInch: DotDensity;
  readonly ink: Ink;
}

/** On the whole face where the hole happens to be in white already, else on the largest part beside the hole that takes it. */
const layOutFace = (
  content: PrintableTag,
  face: FormFace,
  circles: readonly Circle[],
  printing: Printing,
): Arranged => {
  const whole = layOutBox(content, face, face.turned, printing);
  if (!whole.fits) return whole;
  const hit = circles.find((circle) => whole.primitives.some((mark) => touches(circle, markBoxOf(mark))));
  if (hit === undefined) return whole;
  let missing: TagPart = 'width';
  for (const part of partsBeside(face, hit)) {
    const laid = layOutFace(content, { ...part, turned: face.turned }, circles, printing);
    if (laid.fits) return laid;
    missing = laid.missing;
  }
  return { fits: false, missing };
};

const layOutBox = (content: PrintableTag, box: Box, turned: boolean, printing: Printing): Arranged => {
  const { dotsPerInch, ink } = printing;
  const dot = dotMm(dotsPerInch);
  const left = Math.ceil(box.xMm / dot - 1e-9);
  const top = Math.ceil(box.yMm / dot - 1e-9);
  const moved = left !== 0 || top !== 0 || turned;
  const widthDots = Math.floor((box.xMm + box.widthMm) / dot + 1e-9) - left;
  const heightDots = Math.floor((box.yMm + box.heightMm) / dot + 1e-9) - top;
  if (widthDots <= 0 || heightDots <= 0) return { fits: false, missing: 'width' };
  const laid = arrangeKind(content, {
    widthMm: moved ? widthDots * dot : box.widthMm,
    heightMm: moved ? heightDots * dot : box.heightMm,
    dotsPerInch,
    signalWord: ink === 'pre-printed header' ? 'pre-printed' : 'printed',
  });
  if (!laid.fits || !moved) return laid;
  const upright = turned
    ? halfTurned(laid.primitives, { widthDots, heightDots }, dotsPerInch)
    : laid.primitives;
  return { ...laid, primitives: shifted(upright, { rightDots: left, downDots: top }, dotsPerInch) };
};

const arrangeKind = (content: PrintableTag, face: Face): Arranged => {
  switch (content.kind) {
    case 'status':
      return layOutStatusTag(content, face);
    case 'quarantine':
      return layOutQuarantineTag(content, face);
    case 'id':
      return layOutIdLabel(content, face);
    case 'bin':
      return layOutBinLabel(content, face);
  }
};

/** The form of a tag: flat, round something with a clear tail, or folded over as a flag; and where print may stand on it. */
import type { Box, Primitive } from '../typesetting/primitive.ts';
import type { Stock } from './tag-layout.ts';

export type TagForm =
  | { readonly shape: 'flat' }
  /** Wound round a strap: the clear tail covers the print. Nothing is printed on the last `tailMm` of the stock. */
  | { readonly shape: 'wrap'; readonly tailAt: 'right' | 'below'; readonly tailMm: number }
  /**
   * Folded in the middle round a strap or cable. A level fold lies across the tag, an upright one along its height. Nothing
   * is printed within half of `clearMm` of the fold but the mark of the fold itself.
   */
  | {
      readonly shape: 'flag';
      readonly fold: 'level' | 'upright';
      readonly sides: 'both' | 'one';
      readonly clearMm: number;
    };

export interface FormFace extends Box {
  /** Upside down, since it is seen from behind once the tag is folded. */
  readonly turned: boolean;
}

/** Where print may stand, and the fold. All in millimetres from the top left of the stock. */
export interface FormPlan {
  /** The first one is the front. */
  readonly faces: readonly FormFace[];
  readonly fold?: { readonly at: 'level' | 'upright'; readonly mm: number };
}

/** Faces may come out negative on stock that is smaller than its tail or clear band. */
export const planForm = (stock: Stock, form: TagForm, headerMm: number): FormPlan => {
  switch (form.shape) {
    case 'flat':
      return { faces: [face(0, headerMm, stock.widthMm, stock.heightMm - headerMm)] };
    case 'wrap':
      return form.tailAt === 'right'
        ? { faces: [face(0, headerMm, stock.widthMm - form.tailMm, stock.heightMm - headerMm)] }
        : { faces: [face(0, headerMm, stock.widthMm, stock.heightMm - form.tailMm - headerMm)] };
    case 'flag':
      return form.fold === 'upright'
        ? uprightFlag(stock, form.sides, form.clearMm, headerMm)
        : levelFlag(stock, form.sides, form.clearMm);
  }
};

const face = (xMm: number, yMm: number, widthMm: number, heightMm: number, turned = false): FormFace => ({
  xMm,
  yMm,
  widthMm,
  heightMm,
  turned,
});

const uprightFlag = (stock: Stock, sides: 'both' | 'one', clearMm: number, headerMm: number): FormPlan => {
  const sideMm = (stock.widthMm - clearMm) / 2;
  const heightMm = stock.heightMm - headerMm;
  const front = face(0, headerMm, sideMm, heightMm);
  const back = face(stock.widthMm - sideMm, headerMm, sideMm, heightMm);
  return {
    faces: sides === 'both' ? [front, back] : [front],
    fold: { at: 'upright', mm: stock.widthMm / 2 },
  };
};

/** The front is the lower half: the flag hangs from its fold. */
const levelFlag = (stock: Stock, sides: 'both' | 'one', clearMm: number): FormPlan => {
  const sideMm = (stock.heightMm - clearMm) / 2;
  const front = face(0, stock.heightMm - sideMm, stock.widthMm, sideMm);
  const back = face(0, 0, stock.widthMm, sideMm, true);
  return {
    faces: sides === 'both' ? [front, back] : [front],
    fold: { at: 'level', mm: stock.heightMm / 2 },
  };
};

/** The stock that gives a face of this size. */
export const stockOfFace = (size: Stock, form: TagForm, headerMm: number): Stock => {
  switch (form.shape) {
    case 'flat':
      return { widthMm: size.widthMm, heightMm: size.heightMm + headerMm };
    case 'wrap':
      return form.tailAt === 'right'
        ? { widthMm: size.widthMm + form.tailMm, heightMm: size.heightMm + headerMm }
        : { widthMm: size.widthMm, heightMm: size.heightMm + form.tailMm + headerMm };
    case 'flag':
      return form.fold === 'upright'
        ? { widthMm: 2 * size.widthMm + form.clearMm, heightMm: size.heightMm + headerMm }
        : { widthMm: size.widthMm, heightMm: 2 * size.heightMm + form.clearMm };
  }
};

const dashMm = 2;

/** Short dashes along the fold, 1 mm clear of the edges. */
export const foldMark = (stock: Stock, fold: NonNullable<FormPlan['fold']>): Primitive => {
  const lengthMm = fold.at === 'upright' ? stock.heightMm : stock.widthMm;
  const dashes: string[] = [];
  for (let atMm = 1; atMm + dashMm <= lengthMm - 1; atMm += 2 * dashMm)
    dashes.push(fold.at === 'upright' ? `M0,${atMm}V${atMm + dashMm}` : `M${atMm},0H${atMm + dashMm}`);
  return {
    kind: 'path',
    data: dashes.join(' '),
    xMm: fold.at === 'upright' ? fold.mm : 0,
    yMm: fold.at === 'upright' ? 0 : fold.mm,
    unitMm: 1,
    colour: 'black',
    strokeUnits: 0.25,
  };
};

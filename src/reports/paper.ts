/** The paper that reports are set on, and what of a page the text may use. */

export const papers = ['a4', 'letter'] as const;
export type Paper = (typeof papers)[number];

/** A4 by ISO 216; US Letter is 8.5 by 11 in, at 25.4 mm an inch. */
const sizes: Readonly<Record<Paper, { readonly widthMm: number; readonly heightMm: number }>> = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
};

/** The left margin takes the holes of a binder. */
const marginMm = { left: 20, right: 15, top: 24, bottom: 18 };

export interface Frame {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The text stands within these, from the top left of the page. */
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly textWidthMm: number;
}

export const frameOf = (paper: Paper): Frame => {
  const { widthMm, heightMm } = sizes[paper];
  return {
    widthMm,
    heightMm,
    leftMm: marginMm.left,
    topMm: marginMm.top,
    rightMm: widthMm - marginMm.right,
    bottomMm: heightMm - marginMm.bottom,
    textWidthMm: widthMm - marginMm.left - marginMm.right,
  };
};

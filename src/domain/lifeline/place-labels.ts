/** Sets labels beside the marks that they belong to, in as few lanes as it takes, so that none overlaps another. */

export interface LabelWanted {
  /** Where the mark is. */
  readonly x: number;
  readonly text: string;
}

export interface PlacedLabel {
  /** The left end of the label. */
  readonly left: number;
  readonly width: number;
  /** From 0, nearest to the marks. */
  readonly lane: number;
  /** The text, cut with an ellipsis where it would be wider than the drawing. */
  readonly text: string;
}

export interface LabelSpace {
  /** Of the drawing; every label lies between 0 and here. */
  readonly width: number;
  /** Least room between two labels of one lane. */
  readonly gap: number;
  /** How wide a text is, in the same unit. */
  readonly measure: (text: string) => number;
}

/** One label for each wanted, in the same order: centred on its mark, or as near to that as the ends of the drawing let it. */
export const placeLabels = (wanted: readonly LabelWanted[], space: LabelSpace): readonly PlacedLabel[] => {
  const taken: { readonly left: number; readonly right: number }[][] = [];
  const inOrder = wanted.map((label, index) => ({ label, index })).sort((a, b) => a.label.x - b.label.x);
  const placed = new Map<number, PlacedLabel>();
  for (const { label, index } of inOrder) {
    const text = cut(label.text, space);
    const width = Math.min(space.measure(text), space.width);
    const left = Math.min(Math.max(label.x - width / 2, 0), space.width - width);
    const isFree = (lane: (typeof taken)[number]) =>
      lane.every((other) => left + width + space.gap <= other.left || other.right + space.gap <= left);
    const found = taken.findIndex(isFree);
    const lane = found === -1 ? taken.length : found;
    taken[lane] = [...(taken[lane] ?? []), { left, right: left + width }];
    placed.set(index, { left, width, lane, text });
  }
  return wanted.flatMap((_, index) => placed.get(index) ?? []);
};

const cut = (text: string, { width, measure }: LabelSpace): string => {
  if (measure(text) <= width) return text;
  const characters = [...text];
  while (characters.length > 0 && measure(`${characters.join('')}…`) > width) characters.pop();
  return `${characters.join('').trimEnd()}…`;
};

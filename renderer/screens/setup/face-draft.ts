/** The stock of a printer besides its size, while it is being entered: its form, its hole, its red header. */
import type { InputOf } from '../../../src/station/contract.ts';

export type TagFace = NonNullable<InputOf<'printer.save'>['face']>;

export const shapes = ['flat', 'wrap', 'flag'] as const;
export const tails = ['right', 'below'] as const;
export const folds = ['upright', 'level'] as const;
export const sides = ['both', 'one'] as const;

export interface FaceDraft {
  readonly shape: (typeof shapes)[number];
  readonly tailAt: (typeof tails)[number];
  readonly tailMm: string;
  readonly fold: (typeof folds)[number];
  readonly sides: (typeof sides)[number];
  readonly clearMm: string;
  readonly hasHole: boolean;
  readonly holeXMm: string;
  readonly holeYMm: string;
  readonly holeDiameterMm: string;
  readonly hasHeader: boolean;
  readonly headerMm: string;
}

/** The millimetres are those of common wrap tags, flags and eyelets (common practice, no source). */
export const flatFace: FaceDraft = {
  shape: 'flat',
  tailAt: 'right',
  tailMm: '50',
  fold: 'upright',
  sides: 'both',
  clearMm: '6',
  hasHole: false,
  holeXMm: '50',
  holeYMm: '6',
  holeDiameterMm: '5',
  hasHeader: false,
  headerMm: '30',
};

export const faceDraftOf = ({ form, hole, preprintedHeaderMm }: TagFace): FaceDraft => ({
  ...flatFace,
  shape: form?.shape ?? 'flat',
  ...(form?.shape === 'wrap' ? { tailAt: form.tailAt, tailMm: String(form.tailMm) } : {}),
  ...(form?.shape === 'flag' ? { fold: form.fold, sides: form.sides, clearMm: String(form.clearMm) } : {}),
  ...(hole === undefined
    ? {}
    : {
        hasHole: true,
        holeXMm: String(hole.xMm),
        holeYMm: String(hole.yMm),
        holeDiameterMm: String(hole.diameterMm),
      }),
  ...(preprintedHeaderMm === undefined ? {} : { hasHeader: true, headerMm: String(preprintedHeaderMm) }),
});

/** A comma is a decimal point as well; not a number where the text is none. */
const mm = (text: string): number => Number(text.trim() === '' ? 'none' : text.trim().replace(',', '.'));

const within = (text: string, least: number, most: number): boolean => mm(text) >= least && mm(text) <= most;

/** True where every number that is seen can be meant. */
export const isSoundFace = (draft: FaceDraft): boolean =>
  (draft.shape !== 'wrap' || within(draft.tailMm, 0, 420)) &&
  (draft.shape !== 'flag' || within(draft.clearMm, 0, 420)) &&
  (!draft.hasHole ||
    (within(draft.holeXMm, 0, 420) &&
      within(draft.holeYMm, 0, 420) &&
      within(draft.holeDiameterMm, 1, 20))) &&
  (!draft.hasHeader || within(draft.headerMm, 10, 150));

/** Sound only where `isSoundFace` says so. */
export const faceOf = (draft: FaceDraft): TagFace => ({
  form: formOf(draft),
  ...(draft.hasHole
    ? { hole: { xMm: mm(draft.holeXMm), yMm: mm(draft.holeYMm), diameterMm: mm(draft.holeDiameterMm) } }
    : {}),
  ...(draft.hasHeader ? { preprintedHeaderMm: mm(draft.headerMm) } : {}),
});

const formOf = (draft: FaceDraft): TagFace['form'] => {
  switch (draft.shape) {
    case 'flat':
      return { shape: 'flat' };
    case 'wrap':
      return { shape: 'wrap', tailAt: draft.tailAt, tailMm: mm(draft.tailMm) };
    case 'flag':
      return { shape: 'flag', fold: draft.fold, sides: draft.sides, clearMm: mm(draft.clearMm) };
  }
};

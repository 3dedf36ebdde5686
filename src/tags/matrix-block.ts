/** A block of text with a matrix symbol to the right of it, whose quiet zone may reach into the margin. */
import type { Block } from '../typesetting/paragraph.ts';
import { type DotDensity, dotMm } from '../typesetting/primitive.ts';
import type { SymbolModules } from '../typesetting/symbol.ts';
import { matrixAt, matrixSideMm } from './tag-layout.ts';

export interface SizedMatrix {
  readonly modules: SymbolModules;
  readonly widthDots: number;
  readonly dotsPerInch: DotDensity;
}

export interface MatrixSpace {
  /** Of text and symbol together. */
  readonly widthMm: number;
  /** White to the right of it that a quiet zone may use. */
  readonly besideMm: number;
}

/** Width that is left for the text, its distance to the quiet zone not yet taken off. */
export const widthBesideMatrixMm = (matrix: SizedMatrix, space: MatrixSpace): number =>
  space.widthMm + bleedMm(matrix, space) - sideMm(matrix);

/** `where`: `top` lays both at one height at the top, `middle` centres them on one another. */
export const besideMatrix = (
  left: Block,
  matrix: SizedMatrix,
  space: MatrixSpace,
  where: 'top' | 'middle',
): Block => {
  const side = sideMm(matrix);
  const heightMm = Math.max(left.heightMm, side);
  const downMm = (innerMm: number): number => (where === 'top' ? 0 : (heightMm - innerMm) / 2);
  return {
    heightMm,
    draw: (xMm, yMm) => [
      ...left.draw(xMm, yMm + downMm(left.heightMm)),
      matrixAt(
        matrix.modules,
        matrix.widthDots,
        xMm + space.widthMm + bleedMm(matrix, space) - side,
        yMm + downMm(side),
        matrix.dotsPerInch,
      ),
    ],
  };
};

const sideMm = ({ modules, widthDots, dotsPerInch }: SizedMatrix): number =>
  matrixSideMm(modules, widthDots, dotsPerInch);

const bleedMm = ({ modules, widthDots, dotsPerInch }: SizedMatrix, { besideMm }: MatrixSpace): number =>
  Math.min(besideMm, modules.quietX * widthDots * dotMm(dotsPerInch));

/** A round bar drawn as a cased line: an edge in the line colour, and the metal between its two edges. */
import type { CSSProperties } from 'react';
import styles from './drawing.module.css';

export interface RodProps {
  /** SVG path of the bar's axis. */
  readonly path: string;
  /** Thickness of the bar in drawing units, without its edges. */
  readonly thickness: number;
  readonly cap?: 'butt' | 'round';
}

export const Rod = ({ path, thickness, cap = 'butt' }: RodProps) => {
  const style: CSSProperties & Record<'--thickness', string> = { '--thickness': `${thickness}px` };
  return (
    <g style={style} strokeLinecap={cap} strokeLinejoin="round">
      <path className={styles.rodEdge} d={path} />
      <path className={styles.rodBody} d={path} />
    </g>
  );
};

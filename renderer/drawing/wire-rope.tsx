/** A straight piece of wire rope with the lay of its strands. */

import styles from './drawing.module.css';
import { Rod } from './rod.tsx';

export interface WireRopeProps {
  readonly x: number;
  readonly fromY: number;
  readonly toY: number;
  readonly thickness?: number;
}

const layLength = 7;

export const WireRope = ({ x, fromY, toY, thickness = 9 }: WireRopeProps) => {
  const strands = Math.max(0, Math.floor((toY - fromY) / layLength) - 1);
  const half = thickness / 2;
  const lay = Array.from({ length: strands }, (_, index) => {
    const y = fromY + (index + 1) * layLength;
    return `M${x - half} ${y + 4}Q${x} ${y + 2} ${x + half} ${y - 4}`;
  }).join('');
  return (
    <>
      <Rod path={`M${x} ${fromY}V${toY}`} thickness={thickness} />
      <path className={styles.detail} d={lay} />
    </>
  );
};

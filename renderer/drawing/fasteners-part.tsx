/** The bolts that hold the shells of the housing together. */
import styles from './drawing.module.css';

const bolts = [
  { x: 201, y: 259.5 },
  { x: 299, y: 259.5 },
  { x: 152, y: 344 },
  { x: 348, y: 344 },
  { x: 181, y: 413 },
  { x: 319, y: 413 },
] as const;

export const FastenersPart = () =>
  bolts.map(({ x, y }) => (
    <g key={`${x} ${y}`} transform={`translate(${x} ${y})`}>
      <circle className={styles.outline} r="10" />
      <path className={styles.detail} d="M0 -5.500L4.800 -2.800V2.800L0 5.500L-4.800 2.800V-2.800Z" />
    </g>
  ));

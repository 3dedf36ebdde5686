/** Planned load inside the room of the week, on one scale for all weeks; the numbers beside it say the same. */
import styles from './schedule.module.css';

export interface LoadBarProps {
  readonly planned: number;
  readonly room: number;
  /** The room of the widest week. */
  readonly most: number;
}

const width = 200;
const height = 22;

export const LoadBar = ({ planned, room, most }: LoadBarProps) => (
  <svg
    className={styles.bar}
    viewBox={`0 0 ${width} ${height}`}
    preserveAspectRatio="none"
    aria-hidden="true"
    focusable="false"
  >
    <rect className={styles.barRoom} x={1} y={1} width={((width - 2) * room) / most} height={height - 2} />
    <rect
      className={styles.barLoad}
      x={1}
      y={5}
      width={((width - 2) * planned) / most}
      height={height - 10}
    />
  </svg>
);

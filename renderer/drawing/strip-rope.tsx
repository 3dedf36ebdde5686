/** The lifeline of the strip: wire rope lying level, as wide as there is room. */
import { useId } from 'react';
import styles from './lifeline-strip.module.css';

export const StripRope = () => {
  const lay = useId();
  return (
    <svg className={styles.rope} aria-hidden="true" focusable="false">
      <defs>
        <pattern id={lay} width="11" height="18" patternUnits="userSpaceOnUse">
          <path d="M-2 18C3 15 5 3 13 0" />
        </pattern>
      </defs>
      <rect className={styles.ropeBody} x="0" y="0" width="100%" height="18" />
      <rect x="0" y="0" width="100%" height="18" fill={`url(#${lay})`} />
      <path className={styles.ropeEdge} d="M0 1H6000M0 17H6000" />
    </svg>
  );
};

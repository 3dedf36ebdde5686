/** The lifeline between the housing and its termination, shortened by a break. */

import styles from './drawing.module.css';
import { WireRope } from './wire-rope.tsx';

export const LifelinePart = () => (
  <>
    <WireRope x={250} fromY={503} toY={545} />
    <path className={styles.detail} d="M240 550C246 543 254 553 260 546M240 558C246 551 254 561 260 554" />
    <WireRope x={250} fromY={559} toY={598} />
  </>
);

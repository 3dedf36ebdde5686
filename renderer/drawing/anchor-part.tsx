/** The anchor of the bench from which the device hangs; it belongs to no zone. */
import styles from './drawing.module.css';

export const AnchorPart = () => (
  <g className={styles.surroundings}>
    <path d="M186 6H314M196 6L188 14M214 6L206 14M232 6L224 14M286 6L278 14M304 6L296 14" />
    <path d="M236 6V26C236 46 264 46 264 26V6" />
    <path d="M245 6V26C245 34 255 34 255 26V6" />
  </g>
);

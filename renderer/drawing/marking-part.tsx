/** The manufacturer's marking: a riveted plate with lines of text. */
import styles from './drawing.module.css';

export const MarkingPart = () => (
  <>
    <rect className={styles.plate} x="201" y="388" width="98" height="46" rx="4" />
    <circle className={styles.detail} cx="207" cy="394" r="1.600" />
    <circle className={styles.detail} cx="293" cy="394" r="1.600" />
    <circle className={styles.detail} cx="207" cy="428" r="1.600" />
    <circle className={styles.detail} cx="293" cy="428" r="1.600" />
    <path className={styles.heavyDetail} d="M214 398H252" />
    <path className={styles.detail} d="M214 406H262M214 413H246M214 420H258M214 427H240" />
    <path className={styles.detail} d="M272 397V424M276 397V424M278.500 397V424M283 397V424M286 397V424" />
  </>
);

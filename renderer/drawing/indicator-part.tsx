/** The load indicator in the shank of the lower swivel: a band that shows when it has been loaded. */
import styles from './drawing.module.css';

export const IndicatorPart = () => (
  <>
    <rect className={styles.outline} x="235" y="775" width="30" height="24" rx="3" />
    <path className={styles.heavyDetail} d="M239 783.500H261M239 790.500H261" />
  </>
);

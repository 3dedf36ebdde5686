/** Movement of the lifeline back into the housing. */
import styles from './drawing.module.css';

export const RetractionPart = () => (
  <path className={styles.outline} d="M200 592V540H189L208 512L227 540H216V592Z" />
);

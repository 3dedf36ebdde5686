/** The history of the device: a record card with a clock. */
import styles from './drawing.module.css';

export const HistoryPart = () => (
  <>
    <path className={styles.outline} d="M30 128H86L104 146V226H30Z" />
    <path className={styles.detail} d="M86 128V146H104M42 150H72M42 164H90M42 178H66M42 192H60" />
    <circle className={styles.outline} cx="90" cy="206" r="26" />
    <path className={styles.heavyDetail} d="M90 190V206L101 213" />
  </>
);

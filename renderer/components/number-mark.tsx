/** The digit of the command sheet that does what stands beside it. */
import styles from './number-mark.module.css';

export const NumberMark = ({ number }: { readonly number: number | undefined }) =>
  number === undefined ? null : (
    <span className={styles.number} data-key={number}>
      {number}
    </span>
  );

/** One clear sentence about what did not work, near where the hand is, read out at once. */
import styles from './alert-line.module.css';
import { Icon } from './icon.tsx';

export const AlertLine = ({ sentence }: { readonly sentence: string | undefined }) => (
  <div role="alert" className={styles.place}>
    {sentence === undefined ? null : (
      <p className={styles.alert}>
        <Icon name="warning" />
        <span>{sentence}</span>
      </p>
    )}
  </div>
);

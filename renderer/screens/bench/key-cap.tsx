/** The key that presses a button, small on the button itself. */
import styles from './key-cap.module.css';

export const KeyCap = ({ children }: { readonly children: string | number }) => (
  <span className={styles.key} aria-hidden="true" data-key={children}>
    {children}
  </span>
);

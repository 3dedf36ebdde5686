/** The verdict in one word, to be read from two steps away, with a sign that is not its colour alone. */
import { type ReactNode, useEffect, useRef } from 'react';
import type { Verdict } from '../../../src/domain/verdict.ts';
import { Icon } from '../../components/icon.tsx';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import styles from './verdict-word.module.css';

export interface VerdictWordProps {
  readonly verdict: Verdict;
  /** Beside the line under the word. */
  readonly children?: ReactNode;
}

export const VerdictWord = ({ verdict, children }: VerdictWordProps) => {
  const { t } = useText();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  switch (verdict.kind) {
    case 'pass':
      return (
        <div className={classes(styles.verdict, styles.pass)}>
          <h1 ref={heading} tabIndex={-1} className={styles.word}>
            <Icon name="check" large /> {t('walk:verdict.pass')}
          </h1>
          <div className={styles.under}>
            <p className={styles.count}>{t('walk:verdict.passHint')}</p>
            {children}
          </div>
        </div>
      );
    case 'remove from service':
      return (
        <div className={classes(styles.verdict, styles.remove)}>
          <h1 ref={heading} tabIndex={-1} className={styles.word}>
            <Icon name="stop" large /> {t('walk:verdict.remove')}
          </h1>
          <div className={styles.under}>
            <p className={styles.count}>{t('walk:verdict.reasons', { count: verdict.reasons.length })}</p>
            {children}
          </div>
        </div>
      );
    case 'incomplete':
      return (
        <div className={styles.verdict}>
          <h1 ref={heading} tabIndex={-1} className={styles.word}>
            <Icon name="blank" large /> {t('walk:verdict.incomplete')}
          </h1>
          <div className={styles.under}>
            <p className={styles.count}>
              {t('walk:verdict.open', { count: verdict.unanswered.length + verdict.lookAgain.length })}
            </p>
            {children}
          </div>
        </div>
      );
  }
};

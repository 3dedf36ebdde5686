/** What to do at a check and when it is good: the criterion large, the caution where the hand is. */
import { useEffect, useRef } from 'react';
import type { Message } from '../../../src/domain/message.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import { Icon } from '../../components/icon.tsx';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import { useLostFocus } from '../../navigation/use-lost-focus.ts';
import styles from './check-text.module.css';

export interface CheckTextProps {
  readonly check: Check;
  /** When it is good, for this device. */
  readonly criterion: Message;
  readonly number: number;
  readonly count: number;
  /** True while an answer is being given in detail: only what is needed for that stays. */
  readonly isShort: boolean;
}

export const CheckText = ({ check, criterion, number, count, isShort }: CheckTextProps) => {
  const { t, inLanguage } = useText();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (check.key !== '') heading.current?.focus();
  }, [check.key]);
  useLostFocus(heading);
  return (
    <header className={styles.text}>
      {!isShort && <p className={styles.position}>{t('walk:progress.position', { number, count })}</p>}
      <h1 ref={heading} tabIndex={-1} className={styles.title}>
        {inLanguage(check.title)}
      </h1>
      {!isShort && <p className={styles.instruction}>{inLanguage(check.instruction)}</p>}
      <p
        className={
          isShort
            ? styles.shortCriterion
            : classes(styles.criterion, check.kind === 'marking' && styles.repeated)
        }
      >
        {inLanguage(criterion)}
      </p>
      {check.caution !== undefined && !isShort && (
        <p className={styles.caution}>
          <Icon name="warning" />
          <span>
            <strong className={styles.cautionWord}>{t('walk:check.caution')}.</strong>{' '}
            {inLanguage(check.caution)}
          </span>
        </p>
      )}
    </header>
  );
};

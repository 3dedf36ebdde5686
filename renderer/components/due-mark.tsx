/** When a device is due, with a sign and a word where that is soon or past. */
import type { DueState } from '../../src/domain/device.ts';
import { classes } from '../design/classes.ts';
import { useText } from '../i18n/text.ts';
import { Icon } from './icon.tsx';
import styles from './mark.module.css';

export interface DueMarkProps {
  readonly dueState: DueState;
  readonly dueOn: string | undefined;
  readonly isLarge?: boolean;
}

export const DueMark = ({ dueState, dueOn, isLarge = false }: DueMarkProps) => {
  const { t, dateText } = useText();
  const date = dueOn === undefined ? '' : dateText(dueOn);
  const size = isLarge && styles.large;
  switch (dueState) {
    case 'overdue':
      return (
        <span className={classes(styles.mark, styles.pressing, size)}>
          <Icon name="late" />
          {t('screens:due.overdue', { date })}
        </span>
      );
    case 'due soon':
      return (
        <span className={classes(styles.mark, size)}>
          <Icon name="clock" />
          {t('screens:due.soon', { date })}
        </span>
      );
    case 'current':
      return <span className={classes(styles.mark, styles.calm, size)}>{date}</span>;
    case 'never inspected':
      return <span className={classes(styles.mark, styles.calm, size)}>{t('screens:due.never')}</span>;
    case 'out of service':
      return <span className={classes(styles.mark, styles.calm, size)}>{t('screens:due.none')}</span>;
  }
};

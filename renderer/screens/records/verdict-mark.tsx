/** A verdict in a line: a sign and a word, and how many reasons it has. */
import { Icon } from '../../components/icon.tsx';
import styles from '../../components/mark.module.css';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import recordStyles from './records.module.css';

export interface VerdictMarkProps {
  readonly verdict: 'pass' | 'remove from service' | 'incomplete';
  readonly reasons: number;
}

export const VerdictMark = ({ verdict, reasons }: VerdictMarkProps) => {
  const { t } = useText();
  return (
    <span className={classes(styles.mark, verdict === 'remove from service' && styles.out)}>
      <Icon name={verdict === 'pass' ? 'check' : verdict === 'incomplete' ? 'blank' : 'stop'} />
      {t(`screens:verdict.${verdict}`)}
      {reasons === 0 ? null : (
        <span className={recordStyles.count}>{t('records:reasons', { count: reasons })}</span>
      )}
    </span>
  );
};

/** What was found, the gravest first: of which subject, how it stands in a word and a sign, and what to do. */
import type { HealthState, WordedFinding } from '../../../src/domain/health/finding.ts';
import { Icon, type IconName } from '../../components/icon.tsx';
import { classes } from '../../design/classes.ts';
import { useText } from '../../i18n/text.ts';
import styles from './health.module.css';

const icons: Readonly<Record<HealthState, IconName>> = {
  wrong: 'cross',
  attention: 'warning',
  'not known': 'blank',
  good: 'check',
};

export const FindingList = ({ findings }: { readonly findings: readonly WordedFinding[] }) => {
  const { t } = useText();
  return (
    <ul className={styles.list}>
      {findings.map(({ subject, state, says, found, todo }) => (
        <li
          key={`${subject} ${says} ${found}`}
          className={classes(styles.finding, state === 'wrong' && styles.wrong)}
        >
          <span className={styles.state}>
            <Icon name={icons[state]} />
            {t(`health:state.${state}`)}
          </span>
          <div className={styles.words}>
            <strong>{t(`health:subject.${subject}`)}</strong>
            <span className={styles.found}>{found}</span>
            {todo === undefined ? null : (
              <span className={styles.found}>
                <strong>{t('health:do')}</strong> {todo}
              </span>
            )}
          </div>
        </li>
      ))}
    </ul>
  );
};

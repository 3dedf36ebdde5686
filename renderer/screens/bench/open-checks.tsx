/** The checks without a final answer; each is one press away. */
import { Button } from 'react-aria-components';
import type { Check } from '../../../src/domain/procedure.ts';
import type { Verdict } from '../../../src/domain/verdict.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './open-checks.module.css';

export interface OpenChecksProps {
  readonly verdict: Extract<Verdict, { kind: 'incomplete' }>;
  readonly checks: readonly Check[];
  readonly onGo: ((checkKey: string) => void) | undefined;
}

export const OpenChecks = ({ verdict, checks, onGo }: OpenChecksProps) => {
  const { t, inLanguage } = useText();
  const open = checks.filter(
    ({ key }) => verdict.unanswered.includes(key) || verdict.lookAgain.includes(key),
  );
  return (
    <ul className={styles.open}>
      {open.map((check) => (
        <li key={check.key}>
          <Button
            className={styles.check ?? ''}
            isDisabled={onGo === undefined}
            onPress={() => onGo?.(check.key)}
          >
            <span className={styles.words}>
              {inLanguage(check.title)}
              {verdict.lookAgain.includes(check.key) && (
                <span className={styles.again}>{t('walk:verdict.lookAgain')}</span>
              )}
            </span>
            <Icon name="forward" />
          </Button>
        </li>
      ))}
    </ul>
  );
};

/** The findings of a check as they are named so far; the latest first; each can be taken off again. */
import { Button } from 'react-aria-components';
import type { Finding } from '../../../src/domain/answer.ts';
import type { ConditionCheck } from '../../../src/domain/procedure.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './found-list.module.css';
import { useFindingWords } from './use-answer-words.ts';

export interface FoundListProps {
  readonly check: ConditionCheck;
  readonly findings: readonly Finding[];
  onDrop(finding: number): void;
}

export const FoundList = ({ check, findings, onDrop }: FoundListProps) => {
  const { t } = useText();
  const words = useFindingWords();
  return (
    <ul className={styles.found} aria-label={t('walk:picker.found')} aria-live="polite">
      {findings
        .map((finding, index) => (
          <li key={`${finding.defect} ${finding.positionM ?? ''} ${String(index)}`}>
            <Button
              className={styles.finding ?? ''}
              aria-label={t('walk:picker.drop', { finding: words(check, finding) })}
              onPress={() => onDrop(index)}
            >
              {words(check, finding)}
              <Icon name="cross" />
            </Button>
          </li>
        ))
        .reverse()}
    </ul>
  );
};

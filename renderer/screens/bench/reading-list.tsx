/** The readings that were taken so far; the latest first; each can be taken off again. */
import { Button } from 'react-aria-components';
import type { DiameterReading } from '../../../src/domain/answer.ts';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './found-list.module.css';

export interface ReadingListProps {
  readonly readings: readonly DiameterReading[];
  readonly wordsOf: (reading: DiameterReading) => string;
  onDrop(reading: number): void;
}

export const ReadingList = ({ readings, wordsOf, onDrop }: ReadingListProps) => {
  const { t } = useText();
  return (
    <ul className={styles.found} aria-label={t('evidence:diameter.taken')} aria-live="polite">
      {readings
        .map((reading, index) => (
          <li key={`${reading.positionM} ${reading.diameterMm} ${String(index)}`}>
            <Button
              className={styles.finding ?? ''}
              aria-label={t('evidence:diameter.drop', { reading: wordsOf(reading) })}
              onPress={() => onDrop(index)}
            >
              {wordsOf(reading)}
              <Icon name="cross" />
            </Button>
          </li>
        ))
        .reverse()}
    </ul>
  );
};

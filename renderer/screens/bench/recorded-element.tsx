/** What the register has for one element of the marking, large, to be held against the device. */
import type { KnownMarkingEntry, MarkingElement } from '../../../src/domain/marking.ts';
import { useText } from '../../i18n/text.ts';
import styles from './recorded.module.css';

export interface RecordedElementProps {
  readonly element: MarkingElement;
  readonly marking: readonly KnownMarkingEntry[];
}

export const RecordedElement = ({ element, marking }: RecordedElementProps) => {
  const { t } = useText();
  const entry = marking.find((candidate) => candidate.element === element);
  const text = entry?.text ?? '';
  const words =
    entry === undefined || (entry.state === 'legible' && text === '')
      ? t('walk:check.notRecorded')
      : t(`walk:check.recordedState.${entry.state}`);
  return (
    <p className={styles.recorded}>
      <span className={styles.caption}>{t('walk:check.onRecord')}</span>
      {text === '' ? (
        <span className={styles.none}>{words}</span>
      ) : (
        <strong className={text.length > 28 ? styles.long : styles.value}>{text}</strong>
      )}
      {entry?.state === 'not read' && text !== '' ? <span className={styles.none}>{words}</span> : null}
    </p>
  );
};

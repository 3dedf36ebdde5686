/** The whole marking as the register has it, to be held against the device in one go. */
import type { KnownMarkingEntry } from '../../../src/domain/marking.ts';
import { useText } from '../../i18n/text.ts';
import styles from './recorded.module.css';

export const RecordedMarking = ({ marking }: { readonly marking: readonly KnownMarkingEntry[] }) => {
  const { t } = useText();
  return (
    <dl className={styles.all}>
      {marking.map(({ element, state, text }) => (
        <div key={element} className={styles.pair}>
          <dt>{t(`walk:marking.element.${element}`)}</dt>
          <dd>
            {text ?? t(`walk:check.recordedState.${state}`)}
            {state === 'not read' && text !== undefined
              ? ` (${t('walk:check.recordedState.not read')})`
              : null}
          </dd>
        </div>
      ))}
    </dl>
  );
};

/** The manufacturer's marking as it was read off the device, element by element. */
import type { KnownMarkingEntry } from '../../../src/domain/marking.ts';
import { useText } from '../../i18n/text.ts';
import styles from './device.module.css';

export const DeviceMarking = ({ marking }: { readonly marking: readonly KnownMarkingEntry[] }) => {
  const { t } = useText();
  return (
    <section className={styles.detail} aria-labelledby="marking">
      <h2 id="marking">{t('screens:device.marking')}</h2>
      <dl className={styles.pairs}>
        {marking.map(({ element, state, text }) => (
          <div key={element}>
            <dt>{t(`screens:marking.element.${element}`)}</dt>
            <dd>
              {state === 'legible' && text !== undefined && text !== ''
                ? text
                : t(`screens:marking.state.${state}`)}
              {state === 'not read' && text !== undefined ? ` (${text})` : null}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
};

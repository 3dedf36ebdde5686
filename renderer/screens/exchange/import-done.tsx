/** What was imported, and what has to happen with it now. */
import { useEffect, useRef } from 'react';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './exchange.module.css';
import type { ImportedFleet } from './import-calls.ts';

export interface ImportDoneProps {
  readonly imported: ImportedFleet;
  onLeave(): void;
}

export const ImportDone = ({ imported, onLeave }: ImportDoneProps) => {
  const { t } = useText();
  const { devices, inspections, removed } = imported;
  const fresh = devices - removed;
  const place = useRef<HTMLElement>(null);
  useEffect(() => place.current?.focus(), []);
  return (
    <section ref={place} className={styles.box} tabIndex={-1} aria-labelledby="imported">
      <h2 id="imported" className={styles.sign}>
        <Icon name="check" />
        {t('exchange:doneTitle', { count: devices })}
      </h2>
      <p>{t('exchange:doneText', { fresh, removed, inspections })}</p>
      <p>{t('exchange:doneUndo')}</p>
      <div className={styles.buttons}>
        {removed === 0 ? null : (
          <Button look="primary" onPress={() => navigate({ screen: 'register', filter: 'held' })}>
            {t('exchange:seeHeld')}
          </Button>
        )}
        {fresh === 0 ? null : (
          <Button
            look={removed === 0 ? 'primary' : 'plain'}
            onPress={() => navigate({ screen: 'register', filter: 'never-inspected' })}
          >
            {t('exchange:seeDevices')}
          </Button>
        )}
        <Button onPress={onLeave}>{t('exchange:anotherFile')}</Button>
      </div>
    </section>
  );
};

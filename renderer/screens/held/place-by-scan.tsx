/** The label of a place is scanned while a held device is shown: that is where it is kept from now on. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './held.module.css';

export interface PlaceByScanProps {
  readonly benchId: BenchId;
  /** False while a dialog is open. */
  readonly isListening: boolean;
}

export const PlaceByScan = ({ benchId, isListening }: PlaceByScanProps) => {
  const { t } = useText();
  const [placed, setPlaced] = useState<string>();
  const store = useStationCommand('device.store');
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'place' || !isListening) return false;
    const { code: place } = meaning;
    void store.run({ benchId, place }).then(({ ok }) => setPlaced(ok ? place : undefined));
    return true;
  });
  return (
    <>
      <p role="status" className={placed === undefined ? styles.soft : styles.sign}>
        {placed === undefined ? (
          t('held:placeHint')
        ) : (
          <>
            <Icon name="check" />
            {t('held:placed', { place: placed })}
          </>
        )}
      </p>
      <AlertLine sentence={store.error?.sentence} />
    </>
  );
};

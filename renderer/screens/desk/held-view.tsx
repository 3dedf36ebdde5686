/** A device that was just taken out of service at its return: why, where it goes, and its quarantine tag. */
import { useEffect, useRef } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { primaryWayOf } from '../bench/print-ways.ts';
import { usePrintTag } from '../bench/use-print-tag.ts';
import styles from './desk.module.css';
import type { DeskNotice } from './desk-state.ts';
import { deviceWords } from './device-words.ts';

export interface HeldViewProps {
  readonly notice: Extract<DeskNotice, { kind: 'held' }>;
  onNext(): void;
}

export const HeldView = ({ notice: { device, result }, onNext }: HeldViewProps) => {
  const { t, inLanguage } = useText();
  const { benchId } = device;
  const printers = useStationQuery('printer.list', {}).data?.printers;
  const { step, give } = usePrintTag(benchId, 'quarantine');
  const way = printers && primaryWayOf(printers, 'quarantine');
  const begun = useRef(false);
  useEffect(() => {
    if (begun.current || way?.way !== 'printer') return;
    begun.current = true;
    void give(way, undefined);
  }, [way, give]);
  return (
    <div className={styles.held} role="alert">
      <h1 className={styles.display}>
        <Icon name="stop" large />
        {t('desk:held', { device: deviceWords(device) })}
      </h1>
      <ul className={styles.points}>
        {result.reasons.map(({ key, sentence }) => (
          <li key={key} className={styles.large}>
            {inLanguage(sentence)}
          </li>
        ))}
      </ul>
      <p className={styles.large}>{t('desk:putIt', { place: inLanguage(result.quarantinePlace) })}</p>
      {step.step === 'printing' && <p>{t('desk:printing', { printer: step.printer.settings.name })}</p>}
      {step.step === 'printed' && <p>{t('desk:printed', { printer: step.printer.settings.name })}</p>}
      <AlertLine sentence={step.step === 'refused' ? step.sentence : undefined} />
      <div className={styles.row}>
        <Button look="primary" size="large" icon="forward" autoFocus onPress={onNext}>
          {t('desk:next')}
        </Button>
        {step.step !== 'printing' && step.step !== 'printed' && (
          <Button
            size="large"
            icon="tag"
            onPress={() => navigate({ screen: 'tag', benchId, kind: 'quarantine' })}
          >
            {t('desk:printTag')}
          </Button>
        )}
      </div>
    </div>
  );
};

/** The bench without a device: waits for a scan, and lists the inspections that were begun. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { SrlDrawing } from '../../drawing/srl-drawing.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { isPast, useScanHandler } from '../../scan/scan.ts';
import { useReadyStation } from '../../station/status.ts';
import { CheckInFirst } from '../device/check-in-first.tsx';
import { BeginDialog } from './begin-dialog.tsx';
import styles from './bench-idle.module.css';
import { BlindOffer } from './blind-offer.tsx';
import { CommandSheet } from './command-sheet.tsx';
import { OpenWalks } from './open-walks.tsx';
import { useBlindTo } from './use-blind-to.ts';

export const BenchIdle = () => {
  const { t } = useText();
  const station = useReadyStation();
  const [toBegin, setToBegin] = useState<DeviceSummary>();
  const [drawn, setDrawn] = useState<DeviceSummary>();
  const isBlindTo = useBlindTo();
  const [away, setAway] = useState<DeviceSummary>();
  const [refused, setRefused] = useState<string>();
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'device' || isPast(meaning.tag)) return false;
    const { device } = meaning;
    setRefused(undefined);
    setAway(undefined);
    if (isBlindTo(device)) {
      setDrawn(device);
      return true;
    }
    switch (device.nextAction) {
      case 'start inspection':
        setToBegin(device);
        return true;
      case 'resume inspection':
        navigate({ screen: 'bench', inspection: device.openInspection });
        return true;
      case 'check in first':
        setAway(device);
        return true;
      case 'keep out of service':
      case 'nothing: scrapped':
        setRefused(t('walk:idle.outOfService', { device: formatBenchId(device.benchId) }));
        return true;
    }
  });
  return (
    <div className={styles.idle}>
      <div className={styles.drawing}>
        <SrlDrawing />
      </div>
      <div className={styles.words}>
        <h1 className={styles.title}>{t('walk:idle.title')}</h1>
        <p className={styles.hint}>{t('walk:idle.hint')}</p>
        {station !== undefined && station.person === undefined && (
          <p className={styles.signIn}>{t('walk:idle.signIn')}</p>
        )}
        <AlertLine sentence={refused} />
        {away !== undefined && <CheckInFirst device={away} />}
        <OpenWalks open={station?.open ?? []} />
        <div className={styles.room} />
        <CommandSheet />
      </div>
      {drawn !== undefined && (
        <Dialog
          title={t('schedule:blind.offer.title', { device: formatBenchId(drawn.benchId) })}
          onClose={() => setDrawn(undefined)}
        >
          <BlindOffer device={drawn} onClose={() => setDrawn(undefined)} />
        </Dialog>
      )}
      {toBegin !== undefined && <BeginDialog device={toBegin} onClose={() => setToBegin(undefined)} />}
    </div>
  );
};

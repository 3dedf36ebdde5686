/** Reads one picture file: how far it is, and what came of it. */
import { useEffect, useRef, useState } from 'react';
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useText } from '../i18n/text.ts';
import styles from './camera.module.css';
import { stillLook } from './looks.ts';
import { OpenFileButton } from './open-file-button.tsx';
import type { ReaderAnswer } from './reader-messages.ts';
import { ReadingHelp } from './reading-help.tsx';
import type { SettledReading } from './settle-readings.ts';
import { useObjectUrl } from './use-object-url.ts';
import { useReader } from './use-reader.ts';
import { WhoButton } from './who-button.tsx';

export interface StillDialogProps {
  readonly file: File;
  /** A still picture cannot be compared with a second one: every reading of it counts. */
  onSettled(reading: SettledReading, still: Blob | undefined): void;
  onNoPicture(): void;
  onFile(file: File): void;
  onClose(): void;
}

type Outcome = 'none' | 'several' | 'failed';

export const StillDialog = ({ file, onSettled, onNoPicture, onFile, onClose }: StillDialogProps) => {
  const { t } = useText();
  const reader = useReader();
  const address = useObjectUrl(file);
  const [used, setUsed] = useState(0);
  const [outcome, setOutcome] = useState<Outcome>();
  const deal = (answer: ReaderAnswer): void => {
    if (answer.kind === 'failed') setOutcome('failed');
    else if (answer.kind === 'no picture') onNoPicture();
    else if (answer.reading.kind === 'none' || answer.reading.kind === 'several')
      setOutcome(answer.reading.kind);
    else onSettled(answer.reading, answer.still);
  };
  const latest = useRef(deal);
  useEffect(() => {
    latest.current = deal;
  });
  useEffect(() => {
    void reader?.read(file, stillLook, setUsed).then((answer) => {
      if (answer !== undefined) latest.current(answer);
    });
  }, [reader, file]);

  return (
    <Dialog title={t('camera:still.title')} onClose={onClose}>
      {address === undefined ? null : (
        <img className={styles.still} src={address} alt={t('camera:still.picture')} />
      )}
      {outcome === undefined ? (
        <>
          <p role="status">{t('camera:still.reading')}</p>
          <progress className={styles.progress} value={used} aria-label={t('camera:still.progress')} />
          <div className={styles.controls}>
            <Button onPress={onClose} autoFocus>
              {t('camera:still.cancel')}
            </Button>
          </div>
        </>
      ) : (
        <>
          <AlertLine sentence={t(outcome === 'failed' ? 'camera:fault.reader' : `camera:still.${outcome}`)} />
          {outcome === 'none' ? <ReadingHelp /> : null}
          <div className={styles.controls}>
            <OpenFileButton label={t('camera:still.another')} onFile={onFile} />
            {outcome === 'none' ? <WhoButton onClose={onClose} /> : null}
            <Button onPress={onClose} autoFocus>
              {t('camera:still.close')}
            </Button>
          </div>
        </>
      )}
    </Dialog>
  );
};

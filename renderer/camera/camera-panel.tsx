/** The live picture, read frame by frame, until a code or a tag is settled. */
import { useEffect, useRef, useState } from 'react';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useText } from '../i18n/text.ts';
import { useScanHandler } from '../scan/scan.ts';
import styles from './camera.module.css';
import { LiveView } from './live-view.tsx';
import { OpenFileButton } from './open-file-button.tsx';
import { ReadingHelp } from './reading-help.tsx';
import { type Awaited, type SettledReading, settle } from './settle-readings.ts';
import { useCamera } from './use-camera.ts';
import { useReader } from './use-reader.ts';
import { watchFrames } from './watch-frames.ts';
import { WhoButton } from './who-button.tsx';

export interface CameraPanelProps {
  onSettled(reading: SettledReading, still: Blob | undefined): void;
  onFile(file: File): void;
  onClose(): void;
}

type Said = 'looking' | 'several' | 'reader';

/** After so long without a reading a person wants to know what helps (common practice, no source). */
const helpAfterMs = 6000;
/** How long it stays said that there are several, after the last frame that showed them. */
const severalForMs = 1500;

export const CameraPanel = ({ onSettled, onFile, onClose }: CameraPanelProps) => {
  const { t } = useText();
  const camera = useCamera();
  const reader = useReader();
  const video = useRef<HTMLVideoElement>(null);
  const settled = useRef(onSettled);
  const [said, setSaid] = useState<Said>('looking');
  const [needsHelp, setNeedsHelp] = useState(false);
  const { state } = camera;
  const isLive = state.kind === 'live';
  useEffect(() => {
    settled.current = onSettled;
  });

  useEffect(() => {
    if (!isLive || reader === undefined || video.current === null) return;
    let awaited: Awaited = {};
    let timer: number | undefined;
    const stop = watchFrames(video.current, reader, (answer) => {
      if (answer.kind === 'failed') return setSaid('reader');
      if (answer.kind === 'no picture') return;
      if (answer.reading.kind === 'several') {
        window.clearTimeout(timer);
        timer = window.setTimeout(() => setSaid('looking'), severalForMs);
        setSaid('several');
      }
      const settlement = settle(awaited, answer.reading);
      awaited = settlement.awaited;
      if (settlement.settled !== undefined) settled.current(settlement.settled, answer.still);
    });
    return () => {
      window.clearTimeout(timer);
      stop();
    };
  }, [isLive, reader]);

  useEffect(() => {
    if (!isLive) return;
    setNeedsHelp(false);
    const timer = window.setTimeout(() => setNeedsHelp(true), helpAfterMs);
    return () => window.clearTimeout(timer);
  }, [isLive]);

  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') onClose();
    return false;
  }, 'witness');

  return (
    <Dialog title={t('camera:title')} onClose={onClose}>
      {state.kind === 'fault' ? null : (
        <p className={styles.state} role="status">
          {state.kind === 'starting'
            ? t('camera:state.starting')
            : said === 'reader'
              ? t('camera:fault.reader')
              : t(`camera:state.${said}`)}
        </p>
      )}
      <LiveView camera={camera} video={video}>
        <OpenFileButton onFile={onFile} />
        {needsHelp || state.kind === 'fault' ? <WhoButton onClose={onClose} /> : null}
        <Button onPress={onClose} autoFocus>
          {t('camera:close')}
        </Button>
      </LiveView>
      {needsHelp && isLive && said !== 'reader' ? <ReadingHelp /> : null}
    </Dialog>
  );
};

/** A picture on its way into the record: taken with the camera or from a file, looked at, and kept; by scanner alone too. */
import { type ReactNode, useRef } from 'react';
import type { CallError } from '../../src/station/contract.ts';
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useText } from '../i18n/text.ts';
import { useScanHandler } from '../scan/scan.ts';
import styles from './camera.module.css';
import { LiveView } from './live-view.tsx';
import { OpenFileButton } from './open-file-button.tsx';
import { useCamera } from './use-camera.ts';
import { useObjectUrl } from './use-object-url.ts';
import { nextFrame } from './watch-frames.ts';

export interface PictureToKeepProps {
  readonly title: string;
  /** Absent while there is none yet. */
  readonly picture: Blob | undefined;
  /** What becomes of it once it is kept. */
  readonly hint: string;
  readonly isKeeping: boolean;
  readonly error: CallError | undefined;
  /** What else is asked of the picture. */
  readonly children?: ReactNode;
  onPicture(picture: Blob | undefined): void;
  onFile(file: File): void;
  onKeep(): void;
  onClose(): void;
}

export const PictureToKeep = (props: PictureToKeepProps) => {
  const { title, picture, hint, isKeeping, error, children, onPicture, onFile, onKeep, onClose } = props;
  const { t } = useText();
  const address = useObjectUrl(picture);
  return (
    <Dialog title={title} onClose={onClose}>
      {picture === undefined ? (
        <TakePicture onPicture={onPicture} onFile={onFile} onClose={onClose} />
      ) : (
        <>
          {address === undefined ? null : (
            <img className={styles.still} src={address} alt={t('camera:keep.preview')} />
          )}
          {children}
          <p>{hint}</p>
          <AlertLine sentence={error?.sentence} />
          <div className={styles.controls}>
            <Button look="primary" autoFocus isRunning={isKeeping} onPress={onKeep}>
              {t(isKeeping ? 'camera:keep.keeping' : 'camera:keep.keep')}
            </Button>
            <Button onPress={() => onPicture(undefined)}>{t('camera:keep.again')}</Button>
            <Button onPress={onClose}>{t('camera:keep.cancel')}</Button>
          </div>
          <ByScanner onConfirm={onKeep} onBack={() => onPicture(undefined)} />
        </>
      )}
    </Dialog>
  );
};

/** Confirm and Back of the command sheet; no other command reaches the screen under the dialog, but Cancel closes it. */
const ByScanner = ({ onConfirm, onBack }: { onConfirm(): void; onBack?(): void }) => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command === 'cancel') return false;
    if (meaning.command === 'confirm' || meaning.command === 'picture') onConfirm();
    if (meaning.command === 'back') onBack?.();
    return true;
  });
  return null;
};

interface TakePictureProps {
  onPicture(picture: Blob): void;
  onFile(file: File): void;
  onClose(): void;
}

const TakePicture = ({ onPicture, onFile, onClose }: TakePictureProps) => {
  const { t } = useText();
  const camera = useCamera();
  const video = useRef<HTMLVideoElement>(null);
  const take = async (): Promise<void> => {
    if (camera.state.kind === 'live' && video.current !== null) onPicture(await frameOf(video.current));
  };
  return (
    <LiveView camera={camera} video={video}>
      {camera.state.kind === 'live' ? (
        <Button look="primary" icon="camera" autoFocus onPress={() => void take()}>
          {t('camera:keep.take')}
        </Button>
      ) : null}
      <OpenFileButton onFile={onFile} />
      <Button onPress={onClose}>{t('camera:keep.cancel')}</Button>
      <ByScanner onConfirm={() => void take()} />
    </LiveView>
  );
};

/** The picture that the video shows now, or the first one that it will show, as JPEG. */
const frameOf = async (video: HTMLVideoElement): Promise<Blob> => {
  if (video.videoWidth === 0) await nextFrame(video);
  const { videoWidth, videoHeight } = video;
  const canvas = new OffscreenCanvas(videoWidth, videoHeight);
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
};

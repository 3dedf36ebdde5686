/** Keeps a picture with the record of a device: taken with the camera, from a file, or the one that was given. */
import { useRef, useState } from 'react';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import type { PictureSubject } from '../../src/domain/picture.ts';
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { Choice } from '../components/choice.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useText } from '../i18n/text.ts';
import { useStationCommand } from '../station/hooks.ts';
import { base64Of } from './base64.ts';
import styles from './camera.module.css';
import { LiveView } from './live-view.tsx';
import { OpenFileButton } from './open-file-button.tsx';
import { useCamera } from './use-camera.ts';
import { useObjectUrl } from './use-object-url.ts';
import { nextFrame } from './watch-frames.ts';

export interface KeepPictureDialogProps {
  readonly benchId: BenchId;
  readonly first: PictureSubject;
  /** Absent while there is none yet. */
  readonly picture: Blob | undefined;
  onPicture(picture: Blob | undefined): void;
  onFile(file: File): void;
  onKept(): void;
  onClose(): void;
}

export const KeepPictureDialog = (props: KeepPictureDialogProps) => {
  const { benchId, first, picture, onPicture, onFile, onKept, onClose } = props;
  const { t } = useText();
  const [of, setOf] = useState(first);
  const keep = useStationCommand('device.keep-picture');
  const address = useObjectUrl(picture);

  const keepIt = async (): Promise<void> => {
    if (picture === undefined) return;
    const result = await keep.run({ benchId, of, pictureBase64: await base64Of(picture) });
    if (result.ok) onKept();
  };

  return (
    <Dialog title={t('camera:keep.title', { benchId: formatBenchId(benchId) })} onClose={onClose}>
      {picture === undefined ? (
        <TakePicture onPicture={onPicture} onFile={onFile} onClose={onClose} />
      ) : (
        <>
          {address === undefined ? null : (
            <img className={styles.still} src={address} alt={t('camera:keep.preview')} />
          )}
          <Choice<PictureSubject>
            label={t('camera:keep.of')}
            value={of}
            options={[
              { value: 'marking', label: t('camera:keep.marking') },
              { value: 'tag', label: t('camera:keep.tag') },
            ]}
            onChange={setOf}
          />
          <p>{t('camera:keep.hint')}</p>
          <AlertLine sentence={keep.error?.sentence} />
          <div className={styles.controls}>
            <Button look="primary" autoFocus isRunning={keep.isRunning} onPress={() => void keepIt()}>
              {t(keep.isRunning ? 'camera:keep.keeping' : 'camera:keep.keep')}
            </Button>
            <Button onPress={() => onPicture(undefined)}>{t('camera:keep.again')}</Button>
            <Button onPress={onClose}>{t('camera:keep.cancel')}</Button>
          </div>
        </>
      )}
    </Dialog>
  );
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
    if (video.current !== null) onPicture(await frameOf(video.current));
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

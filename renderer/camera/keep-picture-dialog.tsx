/** Keeps a picture with the record of a device: taken with the camera, from a file, or the one that was given. */
import { useState } from 'react';
import { formatBenchId } from '../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import type { PictureSubject } from '../../src/domain/picture.ts';
import { Choice } from '../components/choice.tsx';
import { useText } from '../i18n/text.ts';
import { useStationCommand } from '../station/hooks.ts';
import { base64Of } from './base64.ts';
import { PictureToKeep } from './picture-to-keep.tsx';

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

  const keepIt = async (): Promise<void> => {
    if (picture === undefined) return;
    const result = await keep.run({ benchId, of, pictureBase64: await base64Of(picture) });
    if (result.ok) onKept();
  };

  return (
    <PictureToKeep
      title={t('camera:keep.title', { benchId: formatBenchId(benchId) })}
      picture={picture}
      hint={t('camera:keep.hint')}
      isKeeping={keep.isRunning}
      error={keep.error}
      onPicture={onPicture}
      onFile={onFile}
      onKeep={() => void keepIt()}
      onClose={onClose}
    >
      <Choice<PictureSubject>
        label={t('camera:keep.of')}
        value={of}
        options={[
          { value: 'marking', label: t('camera:keep.marking') },
          { value: 'tag', label: t('camera:keep.tag') },
        ]}
        onChange={setOf}
      />
    </PictureToKeep>
  );
};

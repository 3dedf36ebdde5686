/** Keeps a picture of what is seen at a check of an open inspection. */
import { useText } from '../i18n/text.ts';
import { useStationCommand } from '../station/hooks.ts';
import { base64Of } from './base64.ts';
import type { PictureCheck } from './camera-desk.ts';
import { PictureToKeep } from './picture-to-keep.tsx';

export interface KeepFindingPictureDialogProps {
  readonly check: PictureCheck;
  /** Absent while there is none yet. */
  readonly picture: Blob | undefined;
  onPicture(picture: Blob | undefined): void;
  onFile(file: File): void;
  onKept(): void;
  onClose(): void;
}

export const KeepFindingPictureDialog = (props: KeepFindingPictureDialogProps) => {
  const { check, picture, onPicture, onFile, onKept, onClose } = props;
  const { t } = useText();
  const keep = useStationCommand('inspection.keep-picture');

  const keepIt = async (): Promise<void> => {
    if (picture === undefined || keep.isRunning) return;
    const result = await keep.run({
      inspection: check.inspection,
      check: check.check,
      pictureBase64: await base64Of(picture),
    });
    if (result.ok) onKept();
  };

  return (
    <PictureToKeep
      title={t('evidence:pictures.keepTitle', { check: check.title })}
      picture={picture}
      hint={t('evidence:pictures.keepHint')}
      isKeeping={keep.isRunning}
      error={keep.error}
      onPicture={onPicture}
      onFile={onFile}
      onKeep={() => void keepIt()}
      onClose={onClose}
    />
  );
};

/** Says why what was given is no picture that can be read. */
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useText } from '../i18n/text.ts';
import styles from './camera.module.css';
import { OpenFileButton } from './open-file-button.tsx';

export interface RefusedPictureDialogProps {
  readonly sentence: string;
  onFile(file: File): void;
  onClose(): void;
}

export const RefusedPictureDialog = ({ sentence, onFile, onClose }: RefusedPictureDialogProps) => {
  const { t } = useText();
  return (
    <Dialog title={t('camera:told.title')} onClose={onClose}>
      <AlertLine sentence={sentence} />
      <div className={styles.controls}>
        <OpenFileButton label={t('camera:still.another')} onFile={onFile} />
        <Button onPress={onClose} autoFocus>
          {t('camera:told.close')}
        </Button>
      </div>
    </Dialog>
  );
};

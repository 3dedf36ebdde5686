/** A kept picture, large, under the words that say what it shows. */
import { AlertLine } from '../components/alert-line.tsx';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useText } from '../i18n/text.ts';
import { useStationQuery } from '../station/hooks.ts';
import { jpegAddress } from './base64.ts';
import styles from './pictures.module.css';

export interface PictureDialogProps {
  readonly sha256: string;
  readonly title: string;
  onClose(): void;
}

export const PictureDialog = ({ sha256, title, onClose }: PictureDialogProps) => {
  const { t } = useText();
  const { data, error } = useStationQuery('picture.show', { sha256 });
  return (
    <Dialog title={title} onClose={onClose}>
      <AlertLine sentence={error?.sentence} />
      {data === undefined ? (
        <p role="status">{error === undefined ? t('camera:pictures.loading') : null}</p>
      ) : (
        <img className={styles.large} src={jpegAddress(data.pictureBase64)} alt={title} />
      )}
      <div className={styles.buttons}>
        <Button onPress={onClose} autoFocus>
          {t('camera:pictures.close')}
        </Button>
      </div>
    </Dialog>
  );
};

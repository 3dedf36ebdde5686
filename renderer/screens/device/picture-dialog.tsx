/** A kept picture, large, with what it shows, since when it is kept and by whom. */
import { jpegAddress } from '../../camera/base64.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './device.module.css';
import pictureStyles from './device-pictures.module.css';
import type { KeptPicture } from './device-pictures.tsx';

export interface PictureDialogProps {
  readonly picture: KeptPicture;
  onClose(): void;
}

export const PictureDialog = ({ picture, onClose }: PictureDialogProps) => {
  const { t, dateText } = useText();
  const { data, error } = useStationQuery('picture.show', { sha256: picture.sha256 });
  const title = t('camera:pictures.kept', {
    of: t(`camera:pictures.of.${picture.of}`),
    date: dateText(picture.keptOn),
    name: picture.keptBy,
  });
  return (
    <Dialog title={title} onClose={onClose}>
      <AlertLine sentence={error?.sentence} />
      {data === undefined ? (
        <p role="status">{error === undefined ? t('camera:pictures.loading') : null}</p>
      ) : (
        <img className={pictureStyles.large} src={jpegAddress(data.pictureBase64)} alt={title} />
      )}
      <div className={styles.buttons}>
        <Button onPress={onClose} autoFocus>
          {t('camera:pictures.close')}
        </Button>
      </div>
    </Dialog>
  );
};

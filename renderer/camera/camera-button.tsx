/** The button beside the scan field that opens the camera. */
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';
import styles from './camera.module.css';
import { useCameraDesk } from './camera-desk.ts';

/** The word stands on it where the header has room. */
export const CameraButton = () => {
  const { t } = useText();
  const desk = useCameraDesk();
  return (
    <Button icon="camera" label={t('camera:button')} onPress={desk.open}>
      <span className={styles.wideOnly}>{t('camera:button')}</span>
    </Button>
  );
};

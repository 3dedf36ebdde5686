/** The button beside the scan field that opens the camera. */
import { Button } from '../components/button.tsx';
import { useText } from '../i18n/text.ts';
import { useCameraDesk } from './camera-desk.ts';

export const CameraButton = () => {
  const { t } = useText();
  const desk = useCameraDesk();
  return (
    <Button icon="camera" onPress={desk.open}>
      {t('camera:button')}
    </Button>
  );
};

/** Offers to keep the picture in which the device was read just now. */
import type { BenchId } from '../../../src/domain/brand.ts';
import { useCameraDesk } from '../../camera/camera-desk.ts';
import { useObjectUrl } from '../../camera/use-object-url.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import pictureStyles from './device-pictures.module.css';

export const FreshStill = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t } = useText();
  const desk = useCameraDesk();
  const still = desk.freshStillOf(benchId);
  const address = useObjectUrl(still);
  if (still === undefined || address === undefined) return null;
  return (
    <div className={pictureStyles.fresh} role="status">
      <img className={pictureStyles.thumbnail} src={address} alt="" />
      <p className={pictureStyles.offer}>{t('camera:pictures.fresh')}</p>
      <Button onPress={() => desk.keepPictureOf(benchId, 'tag', still)}>
        {t('camera:pictures.keepFresh')}
      </Button>
      <Button look="quiet" onPress={desk.dismissStill}>
        {t('camera:pictures.dismiss')}
      </Button>
    </div>
  );
};

/** The pictures that are kept with the record of the device, small; each opens large. */
import type { BenchId } from '../../../src/domain/brand.ts';
import { useCameraDesk } from '../../camera/camera-desk.ts';
import { PictureList } from '../../camera/picture-list.tsx';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './device.module.css';

export const DevicePictures = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t, dateText } = useText();
  const desk = useCameraDesk();
  const { data, error } = useStationQuery('device.pictures', { benchId });
  const pictures = data?.pictures ?? [];
  const total = data?.total ?? 0;
  return (
    <section className={styles.detail} aria-labelledby="pictures">
      <h2 id="pictures">{t('camera:pictures.title')}</h2>
      <AlertLine sentence={error?.sentence} />
      {data !== undefined && total === 0 ? <p className={styles.soft}>{t('camera:pictures.none')}</p> : null}
      <PictureList
        pictures={pictures.map((picture) => {
          const of = t(`camera:pictures.of.${picture.of}`);
          const date = dateText(picture.keptOn);
          return {
            ...picture,
            key: `${picture.sha256} ${picture.of}`,
            caption: t('camera:pictures.kept', { of, date, name: picture.keptBy }),
            name: `${of}, ${date}`,
          };
        })}
      />
      {total > pictures.length && data !== undefined ? (
        <p className={styles.soft}>{t('camera:pictures.more', { shown: pictures.length, total })}</p>
      ) : null}
      <div className={styles.buttons}>
        <Button icon="camera" onPress={() => desk.keepPictureOf(benchId, 'marking')}>
          {t('camera:pictures.keep')}
        </Button>
      </div>
    </section>
  );
};

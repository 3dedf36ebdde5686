/** The pictures that are kept with the record of the device, small; each opens large. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { jpegAddress } from '../../camera/base64.ts';
import { useCameraDesk } from '../../camera/camera-desk.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './device.module.css';
import pictureStyles from './device-pictures.module.css';
import { PictureDialog } from './picture-dialog.tsx';

export type KeptPicture = OutputOf<'device.pictures'>['pictures'][number];

export const DevicePictures = ({ benchId }: { readonly benchId: BenchId }) => {
  const { t } = useText();
  const desk = useCameraDesk();
  const { data, error } = useStationQuery('device.pictures', { benchId });
  const [shown, setShown] = useState<KeptPicture>();
  const pictures = data?.pictures ?? [];
  const total = data?.total ?? 0;
  return (
    <section className={styles.detail} aria-labelledby="pictures">
      <h2 id="pictures">{t('camera:pictures.title')}</h2>
      <AlertLine sentence={error?.sentence} />
      {data !== undefined && total === 0 ? <p className={styles.soft}>{t('camera:pictures.none')}</p> : null}
      <ul className={pictureStyles.pictures}>
        {pictures.map((picture) => (
          <Thumbnail
            key={`${picture.sha256} ${picture.of}`}
            picture={picture}
            onOpen={() => setShown(picture)}
          />
        ))}
      </ul>
      {total > pictures.length && data !== undefined ? (
        <p className={styles.soft}>{t('camera:pictures.more', { shown: pictures.length, total })}</p>
      ) : null}
      <div className={styles.buttons}>
        <Button icon="camera" onPress={() => desk.keepPictureOf(benchId, 'marking')}>
          {t('camera:pictures.keep')}
        </Button>
      </div>
      {shown === undefined ? null : <PictureDialog picture={shown} onClose={() => setShown(undefined)} />}
    </section>
  );
};

const Thumbnail = ({ picture, onOpen }: { readonly picture: KeptPicture; onOpen(): void }) => {
  const { t, dateText } = useText();
  const { state, thumbnailBase64, keptBy: name } = picture;
  const of = t(`camera:pictures.of.${picture.of}`);
  const date = dateText(picture.keptOn);
  return (
    <li className={pictureStyles.picture}>
      {state === 'kept' && thumbnailBase64 !== undefined ? (
        <button
          type="button"
          className={pictureStyles.open}
          aria-label={t('camera:pictures.open', { of, date })}
          onClick={onOpen}
        >
          <img className={pictureStyles.thumbnail} src={jpegAddress(thumbnailBase64)} alt="" />
        </button>
      ) : (
        <AlertLine sentence={state === 'kept' ? undefined : t(`camera:pictures.${state}`)} />
      )}
      <span>{t('camera:pictures.kept', { of, date, name })}</span>
    </li>
  );
};

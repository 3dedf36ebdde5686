/** Kept pictures, small, each with its words; each opens large. */
import { useState } from 'react';
import { AlertLine } from '../components/alert-line.tsx';
import { useText } from '../i18n/text.ts';
import { jpegAddress } from './base64.ts';
import { PictureDialog } from './picture-dialog.tsx';
import styles from './pictures.module.css';

export interface ListedPicture {
  readonly key: string;
  readonly sha256: string;
  readonly state: 'kept' | 'missing' | 'changed';
  readonly thumbnailBase64?: string | undefined;
  /** What it shows, since when it is kept and by whom. */
  readonly caption: string;
  /** What it shows, in few words. */
  readonly name: string;
}

export interface PictureListProps {
  readonly pictures: readonly ListedPicture[];
  /** True where there is no room for captions. */
  readonly isDense?: boolean;
}

export const PictureList = ({ pictures, isDense = false }: PictureListProps) => {
  const { t } = useText();
  const [shown, setShown] = useState<ListedPicture>();
  return (
    <>
      <ul className={isDense ? styles.dense : styles.pictures}>
        {pictures.map((picture) => (
          <li key={picture.key} className={styles.picture}>
            {picture.state === 'kept' && picture.thumbnailBase64 !== undefined ? (
              <button
                type="button"
                className={styles.open}
                aria-label={t('evidence:pictures.open', { name: picture.name })}
                onClick={() => setShown(picture)}
              >
                <img className={styles.thumbnail} src={jpegAddress(picture.thumbnailBase64)} alt="" />
              </button>
            ) : (
              <AlertLine
                sentence={picture.state === 'kept' ? undefined : t(`camera:pictures.${picture.state}`)}
              />
            )}
            {isDense ? null : <span>{picture.caption}</span>}
          </li>
        ))}
      </ul>
      {shown === undefined ? null : (
        <PictureDialog sha256={shown.sha256} title={shown.caption} onClose={() => setShown(undefined)} />
      )}
    </>
  );
};

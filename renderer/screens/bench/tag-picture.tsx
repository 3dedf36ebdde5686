/** The picture of a tag at its true size, and a closer look at it. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './tag-picture.module.css';

export interface TagPictureProps {
  readonly benchId: BenchId;
  readonly kind: TagKind;
  readonly preview: OutputOf<'tag.preview'>;
}

export const TagPicture = ({ benchId, kind, preview }: TagPictureProps) => {
  const { t } = useText();
  const [isCloser, setCloser] = useState(false);
  const { widthMm, heightMm, pngBase64 } = preview;
  const title = t('walk:tag.picture', { kind: t(`walk:tag.${kind}`), device: formatBenchId(benchId) });
  const source = `data:image/png;base64,${pngBase64}`;
  return (
    <figure className={styles.figure}>
      <figcaption className={styles.caption}>
        <span>{t('walk:tag.trueSize', { width: widthMm, height: heightMm })}</span>
        <Button onPress={() => setCloser(true)}>{t('walk:tag.closer')}</Button>
      </figcaption>
      <div className={styles.room}>
        <img
          className={styles.tag}
          style={{ width: `${widthMm}mm`, height: `${heightMm}mm` }}
          src={source}
          alt={title}
        />
      </div>
      {isCloser && (
        <Dialog title={title} onClose={() => setCloser(false)}>
          <img className={styles.closer} src={source} alt={title} />
        </Dialog>
      )}
    </figure>
  );
};

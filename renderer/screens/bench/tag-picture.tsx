/** The picture of a tag at its true size, and a closer look at its dots. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import type { PrinterView } from './print-ways.ts';
import { TagDotsDialog } from './tag-dots-dialog.tsx';
import styles from './tag-picture.module.css';

export interface TagPictureProps {
  readonly benchId: BenchId;
  readonly kind: TagKind;
  readonly preview: OutputOf<'tag.preview'>;
  /** Where it goes; absent where that is open. */
  readonly printer: PrinterView | undefined;
}

export const TagPicture = ({ benchId, kind, preview, printer }: TagPictureProps) => {
  const { t } = useText();
  const [isCloser, setCloser] = useState(false);
  const { widthMm, heightMm, pngBase64 } = preview;
  const title = t('walk:tag.picture', { kind: t(`walk:tag.${kind}`), device: formatBenchId(benchId) });
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
          src={`data:image/png;base64,${pngBase64}`}
          alt={title}
        />
      </div>
      {isCloser && (
        <TagDotsDialog
          title={title}
          benchId={benchId}
          kind={kind}
          stock={{ widthMm, heightMm }}
          printer={printer}
          onClose={() => setCloser(false)}
        />
      )}
    </figure>
  );
};

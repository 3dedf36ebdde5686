/** A tag dot by dot, as printers of three densities set it. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { type Dpi, dotsAcross, dpiOf, dpis, dpiText, type Zoom, zooms } from './tag-dots.ts';
import styles from './tag-picture.module.css';

export interface TagDotsDialogProps {
  readonly title: string;
  readonly benchId: BenchId;
  readonly kind: TagKind;
  readonly stock: { readonly widthMm: number; readonly heightMm: number };
  readonly dpi: Dpi;
  onClose(): void;
}

export const TagDotsDialog = ({ title, benchId, kind, stock, dpi: first, onClose }: TagDotsDialogProps) => {
  const { t } = useText();
  const [dpi, setDpi] = useState(first);
  const [zoom, setZoom] = useState<Zoom>('fit');
  const { data, error } = useStationQuery(
    'tag.preview',
    { benchId, kind, dpi, stock },
    { keepPrevious: true },
  );
  const width = dotsAcross(stock.widthMm, dpi);
  const height = dotsAcross(stock.heightMm, dpi);
  return (
    <Dialog title={title} onClose={onClose}>
      <div className={styles.choices}>
        <Choice
          label={t('walk:tag.dpiLabel')}
          isCompact
          value={dpiText(dpi)}
          options={dpis.map((value) => ({ value, label: t('walk:tag.dpi', { dpi: value }) }))}
          onChange={(chosen) => setDpi(dpiOf(chosen))}
        />
        <Choice<Zoom>
          label={t('walk:tag.zoom')}
          isCompact
          value={zoom}
          options={zooms.map((value) => ({
            value,
            label: value === 'fit' ? t('walk:tag.whole') : t('walk:tag.times', { times: value }),
          }))}
          onChange={setZoom}
        />
      </div>
      <AlertLine sentence={error?.sentence} />
      {data !== undefined && error === undefined && (
        <>
          <section className={styles.dots} aria-label={t('walk:tag.dots')} tabIndex={0}>
            <img
              className={styles.pixels}
              style={zoom === 'fit' ? { width: '100%' } : { width: width * Number(zoom) }}
              src={`data:image/png;base64,${data.pngBase64}`}
              alt={title}
            />
          </section>
          <p className={styles.soft}>{t('walk:tag.dotsHint', { width, height })}</p>
        </>
      )}
    </Dialog>
  );
};

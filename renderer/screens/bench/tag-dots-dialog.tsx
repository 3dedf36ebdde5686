/** A tag dot by dot, as printers of three densities set it. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import type { PrinterView } from './print-ways.ts';
import { dotsAcross, dpiOf, dpis, dpiText, type Zoom, zoomAfter, zooms } from './tag-dots.ts';
import styles from './tag-picture.module.css';
import { loadedIn } from './use-tag-preview.ts';

export interface TagDotsDialogProps {
  readonly title: string;
  readonly benchId: BenchId;
  readonly kind: TagKind;
  readonly stock: { readonly widthMm: number; readonly heightMm: number };
  readonly printer: PrinterView | undefined;
  onClose(): void;
}

export const TagDotsDialog = ({ title, benchId, kind, stock, printer, onClose }: TagDotsDialogProps) => {
  const { t } = useText();
  const [dpi, setDpi] = useState(printer?.settings.dpi ?? 300);
  const [zoom, setZoom] = useState<Zoom>('fit');
  const { data, error } = useStationQuery(
    'tag.preview',
    { benchId, kind, dpi, stock, ...loadedIn(printer) },
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
          <div className={styles.dots}>
            <button
              type="button"
              className={styles.magnifier}
              aria-label={t('walk:tag.magnify')}
              onClick={() => setZoom(zoomAfter(zoom))}
            >
              <img
                className={zoom === 'fit' ? styles.fitted : styles.pixels}
                style={zoom === 'fit' ? undefined : { width: width * Number(zoom) }}
                src={`data:image/png;base64,${data.pngBase64}`}
                alt={title}
              />
            </button>
          </div>
          <p className={styles.soft}>{t('walk:tag.dotsHint', { width, height })}</p>
        </>
      )}
    </Dialog>
  );
};

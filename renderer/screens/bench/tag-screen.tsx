/** The tag of a device: as large as it will be, printed, proved by a scan, and what to do with the device now. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { isPast, useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import { AfterTag } from './after-tag.tsx';
import { PrintTag } from './print-tag.tsx';
import { type PrinterView, primaryWayOf } from './print-ways.ts';
import { TagPicture } from './tag-picture.tsx';
import type { Scanned } from './tag-progress.tsx';
import styles from './tag-screen.module.css';
import { useShortcuts } from './use-shortcuts.ts';
import { useTagPreview } from './use-tag-preview.ts';

export interface TagScreenProps {
  readonly benchId: BenchId;
  readonly kind: TagKind;
}

export const TagScreen = ({ benchId, kind }: TagScreenProps) => {
  const { t } = useText();
  const printers = useStationQuery('printer.list', {}).data?.printers;
  const tag = useStationQuery('device.show', { benchId }).data?.device.currentTag;
  const [chosen, setChosen] = useState<PrinterView>();
  const meant = primaryWayOf(printers ?? [], kind);
  const printer = chosen ?? (meant?.way === 'printer' ? meant.printer : undefined);
  const { preview, error, misfit } = useTagPreview(benchId, kind, printer);
  const prove = useStationCommand('tag.prove');
  const [scanned, setScanned] = useState<Scanned>('none');
  useShortcuts();
  useScanHandler(({ meaning, text }) => {
    if (meaning.meaning !== 'device' || meaning.device.benchId !== benchId) return false;
    if (isPast(meaning.tag)) return false;
    setScanned(meaning.by === 'tag' || kind === 'id' ? 'tag' : 'bench ID');
    if (meaning.by === 'tag') void prove.run({ text });
    return true;
  });
  if (preview === undefined || printers === undefined) {
    return error === undefined ? <p role="status">{t('walk:loading')}</p> : <StationError error={error} />;
  }
  return (
    <div className={styles.page}>
      <TagPicture benchId={benchId} kind={kind} preview={preview} printer={printer} />
      <section className={styles.side}>
        <AfterTag content={preview.content} tag={tag?.kind === kind ? tag : undefined} scanned={scanned} />
        <AlertLine sentence={prove.error?.sentence} />
        <PrintTag
          benchId={benchId}
          kind={kind}
          tag={tag}
          printers={printers}
          misfit={printer === undefined || misfit === undefined ? undefined : { printer, ...misfit }}
          onPrinter={setChosen}
        />
        <div className={styles.room} />
        <p className={styles.next}>{t('walk:tag.next')}</p>
        <div className={styles.links}>
          <Button onPress={() => navigate({ screen: 'bench' })}>{t('walk:tag.bench')}</Button>
          <Button onPress={() => navigate({ screen: 'device', benchId })}>{t('walk:tag.device')}</Button>
        </div>
      </section>
    </div>
  );
};

/** The tag of a device: as large as it will be, opened for printing, and what to do with the device now. */
import { useState } from 'react';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { TagKind } from '../../../src/domain/tag-content.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { isPast, useScanHandler } from '../../scan/scan.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { AfterTag, type TagProof } from './after-tag.tsx';
import { IssueTag } from './issue-tag.tsx';
import { TagPicture } from './tag-picture.tsx';
import styles from './tag-screen.module.css';

export interface TagScreenProps {
  readonly benchId: BenchId;
  readonly kind: TagKind;
}

export const TagScreen = ({ benchId, kind }: TagScreenProps) => {
  const { t } = useText();
  const { data: preview, error } = useStationQuery('tag.preview', { benchId, kind });
  const [proof, setProof] = useState<TagProof>('none');
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'device' || meaning.device.benchId !== benchId) return false;
    if (isPast(meaning.tag)) return false;
    setProof(meaning.by === 'tag' || kind === 'id' ? 'tag' : 'bench ID');
    return true;
  });
  if (preview === undefined) {
    return error === undefined ? <p role="status">{t('walk:loading')}</p> : <StationError error={error} />;
  }
  return (
    <div className={styles.page}>
      <TagPicture benchId={benchId} kind={kind} preview={preview} />
      <section className={styles.side}>
        <AfterTag content={preview.content} proof={proof} />
        <IssueTag benchId={benchId} kind={kind} />
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

/** The pictures of the check on the screen, and the button that takes another. */
import type { Check } from '../../../src/domain/procedure.ts';
import { PictureList } from '../../camera/picture-list.tsx';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './check-pictures.module.css';
import { KeyCap } from './key-cap.tsx';
import { letterOf } from './shortcut.ts';
import { useListedPictures } from './use-listed-pictures.ts';

export interface CheckPicturesProps {
  readonly inspection: number;
  readonly check: Check;
  onTake(): void;
}

export const CheckPictures = ({ inspection, check, onTake }: CheckPicturesProps) => {
  const { t } = useText();
  const { data, error } = useStationQuery('inspection.pictures', { inspection, check: check.key });
  const listed = useListedPictures([check]);
  return (
    <section className={styles.pictures} aria-label={t('evidence:pictures.ofCheck')}>
      <AlertLine sentence={error?.sentence} />
      <PictureList pictures={listed(data?.pictures ?? [])} isDense />
      <Button icon="camera" isWide onPress={onTake}>
        <span className={styles.key}>
          {t('evidence:pictures.take')} <KeyCap>{letterOf.picture}</KeyCap>
        </span>
      </Button>
    </section>
  );
};

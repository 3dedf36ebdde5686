/** Every picture of an inspection, in the order in which they were taken. */
import type { Check } from '../../../src/domain/procedure.ts';
import { PictureList } from '../../camera/picture-list.tsx';
import { AlertLine } from '../../components/alert-line.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './inspection-pictures.module.css';
import { useListedPictures } from './use-listed-pictures.ts';

export interface InspectionPicturesProps {
  readonly inspection: number;
  readonly checks: readonly Check[];
}

export const InspectionPictures = ({ inspection, checks }: InspectionPicturesProps) => {
  const { t } = useText();
  const { data, error } = useStationQuery('inspection.pictures', { inspection });
  const listed = useListedPictures(checks);
  const pictures = data?.pictures ?? [];
  if (pictures.length === 0) return <AlertLine sentence={error?.sentence} />;
  return (
    <section className={styles.section} aria-labelledby="inspection-pictures">
      <h2 id="inspection-pictures">{t('evidence:pictures.title')}</h2>
      <PictureList pictures={listed(pictures)} />
    </section>
  );
};

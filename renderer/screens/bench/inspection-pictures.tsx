/** Every picture of an inspection, in the order in which they were taken. */
import type { Check } from '../../../src/domain/procedure.ts';
import type { OutputOf } from '../../../src/station/contract.ts';
import { PictureList } from '../../camera/picture-list.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './inspection-evidence.module.css';
import { useListedPictures } from './use-listed-pictures.ts';

export interface InspectionPicturesProps {
  readonly pictures: OutputOf<'inspection.pictures'>['pictures'];
  readonly checks: readonly Check[];
}

export const InspectionPictures = ({ pictures, checks }: InspectionPicturesProps) => {
  const { t } = useText();
  const listed = useListedPictures(checks);
  if (pictures.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="inspection-pictures">
      <h2 id="inspection-pictures">{t('evidence:pictures.title')}</h2>
      <PictureList pictures={listed(pictures)} />
    </section>
  );
};

/** That an inspection is a blind second one; once it is signed, what it means for the device and how it compares with the first. */
import type { InspectionView } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import styles from './blind-note.module.css';

export const BlindNote = ({ inspection }: { readonly inspection: InspectionView }) => {
  const { t, dateText } = useText();
  const { reinspection, verdict, signed } = inspection;
  if (reinspection === undefined) return null;
  const { first } = reinspection;
  return (
    <section className={styles.note}>
      <strong>{t('schedule:blind.note')}</strong>
      {signed === undefined || verdict.kind === 'remove from service' ? null : (
        <p>{t('schedule:blind.stays')}</p>
      )}
      {signed === undefined || first === undefined ? null : (
        <>
          <p>
            {t('schedule:blind.firstWas', {
              verdict: t(`screens:verdict.${first.verdict.kind}`),
              name: first.by,
              date: dateText(first.on),
            })}
          </p>
          <p>{t(first.verdict.kind === verdict.kind ? 'schedule:blind.agree' : 'schedule:blind.differ')}</p>
        </>
      )}
    </section>
  );
};

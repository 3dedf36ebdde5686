/** That an inspection is signed, by whom and when, and the way to its tag. */
import type { InspectionView } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { CorrectionList } from '../corrections/correction-list.tsx';
import styles from './signing.module.css';

export const SignedNote = ({ inspection }: { readonly inspection: InspectionView }) => {
  const { t, dateText } = useText();
  const { signed, verdict, reinspection } = inspection;
  const { benchId } = inspection.device;
  if (signed === undefined) return null;
  return (
    <section className={styles.form}>
      <h2 className={styles.title}>
        {t('walk:verdict.signed', { name: signed.by, date: dateText(signed.on) })}
      </h2>
      {signed.dueOn !== undefined && (
        <p>
          {t(`program:due.heading.${signed.dueFor ?? 'documented inspection'}`)}:{' '}
          <strong>{dateText(signed.dueOn)}</strong>
        </p>
      )}
      {reinspection !== undefined && verdict.kind === 'pass' ? null : (
        <Button
          look="primary"
          size="large"
          icon="tag"
          onPress={() =>
            navigate({ screen: 'tag', benchId, kind: verdict.kind === 'pass' ? 'status' : 'quarantine' })
          }
        >
          {t('walk:verdict.tag')}
        </Button>
      )}
      <Button onPress={() => navigate({ screen: 'device', benchId })}>{t('walk:verdict.device')}</Button>
      {inspection.amendments.length === 0 ? null : (
        <>
          <h2 className={styles.title}>{t('corrections:made')}</h2>
          <CorrectionList amendments={inspection.amendments} />
        </>
      )}
    </section>
  );
};

/** How many pictures lie beside the record, and how much room they take. */
import { AlertLine } from '../../components/alert-line.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './setup.module.css';

const bytesAMegabyte = 1_000_000;

export const KeptPictures = () => {
  const { t, language } = useText();
  const { data, error } = useStationQuery('evidence.summary', {});
  return (
    <section className={styles.box} aria-labelledby="kept-pictures">
      <h2 id="kept-pictures">{t('evidence:store.title')}</h2>
      <p>{t('evidence:store.text')}</p>
      <AlertLine sentence={error?.sentence} />
      {data === undefined ? null : (
        <p>
          <strong>
            {t('evidence:store.total', {
              count: data.count,
              megabytes: new Intl.NumberFormat(language, { maximumFractionDigits: 1 }).format(
                data.bytes / bytesAMegabyte,
              ),
            })}
          </strong>
        </p>
      )}
    </section>
  );
};

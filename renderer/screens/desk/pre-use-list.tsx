/** The short list by which a user looks a device over before use. */
import { useText } from '../../i18n/text.ts';
import styles from './desk.module.css';
import type { Desk } from './use-desk.ts';

export const PreUseList = ({ preUse }: { readonly preUse: Desk['preUse'] }) => {
  const { t, inLanguage, language } = useText();
  return (
    <section className={styles.list} aria-label={t('desk:preUse')}>
      <h2>{t('desk:preUse')}</h2>
      <ul className={styles.points}>
        {(preUse?.items ?? []).map(({ key, text }) => (
          <li key={key}>{inLanguage(text)}</li>
        ))}
      </ul>
      <p lang={language === 'en' ? 'es' : 'en'}>{t('desk:listInOther')}</p>
    </section>
  );
};

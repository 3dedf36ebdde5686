/** For the administrator: whose training has run out, or will soon. */
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import type { ReadyStation } from '../../station/status.ts';
import styles from './start.module.css';

export const TrainingNotices = ({ notices = [] }: { readonly notices: ReadyStation['trainingNotices'] }) => {
  const { t, dateText } = useText();
  if (notices.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="training-notices">
      <h2 id="training-notices">{t('people:notices.title')}</h2>
      <ul className={styles.list}>
        {notices.map(({ personId, name, notice, on }) => (
          <li key={personId} className={styles.open}>
            <div className={styles.notice}>
              <Icon name={notice === 'expired' ? 'late' : 'clock'} />
              <span className={styles.name}>{name}</span>
              <span>
                {t(notice === 'expired' ? 'people:notices.expired' : 'people:notices.soon', {
                  date: dateText(on),
                })}
              </span>
            </div>
            <Button
              label={`${t('people:list.open')}: ${name}`}
              onPress={() => navigate({ screen: 'person', personId })}
            >
              {t('people:list.open')}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
};

/** For the administrator: whose PIN somebody guessed at in the last days. */
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import type { ReadyStation } from '../../station/status.ts';
import styles from './start.module.css';

export const PinNotices = ({ notices = [] }: { readonly notices: ReadyStation['pinNotices'] }) => {
  const { t, dateText } = useText();
  if (notices.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="pin-notices">
      <h2 id="pin-notices">{t('people:pinNotices.title')}</h2>
      <ul className={styles.list}>
        {notices.map(({ personId, name, inARow, on, isClosed }) => (
          <li key={personId} className={styles.open}>
            <div className={styles.notice}>
              <Icon name={isClosed ? 'lock' : 'warning'} />
              <span className={styles.name}>{name}</span>
              <span>
                {t(isClosed ? 'people:pinNotices.closed' : 'people:pinNotices.wait', {
                  count: inARow,
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

/** For the administrator: people of whom something is to be known, each with the way to their page. */
import { Button } from '../../components/button.tsx';
import { Icon, type IconName } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './start.module.css';

export interface PersonNotice {
  readonly personId: string;
  readonly name: string;
  readonly icon: IconName;
  readonly words: string;
}

export interface PersonNoticesProps {
  /** Of the heading, which names the list. */
  readonly id: string;
  readonly title: string;
  readonly notices: readonly PersonNotice[];
}

export const PersonNotices = ({ id, title, notices }: PersonNoticesProps) => {
  const { t } = useText();
  if (notices.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <ul className={styles.list}>
        {notices.map(({ personId, name, icon, words }) => (
          <li key={personId} className={styles.open}>
            <div className={styles.notice}>
              <Icon name={icon} />
              <span className={styles.name}>{name}</span>
              <span>{words}</span>
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

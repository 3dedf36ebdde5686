/** One person of the station in the list. */
import type { PersonView } from '../../../src/station/person-view.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './people.module.css';
import { useSigningWords } from './use-signing-words.ts';

export const PersonRow = ({ person }: { readonly person: PersonView }) => {
  const { t } = useText();
  const { icon, words } = useSigningWords()(person);
  const { personId, name, roles, badge, pinSet } = person;
  return (
    <li className={styles.item}>
      <div className={styles.words}>
        <span className={styles.name}>{name}</span>
        <span className={styles.soft}>
          {roles.map((role) => t(`screens:role.${role}`)).join(', ')} · {t('screens:setup.badgeShort')}{' '}
          {badge}
        </span>
      </div>
      <div className={styles.words}>
        <span className={styles.sign}>
          <Icon name={icon} />
          {words}
        </span>
        <span className={styles.soft}>{t(pinSet ? 'people:page.pinSet' : 'people:page.noPin')}</span>
      </div>
      <Button
        label={`${t('people:list.open')}: ${name}`}
        onPress={() => navigate({ screen: 'person', personId })}
      >
        {t('people:list.open')}
      </Button>
    </li>
  );
};

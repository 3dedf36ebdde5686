/** One person of the station. */
import type { PersonView } from '../../../src/station/person-view.ts';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { useReadyStation } from '../../station/status.ts';
import styles from './setup.module.css';

export interface PersonRowProps {
  readonly person: PersonView;
  onDesignate(): void;
  onSetPin(): void;
}

export const PersonRow = ({ person, onDesignate, onSetPin }: PersonRowProps) => {
  const { t, dateText } = useText();
  const today = useReadyStation()?.today ?? '';
  const { designation } = person;
  const signing = (): string => {
    if (designation === undefined) return t('screens:setup.noDesignation');
    if (designation.designatedOn > today)
      return t('screens:setup.notYet', { date: dateText(designation.designatedOn) });
    const date = dateText(designation.trainingValidUntil);
    return t(person.maySign ? 'screens:setup.maySign' : 'screens:setup.mayNotSign', { date });
  };
  return (
    <li className={styles.item}>
      <div className={styles.words}>
        <span className={styles.name}>{person.name}</span>
        <span className={styles.soft}>
          {person.roles.map((role) => t(`screens:role.${role}`)).join(', ')} · {t('screens:setup.badgeShort')}{' '}
          {person.badge}
        </span>
      </div>
      <div className={styles.words}>
        <span className={styles.sign}>
          <Icon name={person.maySign ? 'check' : 'blank'} />
          {signing()}
        </span>
        <span className={styles.soft}>
          {t(person.pinSet ? 'screens:setup.hasPin' : 'screens:setup.noPin')}
        </span>
      </div>
      <Button onPress={onDesignate}>{t('screens:setup.designate')}</Button>
      <Button onPress={onSetPin}>
        {t(person.pinSet ? 'screens:setup.changePin' : 'screens:setup.setPin')}
      </Button>
    </li>
  );
};

/** One person: whether they may sign, every designation they held, everything that was recorded, and what may be done. */

import { Icon } from '../../components/icon.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { CorrectionList } from '../corrections/correction-list.tsx';
import { CustodyHistory } from '../desk/custody-history.tsx';
import { DesignationBox } from './designation-box.tsx';
import styles from './people.module.css';
import { PersonActions } from './person-actions.tsx';
import { PersonHistory } from './person-history.tsx';
import { useSigningWords } from './use-signing-words.ts';

export const PersonScreen = ({ personId }: { readonly personId: string }) => {
  const { t } = useText();
  const { data, error } = useStationQuery('person.show', { personId });
  const signing = useSigningWords();
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const { person, designations, amendments, history } = data;
  const { icon, words } = signing(person);
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <div>
          <h1>{person.name}</h1>
          <p className={styles.soft}>
            {person.roles.map((role) => t(`screens:role.${role}`)).join(', ')} ·{' '}
            {t('screens:setup.badgeShort')} {person.badge} ·{' '}
            {t(person.pinSet ? 'people:page.pinSet' : 'people:page.noPin')}
          </p>
        </div>
        <p className={styles.sign}>
          <Icon name={icon} />
          {words}
        </p>
      </div>
      <PersonActions person={person} />
      <div className={styles.columns}>
        <section className={styles.section} aria-labelledby="designations">
          <h2 id="designations">{t('people:page.designations')}</h2>
          {designations.length === 0 ? <p>{t('people:page.noDesignation')}</p> : null}
          {designations.map((held) => (
            <DesignationBox
              key={`${held.designation.designatedOn} ${held.ended?.on} ${held.recorded?.on}`}
              held={held}
            />
          ))}
        </section>
        <div className={styles.section}>
          {amendments.length === 0 ? null : (
            <section className={styles.section} aria-labelledby="corrections">
              <h2 id="corrections">{t('corrections:made')}</h2>
              <CorrectionList amendments={amendments} />
            </section>
          )}
          <CustodyHistory of={{ userId: personId }} />
          <PersonHistory history={history} />
        </div>
      </div>
    </div>
  );
};

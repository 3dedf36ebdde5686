/** Everything that was recorded about a person, newest first. */
import type { PersonRecord } from '../../../src/station/person-view.ts';
import { useText } from '../../i18n/text.ts';
import styles from './people.module.css';

type Entry = PersonRecord['history'][number];

export const PersonHistory = ({ history }: { readonly history: readonly Entry[] }) => {
  const { t, dateText } = useText();
  const words = useEntryWords();
  return (
    <section className={styles.section} aria-labelledby="history">
      <h2 id="history">{t('people:page.history')}</h2>
      <ul className={styles.history}>
        {history.map((entry) => (
          <li key={entry.seq}>
            <span>{words(entry)}</span>
            <span className={styles.soft}>
              {t('people:event.line', {
                date: dateText(entry.on),
                name: entry.by === 'station' ? t('people:event.station') : entry.by,
              })}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};

const useEntryWords = (): ((entry: Entry) => string) => {
  const { t, dateText } = useText();
  return ({ event, byThemselves }) => {
    switch (event.type) {
      case 'person.added':
        return t('people:event.added', { name: event.person.name, badge: event.person.badge });
      case 'person.designated':
        return t('people:event.designated', { by: event.designation.designatedBy });
      case 'person.designation-ended': {
        const { endedOn, because } = event;
        return t('people:event.designation-ended', { date: dateText(endedOn), because });
      }
      case 'person.name-changed':
        return t('people:event.name-changed', event);
      case 'person.badge-changed':
        return t('people:event.badge-changed', event);
      case 'person.roles-changed': {
        const roles = event.roles.map((role) => t(`screens:role.${role}`)).join(', ');
        return t('people:event.roles-changed', { roles, because: event.because });
      }
      case 'person.pin-set':
        if (event.because !== undefined) return t('people:event.pin-reset', { because: event.because });
        return t(byThemselves ? 'people:event.pin-own' : 'people:event.pin-first');
      case 'person.pin-refused': {
        const { inARow: count, waitSeconds } = event;
        const where = t(`people:event.from.${event.from}`);
        if (waitSeconds !== undefined)
          return t('people:event.pin-wait', { count, where, minutes: waitSeconds / 60 });
        return t(count === 1 ? 'people:event.pin-refused' : 'people:event.pin-closed', { count, where });
      }
      case 'person.left':
        return t('people:event.left', { date: dateText(event.leftOn), because: event.because });
      case 'person.returned':
        return t('people:event.returned', event);
    }
  };
};

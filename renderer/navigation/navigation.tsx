/** The screens that can be gone to from everywhere. */
import type { PlaceName } from '../../src/domain/command-symbol.ts';
import { Icon, type IconName } from '../components/icon.tsx';
import { useText } from '../i18n/text.ts';
import styles from './navigation.module.css';
import { hashOf, type Route, useRoute } from './route.ts';

interface Place {
  readonly name: PlaceName;
  readonly icon: IconName;
  /** The screens that belong to the place. */
  readonly screens: readonly Route['screen'][];
}

const places: readonly Place[] = [
  { name: 'start', icon: 'home', screens: ['start'] },
  { name: 'desk', icon: 'person', screens: ['desk', 'custody', 'count', 'kits'] },
  { name: 'bench', icon: 'bench', screens: ['bench', 'tag'] },
  {
    name: 'held',
    icon: 'stop',
    screens: ['held', 'returns', 'returns-plan', 'notices', 'new-notice', 'notice'],
  },
  { name: 'register', icon: 'register', screens: ['register', 'device', 'lifeline', 'new-device'] },
  { name: 'schedule', icon: 'calendar', screens: ['schedule', 'reinspections'] },
  { name: 'records', icon: 'clock', screens: ['records', 'record', 'insight'] },
  { name: 'setup', icon: 'setup', screens: ['setup'] },
];

export const Navigation = () => {
  const { t } = useText();
  const { screen } = useRoute();
  return (
    <nav className={styles.navigation} aria-label={t('screens:app.navigation')}>
      <ul>
        {places.map(({ name, icon, screens }) => (
          <li key={name}>
            <a
              className={styles.place}
              href={hashOf({ screen: name })}
              {...(screens.includes(screen) ? { 'aria-current': 'page' as const } : {})}
            >
              <Icon name={icon} />
              {t(`screens:nav.${name}`)}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
};

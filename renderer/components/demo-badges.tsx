/** The people of the demo, whose badges can be pressed instead of scanned. Nothing at a real station. */

import { roleSchema } from '../../src/domain/person.ts';
import { useText } from '../i18n/text.ts';
import { useStationCommand } from '../station/hooks.ts';
import { useReadyStation } from '../station/status.ts';
import { AlertLine } from './alert-line.tsx';
import { Button } from './button.tsx';
import styles from './demo-badges.module.css';

export const DemoBadges = () => {
  const { t } = useText();
  const station = useReadyStation();
  const signIn = useStationCommand('session.sign-in');
  if (station?.demoBadges === undefined) return null;
  const roleWord = (role: string): string => {
    const known = roleSchema.safeParse(role);
    return known.success ? t(`screens:role.${known.data}`) : role;
  };
  return (
    <section className={styles.section} aria-labelledby="demo-badges">
      <h2 id="demo-badges">{t('screens:start.demoTitle')}</h2>
      <p>{t('screens:start.demoHint')}</p>
      <AlertLine sentence={signIn.error?.sentence} />
      <ul className={styles.badges}>
        {station.demoBadges.map(({ name, badge, roles }) => (
          <li key={badge}>
            <Button icon="person" isWide onPress={() => void signIn.run({ badge })}>
              <span className={styles.name}>{name}</span>
              <span className={styles.detail}>{roles.map(roleWord).join(', ')}</span>
              <span className={styles.detail}>
                {badge}
                {station.person?.badge === badge ? ` · ${t('screens:start.here')}` : ''}
              </span>
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
};

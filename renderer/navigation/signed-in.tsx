/** Who works at this window, and the way out. */
import { Button } from '../components/button.tsx';
import { Icon } from '../components/icon.tsx';
import { useText } from '../i18n/text.ts';
import { useStationCommand } from '../station/hooks.ts';
import { useSignedIn } from '../station/status.ts';
import styles from './header.module.css';

export const SignedIn = () => {
  const { t } = useText();
  const person = useSignedIn();
  const signOut = useStationCommand('session.sign-out');
  return (
    <div className={styles.person}>
      <Icon name="person" />
      <div className={styles.who} aria-live="polite">
        {person === undefined ? (
          <>
            <span className={styles.roles}>{t('screens:header.scanBadge')}</span>
            <span className={styles.personName}>{t('screens:errors.signIn')}</span>
          </>
        ) : (
          <>
            <span className={styles.personName}>{person.name}</span>
            <span className={styles.roles}>
              {person.roles.map((role) => t(`screens:role.${role}`)).join(', ')}
            </span>
          </>
        )}
      </div>
      {person === undefined ? null : (
        <Button look="quiet" onPress={() => void signOut.run({})}>
          {t('screens:header.signOut')}
        </Button>
      )}
    </div>
  );
};

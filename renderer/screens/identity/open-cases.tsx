/** Cases of "who is this?" that wait for a person, on the start screen. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useSignedIn } from '../../station/status.ts';
import styles from '../start/start.module.css';

export const OpenCases = () => {
  const { t, dateText } = useText();
  const isSignedIn = useSignedIn() !== undefined;
  const { data } = useStationQuery('identity.list', {}, { enabled: isSignedIn });
  const cases = data?.cases ?? [];
  if (!isSignedIn || cases.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="open-cases">
      <h2 id="open-cases">{t('screens:identity.openCases')}</h2>
      <ul className={styles.list}>
        {cases.map(({ identityCase, openedOn, openedBy, state }) => (
          <li key={identityCase} className={styles.open}>
            <div className={styles.openText}>
              <span>
                {t('screens:identity.caseOpen', { identityCase, date: dateText(openedOn), name: openedBy })}
              </span>
              <span className={styles.soft}>
                {t(
                  state === 'proposed'
                    ? 'screens:identity.waitsForSecond'
                    : 'screens:identity.waitsForChoice',
                )}
              </span>
            </div>
            <Button icon="forward" onPress={() => navigate({ screen: 'who', identityCase })}>
              {t('screens:identity.resume', { identityCase })}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
};

/** The way from the start screen to the manufacturers' notices. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { useSignedIn } from '../../station/status.ts';
import start from '../start/start.module.css';

export const NoticesLine = () => {
  const { t, dateText } = useText();
  const isSignedIn = useSignedIn() !== undefined;
  const { data } = useStationQuery('notice.list', {}, { enabled: isSignedIn });
  if (!isSignedIn || data === undefined) return null;
  const [latest] = data.notices;
  return (
    <section className={start.section} aria-labelledby="start-notices">
      <h2 id="start-notices">{t('notices:title')}</h2>
      <div className={start.open}>
        <span>
          {latest === undefined
            ? t('notices:none')
            : t('notices:latest', {
                count: data.notices.length,
                manufacturer: latest.manufacturer,
                reference: latest.reference,
                date: dateText(latest.recordedOn),
              })}
        </span>
        <Button icon="forward" onPress={() => navigate({ screen: 'notices' })}>
          {t('notices:all')}
        </Button>
      </div>
    </section>
  );
};

/** One manufacturer's notice: what is to be done, and the devices that it means today, with who has them. */
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { MatchesView } from './matches-view.tsx';
import styles from './notices.module.css';

export const NoticeScreen = ({ notice }: { readonly notice: number }) => {
  const { t, dateText, language } = useText();
  const { data, error } = useStationQuery('notice.show', { notice });
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const { manufacturer, reference, issuedOn, instruction, recordedBy, recordedOn } = data.notice;
  const given = instruction[language] === undefined ? (language === 'en' ? 'es' : 'en') : language;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('notices:noticeTitle', { manufacturer, reference })}</h1>
        <Button icon="register" onPress={() => navigate({ screen: 'notices' })}>
          {t('notices:all')}
        </Button>
      </div>
      <p>
        {t('notices:noticeFacts', {
          notice,
          issued: dateText(issuedOn),
          recorded: dateText(recordedOn),
          name: recordedBy,
        })}
      </p>
      <blockquote className={styles.instruction} lang={given}>
        {instruction[given]}
      </blockquote>
      <MatchesView matches={data.matches} />
    </div>
  );
};

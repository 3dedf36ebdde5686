/** The manufacturers' notices: those that were recorded, and the way to enter another one. */
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './notices.module.css';

export const NoticesScreen = () => {
  const { t, dateText } = useText();
  const { data, error } = useStationQuery('notice.list', {});
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('notices:title')}</h1>
        <Button look="primary" icon="plus" onPress={() => navigate({ screen: 'new-notice' })}>
          {t('notices:enter')}
        </Button>
      </div>
      <p className={styles.text}>{t('notices:text')}</p>
      {data.notices.length === 0 ? (
        <p>{t('notices:none')}</p>
      ) : (
        <table className={styles.table} aria-label={t('notices:title')}>
          <thead>
            <tr>
              {(['number', 'maker', 'reference', 'issued', 'recorded', 'meant'] as const).map((column) => (
                <th key={column} scope="col">
                  {t(`notices:column.${column}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {data.notices.map((each) => (
              <tr key={each.notice}>
                <td>
                  <a className={styles.link} href={hashOf({ screen: 'notice', notice: each.notice })}>
                    {t('notices:open', { notice: each.notice })}
                  </a>
                </td>
                <td>{each.manufacturer}</td>
                <td>{each.reference}</td>
                <td>{dateText(each.issuedOn)}</td>
                <td>{t('notices:recordedBy', { date: dateText(each.recordedOn), name: each.recordedBy })}</td>
                <td>{t('notices:meant', { certain: each.certain, possible: each.possible })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
};

/** Cautions and limits: what the program does not do, what a checkpoint proves, and the sources that the rules name themselves. */
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useNumberedActs } from '../../scan/use-numbered-acts.ts';
import { useStationQuery } from '../../station/hooks.ts';
import styles from './limits.module.css';

const notLines = ['certify', 'manual', 'eye', 'override', 'repair', 'worn', 'demo'] as const;

/** Of a source that many rules name, so many are named. */
const named = 4;

const print = (): void => window.print();

export const LimitsScreen = () => {
  const { t, inLanguage } = useText();
  const sources = useStationQuery('rule-sources.list', {});
  const procedure = useStationQuery('procedure.show', {});
  useNumberedActs([print]);
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('help:limitsPage.title')}</h1>
        <div className={styles.print}>
          <Button number={1} onPress={print}>
            {t('help:limitsPage.print')}
          </Button>
        </div>
      </div>
      <p>{t('help:limitsPage.text')}</p>
      <ul className={styles.lines}>
        {(procedure.data?.procedure.cautions ?? []).map((caution) => (
          <li key={caution.en}>{inLanguage(caution)}</li>
        ))}
      </ul>
      <h2>{t('help:limitsPage.not')}</h2>
      <ul className={styles.lines}>
        {notLines.map((line) => (
          <li key={line}>{t(`help:limitsPage.notLines.${line}`)}</li>
        ))}
      </ul>
      <h2>{t('help:limitsPage.proves')}</h2>
      <p>{t('help:limitsPage.provesYes')}</p>
      <p>{t('help:limitsPage.provesNo')}</p>
      <h2>{t('help:limitsPage.rests')}</h2>
      <p>{t('help:limitsPage.restsText')}</p>
      {sources.error === undefined ? null : <StationError error={sources.error} />}
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{t('help:limitsPage.source')}</th>
            <th scope="col">{t('help:limitsPage.mark')}</th>
            <th scope="col">{t('help:limitsPage.what')}</th>
          </tr>
        </thead>
        <tbody>
          {(sources.data?.sources ?? []).map(({ mark, citation, of }) => (
            <tr key={`${mark} ${citation}`}>
              <td>{citation}</td>
              <td>{t(`program:mark.${mark}`)}</td>
              <td>
                {of.slice(0, named).map(inLanguage).join(' · ')}
                {of.length > named ? ` ${t('help:limitsPage.andMore', { count: of.length - named })}` : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};

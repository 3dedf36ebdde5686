/** How far inspectors agree: kappa of the verdict and of each check, with its interval and the pairs that it rests on. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { AgreementTable } from './agreement-table.tsx';
import styles from './insight.module.css';

export const AgreementSection = () => {
  const { t, inLanguage } = useText();
  const { data } = useStationQuery('insight.agreement', {});
  if (data === undefined) return null;
  const { verdict, devices, both, checks, checksWithFew, isFew, fewPairs } = data;
  return (
    <section className={styles.section} aria-labelledby="agreement">
      <h2 id="agreement">{t('insight:agreement.title')}</h2>
      <p>{t('insight:agreement.text')}</p>
      <p className={styles.rests}>{t('insight:agreement.rests', { pairs: verdict.pairs, devices })}</p>
      {isFew ? (
        <p className={styles.few}>{t('insight:agreement.few', { count: verdict.pairs, least: fewPairs })}</p>
      ) : null}
      <div>
        <Button icon="calendar" onPress={() => navigate({ screen: 'reinspections' })}>
          {t('insight:agreement.toPairs')}
        </Button>
      </div>
      {verdict.pairs === 0 ? null : (
        <>
          <AgreementTable
            labelledBy="agreement"
            rows={[
              { key: 'verdict', name: t('insight:agreement.verdict'), agreement: verdict },
              ...checks.map(({ check, title, agreement }) => ({
                key: check,
                name: inLanguage(title),
                agreement,
              })),
            ]}
          />
          {checksWithFew === 0 ? null : (
            <p className={styles.rests}>
              {t('insight:agreement.checksWithFew', { count: checksWithFew, least: fewPairs })}
            </p>
          )}
          <h3 id="agreement-both">{t('insight:agreement.both.title')}</h3>
          <table className={styles.table} aria-labelledby="agreement-both">
            <thead>
              <tr>
                <td />
                <th scope="col" className={styles.number}>
                  {t('insight:agreement.both.secondPasses')}
                </th>
                <th scope="col" className={styles.number}>
                  {t('insight:agreement.both.secondRemoves')}
                </th>
              </tr>
            </thead>
            <tbody>
              <tr>
                <th scope="row">{t('insight:agreement.both.firstPasses')}</th>
                <td className={styles.number}>{both.pass}</td>
                <td className={styles.number}>{both['differ, second removes']}</td>
              </tr>
              <tr>
                <th scope="row">{t('insight:agreement.both.firstRemoves')}</th>
                <td className={styles.number}>{both['differ, first removes']}</td>
                <td className={styles.number}>{both.remove}</td>
              </tr>
            </tbody>
          </table>
        </>
      )}
    </section>
  );
};

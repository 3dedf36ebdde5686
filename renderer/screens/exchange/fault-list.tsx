/** Everything that is wrong with the list, by row and column. */
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './exchange.module.css';
import type { ImportPreview } from './import-calls.ts';
import { useMore } from './use-more.ts';

export const FaultList = ({ preview }: { readonly preview: ImportPreview }) => {
  const { t } = useText();
  const { faults, faultCount } = preview;
  const more = useMore(faults.length, 100);
  if (faultCount === 0) return null;
  return (
    <section className={styles.part} aria-labelledby="faults">
      <h3 id="faults" className={styles.sign}>
        <Icon name="warning" />
        {t('exchange:faultsTitle', { count: faultCount })}
      </h3>
      <p>{t('exchange:faultsText')}</p>
      <table className={styles.table} aria-labelledby="faults">
        <thead>
          <tr>
            <th scope="col">{t('exchange:faultRow')}</th>
            <th scope="col">{t('exchange:faultColumn')}</th>
            <th scope="col">{t('exchange:faultWhat')}</th>
          </tr>
        </thead>
        <tbody>
          {faults.slice(0, more.shown).map(({ row, heading, column, code, sentence }) => (
            <tr key={`${row} ${column} ${code} ${sentence}`}>
              <td>{row ?? t('exchange:wholeList')}</td>
              <td>{heading ?? ''}</td>
              <td>{sentence}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {more.isMore ? <Button onPress={more.show}>{t('exchange:showMore')}</Button> : null}
      {faultCount > faults.length ? (
        <p>{t('exchange:moreFaults', { count: faultCount - faults.length })}</p>
      ) : null}
    </section>
  );
};

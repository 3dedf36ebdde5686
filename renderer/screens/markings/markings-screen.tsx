/** What to ask of each manufacturer: the devices out of service for their marking, and what each of them needs. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { type MarkingElement, markingElements } from '../../../src/domain/marking.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf } from '../../navigation/route.ts';
import { useStationQuery } from '../../station/hooks.ts';
import { printPage } from '../../station/shell-bridge.ts';
import styles from './markings.module.css';

const columns = ['model', 'serial', 'made', 'benchId', 'elements'] as const;

export const MarkingsScreen = () => {
  const { t } = useText();
  const { data, error } = useStationQuery('marking-request.list', {});
  if (data === undefined)
    return error === undefined ? <p>{t('screens:app.loading')}</p> : <StationError error={error} />;
  const needed = (elements: readonly MarkingElement[]): string =>
    elements.length === markingElements.length
      ? t('screens:markings.whole')
      : elements.map((element) => t(`screens:marking.element.${element}`)).join(', ');
  const known = (text: string): string => (text === '' ? t('screens:markings.unknown') : text);
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('screens:markings.title')}</h1>
        <span className={styles.onScreen}>
          <Button onPress={() => void printPage()} isDisabled={data.requests.length === 0}>
            {t('screens:markings.print')}
          </Button>
        </span>
      </div>
      <p>{t('screens:markings.hint')}</p>
      {data.requests.length === 0 ? <p>{t('screens:markings.none')}</p> : null}
      {data.requests.map(({ manufacturer, devices }) => (
        <section key={manufacturer} className={styles.request}>
          <h2 id={`to-${manufacturer}`}>
            {t('screens:markings.for', { manufacturer, count: devices.length })}
          </h2>
          <table className={styles.table} aria-labelledby={`to-${manufacturer}`}>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column} scope="col">
                    {t(`screens:markings.${column}`)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {devices.map(({ benchId, model, serial, presumed, dateOfManufacture, elements }) => (
                <tr key={benchId}>
                  <td>{model}</td>
                  <td>
                    {known(serial)}
                    {presumed ? ` (${t('screens:markings.presumed')})` : ''}
                  </td>
                  <td>{known(dateOfManufacture)}</td>
                  <td>
                    <a href={hashOf({ screen: 'device', benchId })}>{formatBenchId(benchId)}</a>
                  </td>
                  <td>{needed(elements)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
    </div>
  );
};

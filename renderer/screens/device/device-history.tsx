/** The inspections of a device, newest first; apart from them, those that a list declared. */
import type { DeviceCard } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import { hashOf, type Route } from '../../navigation/route.ts';
import styles from './device.module.css';

type Line = DeviceCard['inspections'][number];

export interface DeviceHistoryProps {
  readonly inspections: readonly Line[];
  readonly declared: DeviceCard['declaredInspections'];
}

export const DeviceHistory = ({ inspections, declared }: DeviceHistoryProps) => {
  const { t, dateText } = useText();
  const lineText = (line: Line): string => {
    const { inspection } = line;
    if (line.signedOn !== undefined && line.verdict !== undefined) {
      return t('screens:device.inspectionSigned', {
        inspection,
        verdict: t(`screens:verdict.${line.verdict}`),
        date: dateText(line.signedOn),
        name: line.signedBy ?? '',
      });
    }
    const values = { inspection, date: dateText(line.startedOn), name: line.startedBy };
    return t(
      line.state === 'open' ? 'screens:device.inspectionOpen' : 'screens:device.inspectionAbandoned',
      values,
    );
  };
  return (
    <section className={styles.detail} aria-labelledby="inspections">
      <h2 id="inspections">{t('screens:device.inspections')}</h2>
      {inspections.length === 0 ? <p>{t('screens:device.noInspections')}</p> : null}
      <ul className={styles.lines}>
        {inspections.map((line) => (
          <li key={line.inspection}>
            <a className={styles.line} href={hashOf(placeOf(line))}>
              {lineText(line)}
            </a>
            {line.reinspection === undefined ? null : (
              <span className={styles.soft}> {t('schedule:blind.note')}</span>
            )}
          </li>
        ))}
      </ul>
      {declared.length === 0 ? null : (
        <>
          <h3>{t('exchange:declared')}</h3>
          <ul className={styles.lines}>
            {declared.map(({ inspectedOn, inspectedBy, result, note, source }) => (
              <li key={`${source.sha256} ${source.row}`}>
                {t('exchange:declaredLine', {
                  date: dateText(inspectedOn),
                  name: inspectedBy === '' ? t('exchange:declaredNobody') : inspectedBy,
                  result: t(`exchange:result.${result}`),
                })}
                {note === undefined ? null : <span> “{note}”</span>}
                <br />
                <span className={styles.soft}>
                  {t('exchange:declaredSource', { fileName: source.fileName, row: source.row })}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
};

/** One that is open is gone on with; the others are looked at. */
const placeOf = ({ state, inspection }: Line): Route =>
  state === 'open' ? { screen: 'bench', inspection } : { screen: 'record', inspection };

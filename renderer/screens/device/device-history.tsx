/** The inspections of a device, newest first. */
import type { DeviceCard } from '../../../src/station/views.ts';
import { useText } from '../../i18n/text.ts';
import styles from './device.module.css';

type Line = DeviceCard['inspections'][number];

export const DeviceHistory = ({ inspections }: { readonly inspections: readonly Line[] }) => {
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
          <li key={line.inspection}>{lineText(line)}</li>
        ))}
      </ul>
    </section>
  );
};

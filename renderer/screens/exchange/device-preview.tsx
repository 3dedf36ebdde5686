/** The model sheets and the devices as they would be recorded. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { Button } from '../../components/button.tsx';
import { ModelSheetLine } from '../../components/model-sheet-line.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './exchange.module.css';
import type { ImportPreview } from './import-calls.ts';
import { useMore } from './use-more.ts';

const headings = ['row', 'benchId', 'model', 'serial', 'made', 'declared'] as const;

export const DevicePreview = ({ preview }: { readonly preview: ImportPreview }) => {
  const { t, dateText, lengthText } = useText();
  const { devices, counts, newModelSheets } = preview;
  const more = useMore(devices.length, 20);
  if (devices.length === 0) return null;
  const declared = ({ inspectedOn, result, isRemoved }: ImportPreview['devices'][number]): string =>
    [
      inspectedOn === undefined ? undefined : dateText(inspectedOn),
      result === undefined ? undefined : t(`exchange:result.${result}`),
      isRemoved ? t('exchange:outOfService') : undefined,
    ]
      .filter((part) => part !== undefined)
      .join(', ');
  return (
    <>
      {newModelSheets.length === 0 ? null : (
        <section className={styles.part} aria-labelledby="new-sheets">
          <h3 id="new-sheets">{t('exchange:newSheetsTitle')}</h3>
          <ul className={styles.list}>
            {newModelSheets.map((sheet) => (
              <li key={sheet.modelSheetId}>
                <ModelSheetLine sheet={sheet} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className={styles.part} aria-labelledby="new-devices">
        <h3 id="new-devices">{t('exchange:devicesTitle')}</h3>
        {counts.devices > devices.length ? (
          <p>{t('exchange:devicesFirst', { count: devices.length })}</p>
        ) : null}
        <table className={styles.table} aria-labelledby="new-devices">
          <thead>
            <tr>
              {headings.map((heading) => (
                <th key={heading} scope="col">
                  {t(`exchange:column.${heading}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {devices.slice(0, more.shown).map((device) => (
              <tr key={device.row}>
                <td>{device.row}</td>
                <td>
                  {device.benchId === undefined ? t('exchange:newBenchId') : formatBenchId(device.benchId)}
                </td>
                <td>{`${device.manufacturer} ${device.model}, ${lengthText(device.ratedLengthM)}`}</td>
                <td>{device.serial}</td>
                <td>{device.dateOfManufacture}</td>
                <td>{declared(device)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {more.isMore ? <Button onPress={more.show}>{t('exchange:showMore')}</Button> : null}
      </section>
    </>
  );
};

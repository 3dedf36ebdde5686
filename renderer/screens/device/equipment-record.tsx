/** What the equipment record of EN 365 asks for and no marking says: purchase, first use, how the manufacturer is reached. */
import { useState } from 'react';
import type { DeviceCard } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { ReportDialog } from '../records/report-dialog.tsx';
import styles from './device.module.css';
import { FactsDialog } from './facts-dialog.tsx';

/** Characters of a date that says the day. */
const wholeDate = 10;

export const EquipmentRecord = ({ device }: { readonly device: DeviceCard }) => {
  const { t, dateText } = useText();
  const [isEditing, setEditing] = useState(false);
  const [isReporting, setReporting] = useState(false);
  const dateOf = (date: string | undefined): string =>
    date === undefined ? t('records:facts.notKnown') : date.length < wholeDate ? date : dateText(date);
  const facts: readonly (readonly [string, string])[] = [
    [t('records:facts.purchased'), dateOf(device.purchasedOn)],
    [t('records:facts.firstUsed'), dateOf(device.firstUsedOn)],
    [t('records:facts.contact'), device.modelSheet.manufacturerContact ?? t('records:facts.notKnown')],
  ];
  return (
    <section className={styles.detail} aria-labelledby="equipment-record">
      <h2 id="equipment-record">{t('records:facts.title')}</h2>
      <dl className={styles.pairs}>
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className={styles.linesOfText}>{value}</dd>
          </div>
        ))}
      </dl>
      <div className={styles.buttons}>
        <Button onPress={() => setEditing(true)}>{t('records:facts.edit')}</Button>
        <Button icon="register" onPress={() => setReporting(true)}>
          {t('records:report.device')}
        </Button>
      </div>
      {isReporting ? (
        <ReportDialog
          title={t('records:report.device')}
          of={{ kind: 'device', benchId: device.benchId }}
          onClose={() => setReporting(false)}
        />
      ) : null}
      {isEditing ? <FactsDialog device={device} onClose={() => setEditing(false)} /> : null}
    </section>
  );
};

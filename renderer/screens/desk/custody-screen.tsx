/** Who has what: the devices that are out, those that are late, and those that will not come back. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { OutDevice } from '../../../src/station/custody-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { Icon } from '../../components/icon.tsx';
import { StationError } from '../../components/station-error.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { hashOf, navigate } from '../../navigation/route.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import styles from './desk.module.css';

export const CustodyScreen = () => {
  const { t } = useText();
  const [shown, setShown] = useState<'all' | 'late'>('all');
  const [lost, setLost] = useState<OutDevice>();
  const list = useStationQuery(
    'custody.list',
    { overdue: shown === 'late', limit: 500 },
    { keepPrevious: true },
  );
  if (list.data === undefined && list.error !== undefined) return <StationError error={list.error} />;
  const { out, total } = list.data ?? { out: [], total: 0 };
  return (
    <div className={styles.main}>
      <div className={styles.row}>
        <h1>{t('desk:custodyTitle')}</h1>
        <div className={styles.room} />
        <Button icon="person" onPress={() => navigate({ screen: 'desk' })}>
          {t('desk:desk')}
        </Button>
      </div>
      <Choice<'all' | 'late'>
        label={t('desk:custodyTitle')}
        isLabelHidden
        isCompact
        value={shown}
        options={[
          { value: 'all', label: t('desk:all') },
          { value: 'late', label: t('desk:onlyLate') },
        ]}
        onChange={setShown}
      />
      {out.length === 0 ? (
        <p className={styles.large}>{t('desk:custodyNone')}</p>
      ) : (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">{t('desk:device')}</th>
              <th scope="col">{t('desk:user')}</th>
              <th scope="col">{t('desk:since')}</th>
              <th scope="col">{t('desk:expected')}</th>
              <th scope="col">{t('desk:due')}</th>
              <th scope="col">{t('desk:writeOff')}</th>
            </tr>
          </thead>
          <tbody>
            {out.map((each) => (
              <OutRow key={each.device.benchId} out={each} onLost={() => setLost(each)} />
            ))}
          </tbody>
        </table>
      )}
      {total > out.length && <p>{t('desk:custodyMore', { shown: out.length, total })}</p>}
      {lost !== undefined && <LostDialog out={lost} onClose={() => setLost(undefined)} />}
    </div>
  );
};

const OutRow = ({ out: { device, user, overdue }, onLost }: { out: OutDevice; onLost(): void }) => {
  const { t, dateText } = useText();
  const { custody, dueOn } = device;
  return (
    <tr>
      <td>
        <a href={hashOf({ screen: 'device', benchId: device.benchId })}>{formatBenchId(device.benchId)}</a>{' '}
        {device.manufacturer} {device.model}
      </td>
      <td>
        <a href={hashOf({ screen: 'person', personId: custody?.userId ?? '' })}>{user}</a>
      </td>
      <td>{custody === undefined ? '' : dateText(custody.since.on)}</td>
      <td>
        {custody?.expectedOn === undefined ? '' : dateText(custody.expectedOn)}
        {overdue && (
          <strong className={styles.row}>
            <Icon name="late" />
            {t('desk:lateMark')}
          </strong>
        )}
      </td>
      <td>{dueOn === undefined ? '' : dateText(dueOn)}</td>
      <td>
        {custody?.lostOn === undefined ? (
          <Button onPress={onLost}>{t('desk:writeOff')}</Button>
        ) : (
          t('desk:lost', { date: dateText(custody.lostOn) })
        )}
      </td>
    </tr>
  );
};

const LostDialog = ({ out, onClose }: { out: OutDevice; onClose(): void }) => {
  const { t } = useText();
  const [because, setBecause] = useState('');
  const writeOff = useStationCommand('custody.write-off');
  const { benchId } = out.device;
  const act = async (): Promise<void> => {
    const done = await writeOff.run({ benchId, because: because.trim() });
    if (done.ok) onClose();
  };
  return (
    <Dialog title={t('desk:writeOffTitle', { device: formatBenchId(benchId) })} onClose={onClose}>
      <p>{t('desk:writeOffHint')}</p>
      <TextInput label={t('desk:writeOffWhy')} value={because} onChange={setBecause} autoFocus />
      <AlertLine sentence={writeOff.error?.sentence} />
      <div className={styles.row}>
        <Button onPress={onClose}>{t('desk:back')}</Button>
        <Button
          look="remove"
          icon="stop"
          isDisabled={because.trim() === ''}
          isRunning={writeOff.isRunning}
          onPress={() => void act()}
        >
          {t('desk:writeOffDo')}
        </Button>
      </div>
    </Dialog>
  );
};

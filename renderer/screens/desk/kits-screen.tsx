/** The kits: devices that go out together by one label, each named, changed and taken apart here. */
import { useState } from 'react';
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand, useStationQuery } from '../../station/hooks.ts';
import styles from './desk.module.css';
import { deviceWords } from './device-words.ts';
import { KitForm } from './kit-form.tsx';

export type KitView = OutputOf<'kit.list'>['kits'][number];

export const KitsScreen = () => {
  const { t } = useText();
  const list = useStationQuery('kit.list', {});
  const [changed, setChanged] = useState<KitView | 'new'>();
  useScanHandler(({ meaning }) => {
    if (changed !== undefined) return false;
    if (meaning.meaning === 'command' && meaning.command === 'confirm') {
      setChanged('new');
      return true;
    }
    const scanned =
      meaning.meaning === 'place' ? list.data?.kits.find(({ code }) => code === meaning.code) : undefined;
    if (scanned === undefined) return false;
    setChanged(scanned);
    return true;
  });
  if (list.data === undefined && list.error !== undefined) return <StationError error={list.error} />;
  if (changed !== undefined)
    return <KitForm kit={changed === 'new' ? undefined : changed} onClose={() => setChanged(undefined)} />;
  const kits = list.data?.kits ?? [];
  return (
    <div className={styles.main}>
      <div className={styles.row}>
        <h1>{t('desk:kits')}</h1>
        <div className={styles.room} />
        <Button icon="person" onPress={() => navigate({ screen: 'desk' })}>
          {t('desk:desk')}
        </Button>
        <Button look="primary" icon="plus" onPress={() => setChanged('new')}>
          {t('desk:kitNew')}
        </Button>
      </div>
      <p>{t(kits.length === 0 ? 'desk:kitsNone' : 'desk:kitsHint')}</p>
      <ul className={styles.numbers}>
        {kits.map((kit) => (
          <KitBox key={kit.kitId} kit={kit} onChange={() => setChanged(kit)} />
        ))}
      </ul>
    </div>
  );
};

const KitBox = ({ kit, onChange }: { readonly kit: KitView; onChange(): void }) => {
  const { t } = useText();
  const remove = useStationCommand('kit.remove');
  return (
    <li className={styles.kit}>
      <h2>{kit.name}</h2>
      <p>{t('desk:kitLabel', { code: kit.code })}</p>
      <ul className={styles.points}>
        {kit.devices.map((device) => (
          <li key={device.benchId}>
            {deviceWords(device)}
            {device.custody === undefined ? '' : ` (${t('desk:kitOut')})`}
          </li>
        ))}
      </ul>
      <AlertLine sentence={remove.error?.sentence} />
      <div className={styles.row}>
        <Button onPress={onChange}>{t('desk:kitChange')}</Button>
        <Button
          look="quiet"
          isRunning={remove.isRunning}
          onPress={() => void remove.run({ kitId: kit.kitId })}
        >
          {t('desk:kitRemove')}
        </Button>
      </div>
    </li>
  );
};

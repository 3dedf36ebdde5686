/** One kit: its name, the code on its label, and the devices that belong to it, scanned one after another. */
import { useState } from 'react';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { isPast, useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './desk.module.css';
import { deviceWords } from './device-words.ts';
import type { KitView } from './kits-screen.tsx';

export interface KitFormProps {
  /** Absent for a new one. */
  readonly kit: KitView | undefined;
  onClose(): void;
}

export const KitForm = ({ kit, onClose }: KitFormProps) => {
  const { t } = useText();
  const [name, setName] = useState(kit?.name ?? '');
  const [code, setCode] = useState(kit?.code ?? '');
  const [devices, setDevices] = useState<readonly DeviceSummary[]>(kit?.devices ?? []);
  const save = useStationCommand('kit.save');
  const label = code.trim().toUpperCase();
  const isWhole = label !== '' && devices.length > 0;
  const finish = async (): Promise<void> => {
    if (!isWhole) return;
    const done = await save.run({
      ...(kit === undefined ? {} : { kitId: kit.kitId }),
      name: name.trim() === '' ? t('desk:kitNamed', { code: label }) : name.trim(),
      code: label,
      benchIds: devices.map(({ benchId }) => benchId),
    });
    if (done.ok) onClose();
  };
  useScanHandler(({ meaning }) => {
    switch (meaning.meaning) {
      case 'device': {
        if (isPast(meaning.tag)) return false;
        const { device } = meaning;
        setDevices((before) => [...before.filter(({ benchId }) => benchId !== device.benchId), device]);
        return true;
      }
      case 'place':
        setCode(meaning.code);
        return true;
      case 'command':
        if (meaning.command === 'cancel' || meaning.command === 'back') onClose();
        else if (meaning.command === 'confirm') void finish();
        else return false;
        return true;
      default:
        return false;
    }
  });
  return (
    <div className={styles.main}>
      <h1>{kit === undefined ? t('desk:kitNew') : kit.name}</h1>
      <p className={styles.large}>{t('desk:kitScan')}</p>
      <div className={styles.fields}>
        <TextInput label={t('desk:kitCode')} hint={t('desk:kitCodeHint')} value={code} onChange={setCode} />
        <TextInput label={t('desk:kitName')} hint={t('desk:kitNameHint')} value={name} onChange={setName} />
      </div>
      <AlertLine sentence={save.error?.sentence} />
      <ol className={styles.ready} aria-live="polite" aria-label={t('desk:kitDevices')}>
        {devices.map((device) => (
          <li key={device.benchId} className={styles.device}>
            <span className={styles.large}>{deviceWords(device)}</span>
            <span />
            <Button
              look="quiet"
              onPress={() =>
                setDevices((before) => before.filter(({ benchId }) => benchId !== device.benchId))
              }
            >
              {t('desk:kitTakeOff')}
            </Button>
          </li>
        ))}
      </ol>
      <div className={styles.row}>
        <Button onPress={onClose}>{t('desk:back')}</Button>
        <Button
          look="primary"
          size="large"
          icon="check"
          isDisabled={!isWhole}
          isRunning={save.isRunning}
          onPress={() => void finish()}
        >
          {t('desk:kitSave')}
        </Button>
      </div>
    </div>
  );
};

/** A device passes from one user to another: the other's badge, or the attendant's word why it is not here. */
import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './desk.module.css';
import type { DeskUser, Handover } from './desk-state.ts';
import { deviceWords } from './device-words.ts';
import { PreUseList } from './pre-use-list.tsx';
import type { Desk } from './use-desk.ts';

export interface HandoverViewProps {
  readonly desk: Desk;
  readonly handover: Handover;
  readonly user: DeskUser;
}

export const HandoverView = ({ desk, handover: { device, from }, user }: HandoverViewProps) => {
  const { t } = useText();
  const [because, setBecause] = useState('');
  const to = user.name;
  return (
    <div className={styles.columns}>
      <div className={styles.main}>
        <h1 className={styles.display}>
          {t('desk:handoverTitle', { device: deviceWords(device), from, to })}
        </h1>
        <p className={styles.large}>{t('desk:handoverScan', { from, to })}</p>
        <TextInput label={t('desk:handoverBecause', { from })} value={because} onChange={setBecause} />
        <div className={styles.row}>
          <Button onPress={desk.back}>{t('desk:back')}</Button>
          <Button
            look="primary"
            isDisabled={because.trim() === ''}
            isRunning={desk.isBusy}
            onPress={() => desk.handOver(because.trim())}
          >
            {t('desk:handoverDo')}
          </Button>
        </div>
      </div>
      <PreUseList preUse={desk.preUse} />
    </div>
  );
};

/** The signature under a notice: with it every device that is meant is held. */
import { type FormEvent, useState } from 'react';
import type { InputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { PinInput } from '../people/pin-input.tsx';
import styles from './notices.module.css';

export interface RecordNoticeProps {
  readonly text: InputOf<'notice.record'>['text'];
  /** How many devices it means. */
  readonly meant: number;
  onRecorded(notice: number): void;
}

export const RecordNotice = ({ text, meant, onRecorded }: RecordNoticeProps) => {
  const { t } = useText();
  const { run, isRunning, error } = useStationCommand('notice.record');
  const [pin, setPin] = useState('');
  const faults = faultsOf(error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const result = await run({ text, pin });
    if (result.ok) onRecorded(result.output.notice);
  };
  return (
    <form className={styles.signature} onSubmit={(event) => void submit(event)}>
      <p className={styles.counts}>{t('notices:recordText', { count: meant })}</p>
      <div className={styles.sign}>
        <PinInput label={t('notices:pin')} value={pin} onChange={setPin} error={faults.at('pin')} />
        <Button type="submit" look="primary" size="large" isRunning={isRunning}>
          {t('notices:record')}
        </Button>
      </div>
      <AlertLine sentence={faults.rest()} />
    </form>
  );
};

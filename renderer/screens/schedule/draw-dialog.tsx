/** How many devices are drawn at random for a blind second inspection. */
import { type FormEvent, useRef, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './schedule.module.css';
import { useFieldsByScan } from './use-fields-by-scan.ts';

export interface DrawDialogProps {
  /** How many can be drawn. */
  readonly drawable: number;
  onClose(): void;
}

const most = 50;

export const DrawDialog = ({ drawable, onClose }: DrawDialogProps) => {
  const { t } = useText();
  const { run, isRunning, error } = useStationCommand('reinspection.draw');
  const [count, setCount] = useState('1');
  const [isTried, setTried] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  useFieldsByScan(form, [{ value: count, change: setCount }]);
  const wanted = /^\d{1,2}$/.test(count.trim()) ? Number(count) : 0;
  const isFaulty = wanted < 1 || wanted > most;
  const draw = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (isFaulty) return;
    const answer = await run({ count: wanted });
    if (answer.ok) onClose();
  };
  return (
    <Dialog title={t('schedule:blind.draw')} onClose={onClose}>
      <form ref={form} className={styles.form} onSubmit={(event) => void draw(event)}>
        <p>{t('schedule:blind.drawText')}</p>
        <TextInput
          label={t('schedule:blind.count')}
          hint={t('schedule:blind.drawable', { count: drawable })}
          inputMode="numeric"
          value={count}
          onChange={setCount}
          error={isTried && isFaulty ? t('schedule:blind.countFault') : undefined}
        />
        <AlertLine sentence={error?.sentence} />
        <div className={styles.buttons}>
          <Button onPress={onClose}>{t('screens:form.cancel')}</Button>
          <Button type="submit" look="primary" isRunning={isRunning}>
            {t('schedule:blind.draw')}
          </Button>
        </div>
      </form>
    </Dialog>
  );
};

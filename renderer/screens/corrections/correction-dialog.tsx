/** One correction: what the record says, what it should say, why, and the PIN of whoever says so. */
import { type FormEvent, useState } from 'react';
import type { WantedCorrection } from '../../../src/domain/amendment.ts';
import type { Answer } from '../../../src/domain/answer.ts';
import type { Check } from '../../../src/domain/procedure.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Dialog } from '../../components/dialog.tsx';
import actions from '../../components/dialog-actions.module.css';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { AnswerInput } from './answer-input.tsx';
import styles from './corrections.module.css';
import { ValueInput } from './value-input.tsx';

interface Task {
  readonly amends: number;
  /** What is corrected, and what the record says of it, in words. */
  readonly what: string;
  readonly said: string;
  readonly needsReading: boolean;
}

export interface ValueTask extends Task {
  readonly kind: Exclude<WantedCorrection['field'], 'answer'>;
  readonly value: string;
}

export interface AnswerTask extends Task {
  readonly kind: 'answer';
  readonly check: Check;
  readonly answer: Answer;
}

export type CorrectionTask = ValueTask | AnswerTask;

/** A fault of what is typed stands beside it; one of what is chosen at the end of the form. */
const isTyped = ({ kind }: CorrectionTask): boolean =>
  kind === 'serial' || kind === 'dateOfManufacture' || kind === 'name';

export interface CorrectionDialogProps {
  readonly task: CorrectionTask;
  readonly title?: string;
  readonly hint?: string;
  onClose(): void;
}

export const CorrectionDialog = ({ task, title, hint, onClose }: CorrectionDialogProps) => {
  const { t } = useText();
  const [wanted, setWanted] = useState<WantedCorrection>();
  const [because, setBecause] = useState('');
  const [pin, setPin] = useState('');
  const [isRead, setRead] = useState(false);
  const [wasTried, setTried] = useState(false);
  const { run, isRunning, error } = useStationCommand('record.amend');
  const refused = faultsOf(error);
  const needed = (isThere: boolean): string | undefined =>
    wasTried && !isThere ? t('screens:form.needed') : undefined;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (wanted === undefined || because.trim() === '' || pin === '') return;
    const { amends, needsReading } = task;
    const markingReadNow = needsReading && isRead;
    if ((await run({ amends, correction: wanted, because, markingReadNow, pin })).ok) onClose();
  };
  return (
    <Dialog title={title ?? t('corrections:correctWhat', { what: task.what })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        {hint === undefined ? null : <p>{hint}</p>}
        <p>{t('corrections:says', { value: task.said })}</p>
        {task.kind === 'answer' ? (
          <AnswerInput task={task} onChange={setWanted} />
        ) : (
          <ValueInput
            task={task}
            onChange={setWanted}
            error={wasTried && wanted === undefined ? t('corrections:choose') : refused.at('correction.now')}
          />
        )}
        {task.needsReading ? (
          <div>
            <p>{t('corrections:readNeeded')}</p>
            <CheckBox isSelected={isRead} onChange={setRead}>
              {t('corrections:readNow')}
            </CheckBox>
          </div>
        ) : null}
        <TextInput
          label={t('corrections:because')}
          value={because}
          onChange={setBecause}
          error={needed(because.trim() !== '') ?? refused.at('because')}
        />
        <TextInput
          label={t('corrections:pin')}
          type="password"
          inputMode="numeric"
          value={pin}
          onChange={setPin}
          error={needed(pin !== '') ?? refused.at('pin')}
        />
        <AlertLine
          sentence={
            isTyped(task) || wanted !== undefined || !wasTried ? refused.rest() : t('corrections:choose')
          }
        />
        <div className={actions.actions}>
          <Button onPress={onClose}>{t('screens:form.cancel')}</Button>
          <Button type="submit" look="primary" isRunning={isRunning}>
            {t('corrections:sign')}
          </Button>
        </div>
      </form>
    </Dialog>
  );
};

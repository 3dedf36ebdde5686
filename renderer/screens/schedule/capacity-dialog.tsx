/** What the bench can take in hand: hours of each weekday, minutes of an inspection, days on which it is closed. */
import { type FormEvent, useRef, useState } from 'react';
import { type BenchCapacity, weekdays } from '../../../src/domain/bench-capacity.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import {
  type CapacityDraft,
  type ClosureDraft,
  capacityOf,
  draftOfCapacity,
  nextClosureId,
} from './capacity-draft.ts';
import styles from './schedule.module.css';
import { useFieldsByScan } from './use-fields-by-scan.ts';

export interface CapacityDialogProps {
  readonly capacity: BenchCapacity;
  onClose(): void;
}

export const CapacityDialog = ({ capacity, onClose }: CapacityDialogProps) => {
  const { t } = useText();
  const { run, isRunning, error } = useStationCommand('bench.set-capacity');
  const [draft, setDraft] = useState<CapacityDraft>(() => draftOfCapacity(capacity));
  const [isTried, setTried] = useState(false);
  const { capacity: wanted, faults } = capacityOf(draft);
  const change = (changed: Partial<CapacityDraft>): void => setDraft({ ...draft, ...changed });
  const changeClosure = (at: number, changed: Partial<ClosureDraft>): void =>
    change({
      closures: draft.closures.map((closure, index) => (index === at ? { ...closure, ...changed } : closure)),
    });
  const form = useRef<HTMLFormElement>(null);
  useFieldsByScan(form, [
    ...weekdays.map((weekday) => ({
      value: draft.hours[weekday],
      change: (value: string) => change({ hours: { ...draft.hours, [weekday]: value } }),
    })),
    { value: draft.minutes, change: (minutes) => change({ minutes }) },
    { value: draft.daysEarly, change: (daysEarly) => change({ daysEarly }) },
  ]);
  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (wanted === undefined) return;
    const answer = await run({ capacity: wanted });
    if (answer.ok) onClose();
  };
  return (
    <Dialog title={t('schedule:actions.capacity')} isWide onClose={onClose}>
      <form ref={form} className={styles.form} onSubmit={(event) => void save(event)}>
        <p>{t('schedule:capacity.hint')}</p>
        <p>{t('schedule:capacity.byScan')}</p>
        <div className={styles.hours}>
          {weekdays.map((weekday) => (
            <TextInput
              key={weekday}
              label={t(`schedule:capacity.${weekday}`)}
              inputMode="decimal"
              value={draft.hours[weekday]}
              onChange={(value) => change({ hours: { ...draft.hours, [weekday]: value } })}
              error={isTried && faults.has(weekday) ? t('schedule:capacity.hoursFault') : undefined}
            />
          ))}
        </div>
        <div className={styles.numbers}>
          <TextInput
            label={t('schedule:capacity.minutes')}
            inputMode="numeric"
            value={draft.minutes}
            onChange={(minutes) => change({ minutes })}
            error={isTried && faults.has('minutes') ? t('schedule:capacity.minutesFault') : undefined}
          />
          <TextInput
            label={t('schedule:capacity.daysEarly')}
            hint={t('schedule:capacity.daysEarlyHint')}
            inputMode="numeric"
            value={draft.daysEarly}
            onChange={(daysEarly) => change({ daysEarly })}
            error={isTried && faults.has('daysEarly') ? t('schedule:capacity.daysEarlyFault') : undefined}
          />
        </div>
        <fieldset className={styles.closures}>
          <legend>{t('schedule:capacity.closures')}</legend>
          {draft.closures.map((closure, at) => (
            <div key={closure.id} className={styles.closure}>
              <DateInput
                label={t('schedule:capacity.from')}
                value={closure.from}
                onChange={(from) => changeClosure(at, { from })}
                error={isTried && faults.has(`closure ${at}`) ? t('schedule:capacity.dayFault') : undefined}
              />
              <DateInput
                label={t('schedule:capacity.until')}
                value={closure.until}
                onChange={(until) => changeClosure(at, { until })}
              />
              <TextInput
                label={t('schedule:capacity.name')}
                value={closure.name}
                onChange={(name) => changeClosure(at, { name })}
              />
              <Button
                icon="cross"
                label={t('schedule:capacity.removeClosure', { number: at + 1 })}
                onPress={() => change({ closures: draft.closures.filter((_, index) => index !== at) })}
              >
                {t('schedule:capacity.remove')}
              </Button>
            </div>
          ))}
          <Button
            icon="plus"
            onPress={() =>
              change({
                closures: [...draft.closures, { id: nextClosureId(draft), from: '', until: '', name: '' }],
              })
            }
          >
            {t('schedule:capacity.addClosure')}
          </Button>
        </fieldset>
        <AlertLine sentence={error?.sentence} />
        <DialogActions isRunning={isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

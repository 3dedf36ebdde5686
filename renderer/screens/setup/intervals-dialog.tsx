/** Enters how often a manufacturer wants its devices inspected and revalidated, and how long it lets them be used. */
import { type FormEvent, useState } from 'react';
import type { ModelSheet, ServiceLife } from '../../../src/domain/model-sheet.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { wholeNumber } from '../program/program-draft.ts';
import styles from './setup.module.css';

export interface IntervalsDialogProps {
  readonly sheet: ModelSheet;
  onClose(): void;
}

/** As the model sheet takes them. */
const most = { inspection: 60, revalidation: 240, life: 50 } as const;

export const IntervalsDialog = ({ sheet, onClose }: IntervalsDialogProps) => {
  const { t } = useText();
  const { modelSheetId, serviceLife } = sheet;
  const [draft, setDraft] = useState({
    inspection: textOf(sheet.manufacturerIntervalMonths),
    revalidation: textOf(sheet.manufacturerRevalidationMonths),
    life: textOf(serviceLife?.years),
  });
  const [from, setFrom] = useState<ServiceLife['from']>(serviceLife?.from ?? 'manufacture');
  const [wasTried, setTried] = useState(false);
  const setIntervals = useStationCommand('model-sheet.set-intervals');
  const fault = (name: keyof typeof draft): string | undefined =>
    draft[name].trim() === '' || wholeNumber(draft[name], 1, most[name]) !== undefined
      ? undefined
      : t('program:intervals.notWhole', { most: most[name] });
  const own = {
    inspection: fault('inspection'),
    revalidation: fault('revalidation'),
    life: fault('life'),
  };
  const orNone = (name: keyof typeof draft): number | null => wholeNumber(draft[name], 1, most[name]) ?? null;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own)) return;
    const years = orNone('life');
    const result = await setIntervals.run({
      modelSheetId,
      manufacturerIntervalMonths: orNone('inspection'),
      manufacturerRevalidationMonths: orNone('revalidation'),
      serviceLife: years === null ? null : { years, from },
    });
    if (result.ok) onClose();
  };
  const field = (name: keyof typeof draft) => ({
    value: draft[name],
    onChange: (text: string) => setDraft({ ...draft, [name]: text }),
    error: wasTried ? own[name] : undefined,
    inputMode: 'numeric' as const,
  });
  return (
    <Dialog
      title={t('program:intervals.dialog', { model: `${sheet.manufacturer} ${sheet.model}` })}
      onClose={onClose}
    >
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('program:intervals.hint')}</p>
        <TextInput label={t('program:intervals.inspection')} {...field('inspection')} autoFocus />
        <TextInput label={t('program:intervals.revalidation')} {...field('revalidation')} />
        <TextInput label={t('program:intervals.life')} {...field('life')} />
        <Choice<ServiceLife['from']>
          label={t('program:intervals.from')}
          value={from}
          options={[
            { value: 'manufacture', label: t('program:intervals.manufacture') },
            { value: 'first use', label: t('program:intervals.first use') },
          ]}
          onChange={setFrom}
          isCompact
        />
        <AlertLine sentence={setIntervals.error?.sentence} />
        <DialogActions isRunning={setIntervals.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

const textOf = (value: number | undefined): string => (value === undefined ? '' : String(value));

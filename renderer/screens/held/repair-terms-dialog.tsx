/** What a manufacturer says of repairing a model: whether, for how much, and how long it takes. */
import { type FormEvent, useState } from 'react';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { RecordedRepairTerms } from '../../../src/domain/held/return-batch.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { positiveNumber } from '../../components/typed-number.ts';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './held.module.css';

export interface RepairTermsDialogProps {
  readonly modelSheetId: string;
  readonly model: string;
  /** What it said before. */
  readonly known: Omit<RecordedRepairTerms, 'kind'> | undefined;
  onClose(): void;
}

const answers = ['yes', 'no', 'ask each time'] as const;

export const RepairTermsDialog = ({ modelSheetId, model, known, onClose }: RepairTermsDialogProps) => {
  const { t } = useText();
  const [repairable, setRepairable] = useState<(typeof answers)[number]>(
    known?.repairable ?? 'ask each time',
  );
  const [price, setPrice] = useState(known?.price === undefined ? '' : String(known.price));
  const [days, setDays] = useState(known?.leadTimeDays === undefined ? '' : String(known.leadTimeDays));
  const [quote, setQuote] = useState(known?.quote ?? '');
  const [validUntil, setValidUntil] = useState<string>(known?.validUntil ?? '');
  const record = useStationCommand('repair-terms.record');
  const numberFault = (text: string): string | undefined =>
    text.trim() === '' || positiveNumber(text) !== undefined ? undefined : t('held:returns.wholeNumber');
  const priceEach = positiveNumber(price);
  const leadTimeDays = positiveNumber(days);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (numberFault(price) !== undefined || numberFault(days) !== undefined) return;
    const result = await record.run({
      modelSheetId,
      repairable,
      ...(priceEach === undefined ? {} : { price: priceEach }),
      ...(leadTimeDays === undefined ? {} : { leadTimeDays: Math.ceil(leadTimeDays) }),
      ...(quote.trim() === '' ? {} : { quote }),
      ...(validUntil === '' ? {} : { validUntil: calendarDate(validUntil) }),
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('held:returns.record', { model })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <Choice<(typeof answers)[number]>
          label={t('held:returns.answer')}
          firstNumber={1}
          value={repairable}
          options={answers.map((value) => ({ value, label: t(`held:returns.repairable.${value}`) }))}
          onChange={setRepairable}
        />
        <TextInput
          label={t('held:returns.price')}
          value={price}
          onChange={setPrice}
          inputMode="decimal"
          error={numberFault(price)}
        />
        <TextInput
          label={t('held:returns.days')}
          value={days}
          onChange={setDays}
          inputMode="numeric"
          error={numberFault(days)}
        />
        <TextInput label={t('held:returns.quote')} value={quote} onChange={setQuote} />
        <DateInput label={t('held:returns.validUntil')} value={validUntil} onChange={setValidUntil} />
        <AlertLine sentence={record.error?.sentence} />
        <DialogActions isRunning={record.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

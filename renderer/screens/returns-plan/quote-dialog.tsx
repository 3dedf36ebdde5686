/** What the manufacturer asks for the repair of one device. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { type BenchId, calendarDate } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { wholeNumber } from '../program/program-draft.ts';
import { amountOf } from './amounts.ts';
import styles from './returns-plan.module.css';

export const QuoteDialog = ({ benchId, onClose }: { readonly benchId: BenchId; onClose(): void }) => {
  const { t } = useText();
  const [price, setPrice] = useState('');
  const [days, setDays] = useState('');
  const [number, setNumber] = useState('');
  const [validUntil, setValidUntil] = useState('');
  const [wasTried, setTried] = useState(false);
  const record = useStationCommand('device-quote.record');
  const amount = amountOf(price);
  const leadTimeDays = wholeNumber(days, 0, 1000);
  const areDaysWrong = days.trim() !== '' && leadTimeDays === undefined;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (amount === undefined || areDaysWrong) return;
    const result = await record.run({
      benchId,
      price: amount,
      ...(leadTimeDays === undefined ? {} : { leadTimeDays }),
      ...(number.trim() === '' ? {} : { quote: number.trim() }),
      ...(validUntil === '' ? {} : { validUntil: calendarDate(validUntil) }),
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('plan:quoteOf', { name: formatBenchId(benchId) })} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <TextInput
          label={t('plan:form.quotePrice')}
          hint={t('plan:form.quotePriceHint')}
          inputMode="decimal"
          value={price}
          onChange={setPrice}
          error={wasTried && amount === undefined ? t('plan:form.amountFault') : undefined}
          autoFocus
        />
        <TextInput
          label={t('held:returns.days')}
          inputMode="numeric"
          value={days}
          onChange={setDays}
          error={wasTried && areDaysWrong ? t('plan:form.daysFault') : undefined}
        />
        <TextInput label={t('held:returns.quote')} value={number} onChange={setNumber} />
        <DateInput label={t('held:returns.validUntil')} value={validUntil} onChange={setValidUntil} />
        <AlertLine sentence={record.error?.sentence} />
        <DialogActions isRunning={record.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

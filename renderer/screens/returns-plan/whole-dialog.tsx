/** How far ahead is planned, and in which currency every price of the station is. */
import { type FormEvent, useState } from 'react';
import { AlertLine } from '../../components/alert-line.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { wholeNumber } from '../program/program-draft.ts';
import type { Basis } from './plan-data.tsx';
import styles from './returns-plan.module.css';

export const WholeDialog = ({ basis, onClose }: { readonly basis: Basis; onClose(): void }) => {
  const { t } = useText();
  const [currency, setCurrency] = useState(basis.currency ?? '');
  const [months, setMonths] = useState(String(basis.months));
  const [wasTried, setTried] = useState(false);
  const record = useStationCommand('returns-basis.record');
  const wanted = wholeNumber(months, 1, 24);
  const own = {
    currency: currency.trim().length > 10 ? t('plan:form.currencyFault') : undefined,
    months: wanted === undefined ? t('plan:form.monthsFault') : undefined,
  };
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own) || wanted === undefined) return;
    const result = await record.run({
      change: {
        what: 'plan',
        months: wanted,
        ...(currency.trim() === '' ? {} : { currency: currency.trim() }),
      },
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('plan:whole')} onClose={onClose}>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <TextInput
          label={t('plan:form.currency')}
          hint={t('plan:form.currencyHint')}
          value={currency}
          onChange={setCurrency}
          error={wasTried ? own.currency : undefined}
          autoFocus
        />
        <TextInput
          label={t('plan:form.months')}
          inputMode="numeric"
          value={months}
          onChange={setMonths}
          error={wasTried ? own.months : undefined}
        />
        <AlertLine sentence={record.error?.sentence} />
        <DialogActions isRunning={record.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

/** Ships a return batch: the carrier, when the manufacturer is asked, and the declaration of condition and contamination. */
import { type FormEvent, useState } from 'react';
import { calendarDate } from '../../../src/domain/brand.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf, hasFaults } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './held.module.css';

const contaminations = ['none known', 'cleaned', 'contaminated'] as const;

export const ShipDialog = ({ number, onClose }: { readonly number: number; onClose(): void }) => {
  const { t } = useText();
  const [carrier, setCarrier] = useState('');
  const [consignment, setConsignment] = useState('');
  const [on, setOn] = useState('');
  const [condition, setCondition] = useState('');
  const [contamination, setContamination] = useState<(typeof contaminations)[number]>();
  const [wasTried, setTried] = useState(false);
  const ship = useStationCommand('return-batch.ship');
  const refused = faultsOf(ship.error);
  const needed = (text: string): string | undefined =>
    text.trim() === '' ? t('screens:form.needed') : undefined;
  const own = {
    carrier: needed(carrier),
    on: needed(on),
    condition: needed(condition),
    contamination: needed(contamination ?? ''),
  };
  const faults: Partial<typeof own> = wasTried ? own : {};
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setTried(true);
    if (hasFaults(own) || contamination === undefined) return;
    const result = await ship.run({
      batch: number,
      carrier,
      condition,
      contamination,
      followUpOn: calendarDate(on),
      ...(consignment.trim() === '' ? {} : { consignment }),
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('held:returns.shipTitle', { number })} onClose={onClose} isWide>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <TextInput
          label={t('held:returns.carrier')}
          value={carrier}
          onChange={setCarrier}
          error={faults.carrier}
          autoFocus
        />
        <TextInput label={t('held:returns.consignment')} value={consignment} onChange={setConsignment} />
        <DateInput
          label={t('held:returns.followUpOn')}
          value={on}
          onChange={setOn}
          error={faults.on ?? refused.at('followUpOn')}
        />
        <TextInput
          label={t('held:returns.condition')}
          value={condition}
          onChange={setCondition}
          error={faults.condition}
        />
        <Choice<(typeof contaminations)[number]>
          label={t('held:returns.contamination')}
          firstNumber={1}
          value={contamination}
          options={contaminations.map((value) => ({
            value,
            label: t(`held:returns.contaminationOf.${value}`),
          }))}
          onChange={setContamination}
        />
        <AlertLine sentence={faults.contamination ?? refused.rest()} />
        <DialogActions isRunning={ship.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

/** A device is back from its manufacturer: what became of it, and the certificate that came with it. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { type BenchId, calendarDate } from '../../../src/domain/brand.ts';
import { returnOutcomes } from '../../../src/domain/held/return-batch.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useStationCommand } from '../../station/hooks.ts';
import styles from './held.module.css';

export interface ReceiveDialogProps {
  readonly number: number;
  readonly benchId: BenchId;
  readonly manufacturer: string;
  onClose(): void;
}

export const ReceiveDialog = ({ number, benchId, manufacturer, onClose }: ReceiveDialogProps) => {
  const { t } = useText();
  const [outcome, setOutcome] = useState<(typeof returnOutcomes)[number]>();
  const [certificate, setCertificate] = useState('');
  const [on, setOn] = useState('');
  const [issuer, setIssuer] = useState(manufacturer);
  const receive = useStationCommand('return-batch.receive');
  const refused = faultsOf(receive.error);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (outcome === undefined) return;
    const isCertified = certificate.trim() !== '' && on !== '' && issuer.trim() !== '';
    const result = await receive.run({
      batch: number,
      benchId,
      outcome,
      ...(isCertified ? { certificate: { number: certificate, on: calendarDate(on), issuer } } : {}),
    });
    if (!result.ok) return;
    onClose();
    navigate({ screen: 'held', benchId });
  };
  return (
    <Dialog
      title={t('held:returns.receiveTitle', { benchId: formatBenchId(benchId) })}
      onClose={onClose}
      isWide
    >
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('held:returns.receiveHint')}</p>
        <Choice<(typeof returnOutcomes)[number]>
          label={t('held:returns.outcome')}
          firstNumber={1}
          isCompact
          value={outcome}
          options={returnOutcomes.map((value) => ({ value, label: t(`held:returns.outcomeOf.${value}`) }))}
          onChange={setOutcome}
        />
        <TextInput label={t('held:record.number')} value={certificate} onChange={setCertificate} />
        <DateInput
          label={t('held:record.on')}
          value={on}
          onChange={setOn}
          error={refused.at('certificate')}
        />
        <TextInput label={t('held:record.issuer')} value={issuer} onChange={setIssuer} />
        <AlertLine sentence={refused.rest()} />
        <DialogActions isRunning={receive.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

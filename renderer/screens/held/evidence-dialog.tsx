/** Records evidence for a held device: what it is, for which reasons, the certificate or the statement, and its documents. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { HeldView } from '../../../src/station/held-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { CheckBox } from '../../components/check-box.tsx';
import { Choice } from '../../components/choice.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { DocumentsInput, type GivenDocument } from './documents-input.tsx';
import styles from './held.module.css';
import { TextArea } from './text-area.tsx';

export interface EvidenceDialogProps {
  readonly held: HeldView;
  onClose(): void;
}

/** The digits that the kinds of evidence leave, for the reasons. */
const numberAfter = (kinds: number, index: number): number | undefined =>
  kinds + index < 9 ? kinds + index + 1 : undefined;

export const EvidenceDialog = ({ held, onClose }: EvidenceDialogProps) => {
  const { t, inLanguage } = useText();
  const { benchId, manufacturer } = held.device;
  const wanted = held.reasons.flatMap(({ missing }) => missing.flatMap(({ kinds }) => kinds));
  const allowed = held.reasons.flatMap((reason) => reason.allowed);
  const kinds = held.kinds.filter(
    ({ key, how }) => allowed.includes(key) && (how === 'certificate' || how === 'statement'),
  );
  const [chosen, setChosen] = useState(
    () => (wanted.find(({ key }) => kinds.some((each) => each.key === key)) ?? kinds[0])?.key ?? '',
  );
  const [leftOut, setLeftOut] = useState<ReadonlySet<number>>(new Set());
  const [number, setNumber] = useState('');
  const [on, setOn] = useState('');
  const [issuer, setIssuer] = useState(manufacturer);
  const [statement, setStatement] = useState('');
  const [documents, setDocuments] = useState<readonly GivenDocument[]>([]);
  const record = useStationCommand('held.record-evidence');
  const faults = faultsOf(record.error);
  const kind = kinds.find(({ key }) => key === chosen);
  const reasons = held.reasons.filter((reason) => reason.allowed.includes(chosen));
  const isCertificate = kind?.how === 'certificate';
  const certificate =
    isCertificate && number.trim() !== '' && on !== '' && issuer.trim() !== ''
      ? { certificate: { number, on: calendarDate(on), issuer } }
      : {};
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const result = await record.run({
      benchId,
      kind: chosen,
      covers: reasons.map((reason) => reason.number).filter((each) => !leftOut.has(each)),
      documents: [...documents],
      ...certificate,
      ...(isCertificate || statement.trim() === '' ? {} : { statement }),
    });
    if (result.ok) onClose();
  };
  return (
    <Dialog title={t('held:record.title', { benchId: formatBenchId(benchId) })} onClose={onClose} isWide>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <Choice<string>
          label={t('held:record.kind')}
          isCompact
          firstNumber={1}
          value={chosen}
          options={kinds.map(({ key, label }) => ({ value: key, label: inLanguage(label) }))}
          onChange={setChosen}
        />
        <fieldset className={styles.group}>
          <legend className={styles.label}>{t('held:record.covers')}</legend>
          {reasons.map((reason, index) => (
            <CheckBox
              key={reason.number}
              number={numberAfter(kinds.length, index)}
              isSelected={!leftOut.has(reason.number)}
              onChange={(isIn) => {
                const next = new Set(leftOut);
                if (isIn) next.delete(reason.number);
                else next.add(reason.number);
                setLeftOut(next);
              }}
            >
              {`${reason.number}. ${inLanguage(reason.sentence)}`}
            </CheckBox>
          ))}
          <AlertLine sentence={faults.at('covers')} />
        </fieldset>
        {isCertificate ? (
          <>
            <TextInput label={t('held:record.number')} value={number} onChange={setNumber} />
            <DateInput
              label={t('held:record.on')}
              value={on}
              onChange={setOn}
              error={faults.at('certificate', 'certificate.on')}
            />
            <TextInput label={t('held:record.issuer')} value={issuer} onChange={setIssuer} />
          </>
        ) : (
          <TextArea
            label={t('held:record.statement')}
            value={statement}
            onChange={setStatement}
            error={faults.at('statement')}
          />
        )}
        <DocumentsInput
          label={t('held:record.documents')}
          documents={documents}
          onChange={setDocuments}
          error={faults.at('documents')}
        />
        <AlertLine sentence={faults.rest()} />
        <DialogActions isRunning={record.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

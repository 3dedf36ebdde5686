/** Opens a fall case, or adds to it what is known besides: only what is entered changes. */
import { type FormEvent, useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import { type BenchId, calendarDate } from '../../../src/domain/brand.ts';
import type { FallFacts } from '../../../src/domain/held/fall-case.ts';
import type { HeldView } from '../../../src/station/held-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Choice } from '../../components/choice.tsx';
import { DateInput } from '../../components/date-input.tsx';
import { Dialog } from '../../components/dialog.tsx';
import { DialogActions } from '../../components/dialog-actions.tsx';
import { faultsOf } from '../../components/form-faults.ts';
import { TextInput } from '../../components/text-input.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { call } from '../../station/client.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { DocumentsInput, type GivenDocument } from './documents-input.tsx';
import styles from './held.module.css';
import { LinkedInput } from './linked-input.tsx';
import { TextArea } from './text-area.tsx';

export interface FallFactsDialogProps {
  readonly benchId: BenchId;
  /** Absent where the case is opened. */
  readonly file?: HeldView['fallCase'];
  onClose(): void;
}

const indicators = ['deployed', 'not deployed', 'not fitted', 'not clear'] as const;

export const FallFactsDialog = ({ benchId, file, onClose }: FallFactsDialogProps) => {
  const { t } = useText();
  const known = file?.facts;
  const [on, setOn] = useState<string>(known?.happenedOn ?? '');
  const [badge, setBadge] = useState('');
  const [badgeFault, setBadgeFault] = useState<string>();
  const [job, setJob] = useState(known?.job ?? '');
  const [indicator, setIndicator] = useState(known?.indicator);
  const [informed, setInformed] = useState(known?.informed ?? '');
  const [bagNumber, setBagNumber] = useState(known?.bagNumber ?? '');
  const [account, setAccount] = useState(known?.account ?? '');
  const [linked, setLinked] = useState<readonly BenchId[]>([]);
  const [photos, setPhotos] = useState<readonly GivenDocument[]>([]);
  const open = useStationCommand('fall-case.open');
  const note = useStationCommand('fall-case.note');
  const faults = faultsOf(open.error ?? note.error);
  useScanHandler(({ meaning }) => {
    if (meaning.meaning === 'badge') setBadge(meaning.badge);
    else if (meaning.meaning === 'device' && file === undefined)
      setLinked([...new Set([...linked, meaning.device.benchId])]);
    else return false;
    return true;
  });
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const user = badge.trim() === '' ? undefined : await call('desk.user', { badge });
    setBadgeFault(user?.ok === false ? user.error.sentence : undefined);
    if (user?.ok === false) return;
    const facts: FallFacts = {
      ...(on === '' ? {} : { happenedOn: calendarDate(on) }),
      ...(user === undefined ? {} : { userId: user.output.personId }),
      ...(job.trim() === '' ? {} : { job }),
      ...(indicator === undefined ? {} : { indicator }),
      ...(informed.trim() === '' ? {} : { informed }),
      ...(bagNumber.trim() === '' ? {} : { bagNumber }),
      ...(account.trim() === '' ? {} : { account }),
    };
    const result =
      file === undefined
        ? await open.run({ benchId, facts, linked: [...linked] })
        : await note.run({ fallCase: file.number, facts, photos: [...photos] });
    if (result.ok) onClose();
  };
  const title =
    file === undefined
      ? t('held:fall.openTitle', { benchId: formatBenchId(benchId) })
      : t('held:fall.noteTitle', { number: file.number });
  return (
    <Dialog title={title} onClose={onClose} isWide>
      <form className={styles.form} onSubmit={(event) => void submit(event)}>
        <p>{t('held:fall.hint')}</p>
        <DateInput
          label={t('held:fall.happenedOn')}
          value={on}
          onChange={setOn}
          error={faults.at('facts.happenedOn')}
        />
        <TextInput label={t('held:fall.badge')} value={badge} onChange={setBadge} error={badgeFault} />
        <TextInput label={t('held:fall.job')} value={job} onChange={setJob} />
        <Choice<(typeof indicators)[number]>
          label={t('held:fall.indicator')}
          firstNumber={1}
          isCompact
          value={indicator}
          options={indicators.map((value) => ({ value, label: t(`held:fall.indicatorOf.${value}`) }))}
          onChange={setIndicator}
        />
        <TextInput label={t('held:fall.informed')} value={informed} onChange={setInformed} />
        <TextInput label={t('held:fall.bagNumber')} value={bagNumber} onChange={setBagNumber} />
        <TextArea label={t('held:fall.account')} value={account} onChange={setAccount} />
        {file === undefined ? (
          <LinkedInput linked={linked} onChange={setLinked} error={faults.at('linked')} />
        ) : (
          <DocumentsInput
            label={t('held:fall.photos')}
            documents={photos}
            onChange={setPhotos}
            error={faults.at('documents', 'photos')}
          />
        )}
        <AlertLine sentence={faults.rest()} />
        <DialogActions isRunning={open.isRunning || note.isRunning} onCancel={onClose} />
      </form>
    </Dialog>
  );
};

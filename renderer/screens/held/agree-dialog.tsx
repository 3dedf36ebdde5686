/** A second competent person looks at the device, reads what was written, and signs that they agree. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { HeldView } from '../../../src/station/held-view.ts';
import { Dialog } from '../../components/dialog.tsx';
import { useText } from '../../i18n/text.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { useSignedIn } from '../../station/status.ts';
import { Signature } from '../identity/signature.tsx';
import styles from './held.module.css';

export interface AgreeDialogProps {
  readonly held: HeldView;
  onClose(): void;
}

export const AgreeDialog = ({ held, onClose }: AgreeDialogProps) => {
  const { t } = useText();
  const person = useSignedIn();
  const confirm = useStationCommand('held.confirm-evidence');
  const waiting = held.reasons.flatMap(({ missing }) => missing.map(({ unconfirmed }) => unconfirmed));
  const entry = held.evidence.find(({ evidence }) => waiting.includes(evidence));
  if (entry === undefined || person === undefined) return null;
  const { benchId } = held.device;
  const { evidence } = entry;
  return (
    <Dialog title={t('held:agree.title', { evidence })} onClose={onClose}>
      {entry.byId === person.personId ? (
        <p className={styles.reason}>{t('held:agree.other', { name: entry.by })}</p>
      ) : (
        <Signature
          name={person.name}
          statement={t('held:agree.statement', { benchId: formatBenchId(benchId), name: entry.by })}
          isRunning={confirm.isRunning}
          error={confirm.error?.sentence}
          onSign={async (pin) => {
            const result = await confirm.run({ benchId, evidence, lookedAtDevice: true, pin });
            if (result.ok) onClose();
          }}
          onBack={onClose}
        >
          <p className={styles.reason}>{entry.statement ?? ''}</p>
        </Signature>
      )}
    </Dialog>
  );
};

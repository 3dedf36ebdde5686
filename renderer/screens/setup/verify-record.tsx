/** Proves the record, by itself or with a checkpoint that was kept elsewhere, and says the result in words. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import { useWork, type WorkCalls } from '../../station/use-work.ts';
import { CheckpointFileButton } from './checkpoint-file-button.tsx';
import styles from './setup.module.css';

type Status = OutputOf<'ledger.verify-status'>;
type Verified = Extract<Status, { state: 'verified' }>;
type Fault = Verified['faults'][number];

const verifyCalls: WorkCalls<{ readonly checkpoint?: string }, Status> = {
  isCommand: false,
  start: (input) => call('ledger.verify-start', input),
  status: (job) => call('ledger.verify-status', { job }),
  cancel: (job) => call('ledger.verify-cancel', { job }),
};

const shownFaults = 20;

export const VerifyRecord = () => {
  const { t } = useText();
  const { status, error, isWorking, begin, cancel } = useWork(verifyCalls);
  const verified = status?.state === 'verified' && !isWorking ? status : undefined;
  const refused = status?.state === 'refused' && !isWorking ? status.sentence : undefined;
  const notes = verified?.notes ?? [];
  return (
    <section className={styles.box} aria-labelledby="verify">
      <h2 id="verify">{t('ledger:verifyTitle')}</h2>
      <p>{t('ledger:verifyText')}</p>
      <div role="status">
        {isWorking ? <p>{progressOf(status, t)}</p> : null}
        {verified?.sound === true ? <SoundRecord verified={verified} /> : null}
      </div>
      {notes.length === 0 ? null : (
        <p className={styles.soft}>
          {t('evidence:store.unnamed', { count: notes.length, first: notes[0]?.sha256.slice(0, 12) ?? '' })}
        </p>
      )}
      <AlertLine
        sentence={error?.sentence ?? refused ?? (verified?.sound === false ? t('ledger:unsound') : undefined)}
      />
      <ul className={styles.faults}>
        {(verified?.faults ?? []).slice(0, shownFaults).map((fault) => {
          const values = valuesOf(fault);
          return (
            <li key={`${fault.kind} ${Object.values(values).join(' ')}`}>
              {t(`ledger:fault.${fault.kind}`, values)}
            </li>
          );
        })}
      </ul>
      <div className={styles.buttons}>
        <Button icon="register" isRunning={isWorking} onPress={() => begin({})}>
          {t('ledger:verify')}
        </Button>
        {isWorking ? (
          <Button onPress={cancel}>{t('ledger:cancel')}</Button>
        ) : (
          <CheckpointFileButton onText={(checkpoint) => begin({ checkpoint })} />
        )}
      </div>
    </section>
  );
};

const progressOf = (status: Status | undefined, t: ReturnType<typeof useText>['t']): string =>
  status?.state === 'working' && status.of > 0
    ? t('ledger:progress', { done: status.done, of: status.of })
    : t('ledger:counting');

const SoundRecord = ({ verified }: { readonly verified: Verified }) => {
  const { t } = useText();
  const { head, checkpoints, keptSize } = verified;
  return (
    <>
      <p className={styles.sign}>
        <Icon name="check" />
        {t('ledger:sound', { size: head.size })}
      </p>
      {keptSize === undefined ? null : (
        <p className={styles.name}>{t('ledger:keptHolds', { size: keptSize })}</p>
      )}
      <p className={styles.soft}>{t('ledger:signatures', { count: checkpoints })}</p>
      <p className={styles.soft}>{t('ledger:fingerprint', { hash: head.rootHash.slice(0, 16) })}</p>
    </>
  );
};

const valuesOf = (fault: Fault): Readonly<Record<string, string | number>> => {
  switch (fault.kind) {
    case 'event changed':
    case 'event missing':
      return { detail: fault.seq };
    case 'subtree differs':
      return { detail: fault.lastSeq, events: fault.events };
    case 'checkpoint differs':
      return { detail: fault.size };
    case 'record lost events':
      return { detail: fault.recorded, covered: fault.covered };
    case 'record rewritten':
      return { detail: fault.covered };
    case 'tree head does not match':
      return { detail: `${fault.stored.rootHash.slice(0, 12)} ≠ ${fault.computed.rootHash.slice(0, 12)}` };
    case 'projection differs':
      return { detail: `${fault.table} ${fault.key}` };
    case 'database damaged':
      return { detail: fault.detail };
    case 'picture missing':
    case 'picture changed':
      return { detail: `${fault.sha256.slice(0, 12)} (${fault.seq})` };
  }
};

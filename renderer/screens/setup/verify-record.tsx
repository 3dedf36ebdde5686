/** Proves the record, and says the result in words. */
import { useState } from 'react';
import type { CallError, OutputOf } from '../../../src/station/contract.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { Icon } from '../../components/icon.tsx';
import { useText } from '../../i18n/text.ts';
import { call } from '../../station/client.ts';
import styles from './setup.module.css';

type Verification = OutputOf<'ledger.verify'>;
type Fault = Verification['faults'][number];

export const VerifyRecord = () => {
  const { t } = useText();
  const [result, setResult] = useState<Verification>();
  const [error, setError] = useState<CallError>();
  const [isRunning, setRunning] = useState(false);
  const verify = async (): Promise<void> => {
    setRunning(true);
    setResult(undefined);
    const answer = await call('ledger.verify', {});
    setRunning(false);
    setError(answer.ok ? undefined : answer.error);
    if (answer.ok) setResult(answer.output);
  };
  const notes = result?.notes ?? [];
  return (
    <section className={styles.box} aria-labelledby="verify">
      <h2 id="verify">{t('screens:setup.verifyTitle')}</h2>
      <p>{t('screens:setup.verifyText')}</p>
      <div role="status">
        {result?.sound === true ? (
          <>
            <p className={styles.sign}>
              <Icon name="check" />
              {t('screens:setup.sound', { size: result.head.size })}
            </p>
            <p className={styles.soft}>
              {t('screens:setup.fingerprint', { hash: result.head.rootHash.slice(0, 16) })}
            </p>
          </>
        ) : null}
      </div>
      {notes.length === 0 ? null : (
        <p className={styles.soft}>
          {t('evidence:store.unnamed', { count: notes.length, first: notes[0]?.sha256.slice(0, 12) ?? '' })}
        </p>
      )}
      <AlertLine
        sentence={error?.sentence ?? (result?.sound === false ? t('screens:setup.unsound') : undefined)}
      />
      <ul className={styles.faults}>
        {(result?.faults ?? []).slice(0, 20).map((fault) => {
          const detail = detailOf(fault);
          return (
            <li key={`${fault.kind} ${detail}`}>{t(`screens:setup.fault.${fault.kind}`, { detail })}</li>
          );
        })}
      </ul>
      <Button icon="register" isRunning={isRunning} onPress={() => void verify()}>
        {t(isRunning ? 'screens:setup.verifying' : 'screens:setup.verify')}
      </Button>
    </section>
  );
};

const detailOf = (fault: Fault): string => {
  switch (fault.kind) {
    case 'event changed':
    case 'event missing':
      return String(fault.seq);
    case 'tree head does not match':
      return `${fault.stored.rootHash.slice(0, 12)} ≠ ${fault.computed.rootHash.slice(0, 12)}`;
    case 'projection differs':
      return `${fault.table} ${fault.key}`;
    case 'database damaged':
      return fault.detail;
    case 'picture missing':
    case 'picture changed':
      return `${fault.sha256.slice(0, 12)} (${fault.seq})`;
  }
};

/** The evidence that was recorded for a held device: what, by whom, which documents; each can be opened and withdrawn. */
import { useState } from 'react';
import type { HeldView } from '../../../src/station/held-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import styles from './held.module.css';
import { openDocument } from './open-document.ts';
import { WithdrawDialog } from './withdraw-dialog.tsx';

export const EvidenceList = ({ held }: { readonly held: HeldView }) => {
  const { t, dateText, inLanguage } = useText();
  const [withdrawing, setWithdrawing] = useState<number>();
  const [fault, setFault] = useState<string>();
  const { benchId, standing } = held.device;
  return (
    <section className={styles.panel} aria-labelledby="held-evidence">
      <h2 id="held-evidence">{t('held:evidence')}</h2>
      <AlertLine sentence={fault} />
      {held.evidence.length === 0 ? <p>{t('held:noEvidence')}</p> : null}
      <ul className={styles.list}>
        {held.evidence.map(
          ({ evidence, kind, covers, by, on, certificate, statement, documents, ...entry }) => {
            const { confirmed, alsoConfirmed = [], withdrawn } = entry;
            const agreed = confirmed === undefined ? [] : [confirmed, ...alsoConfirmed];
            const named = held.kinds.find(({ key }) => key === kind);
            return (
              <li key={evidence} className={styles.item}>
                <span className={styles.reason}>
                  {evidence}. {named === undefined ? kind : inLanguage(named.label)}
                </span>
                {certificate === undefined ? null : (
                  <span>
                    {certificate.number}, {dateText(certificate.on)}, {certificate.issuer}
                  </span>
                )}
                {statement === undefined ? null : <span>{statement}</span>}
                <span className={styles.soft}>
                  {t('held:forReasons', { numbers: covers.join(', ') })}.{' '}
                  {t('held:recordedBy', { name: by, date: dateText(on) })}
                </span>
                {agreed.map((each) => (
                  <span key={each.by}>{t('held:agreedBy', { name: each.by, date: dateText(each.on) })}</span>
                ))}
                {withdrawn === undefined ? null : (
                  <span>
                    {t('held:withdrawnBy', {
                      name: withdrawn.by,
                      date: dateText(withdrawn.on),
                      because: withdrawn.because,
                    })}
                  </span>
                )}
                <div className={styles.buttons}>
                  {documents.map(({ sha256, name }) => (
                    <Button
                      key={sha256}
                      icon="picture"
                      onPress={() => void openDocument(benchId, sha256).then(setFault)}
                    >
                      {t('held:openDocument', { name })}
                    </Button>
                  ))}
                  {withdrawn !== undefined || standing === 'scrapped' ? null : (
                    <Button onPress={() => setWithdrawing(evidence)}>
                      {t('held:withdraw', { evidence })}
                    </Button>
                  )}
                </div>
              </li>
            );
          },
        )}
      </ul>
      {withdrawing === undefined ? null : (
        <WithdrawDialog benchId={benchId} evidence={withdrawing} onClose={() => setWithdrawing(undefined)} />
      )}
    </section>
  );
};

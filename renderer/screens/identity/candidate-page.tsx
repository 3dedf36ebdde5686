/** One candidate against the device: every fact, its weight, what the register says; and the proposal, signed. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { CandidateView, IdentityCaseView } from '../../../src/station/identity-view.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { useSignedIn } from '../../station/status.ts';
import { CandidateWarnings } from './candidate-warnings.tsx';
import { Chance } from './chance.tsx';
import { EvidenceTable } from './evidence-table.tsx';
import { Signature } from './signature.tsx';
import styles from './who.module.css';

export interface CandidatePageProps {
  readonly identity: IdentityCaseView;
  readonly candidate: CandidateView;
  onBack(): void;
}

export const CandidatePage = ({ identity, candidate, onBack }: CandidatePageProps) => {
  const { t } = useText();
  const person = useSignedIn();
  const propose = useStationCommand('identity.propose');
  const [isSigning, setSigning] = useState(false);
  const canPropose = candidate.device.standing !== 'scrapped' && person !== undefined;
  const sign = (): void => {
    if (canPropose) setSigning(true);
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || isSigning) return false;
    if (meaning.command === 'confirm' || meaning.command === '1') sign();
    else if (meaning.command === 'back' || meaning.command === '2') onBack();
    else return false;
    return true;
  });
  const { benchId } = candidate;
  const evidence = (
    <>
      <CandidateWarnings candidate={candidate} />
      <EvidenceTable identity={identity} candidate={candidate} />
    </>
  );
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('screens:identity.proposeTitle', { benchId: formatBenchId(benchId) })}</h1>
        <Chance probability={candidate.probability} />
      </div>
      {isSigning && person !== undefined ? (
        <div className={styles.split}>
          <div className={styles.column}>{evidence}</div>
          <div className={styles.column}>
            <Signature
              name={person.name}
              statement={t('screens:identity.signProposal', { benchId: formatBenchId(benchId) })}
              isRunning={propose.isRunning}
              error={propose.error?.sentence}
              onSign={(pin) => propose.run({ identityCase: identity.identityCase, candidate: benchId, pin })}
              onBack={() => setSigning(false)}
            />
          </div>
        </div>
      ) : (
        <>
          {evidence}
          <div className={styles.actions}>
            <p className={styles.soft}>{t('screens:identity.proposeHint')}</p>
            <Button number={2} onPress={onBack}>
              {t('screens:identity.others')}
            </Button>
            <Button number={1} look="primary" isDisabled={!canPropose} onPress={sign} autoFocus>
              {t('screens:identity.propose')}
            </Button>
          </div>
        </>
      )}
    </div>
  );
};

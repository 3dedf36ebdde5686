/** The second person: looks at the device, says whether it is the one that was proposed, and signs with badge and PIN. */
import { useState } from 'react';
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { CandidateView, IdentityCaseView } from '../../../src/station/identity-view.ts';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import { useSignedIn } from '../../station/status.ts';
import { CandidateWarnings } from './candidate-warnings.tsx';
import { EvidenceTable } from './evidence-table.tsx';
import { SecondSignature } from './second-signature.tsx';
import styles from './who.module.css';

export interface SecondPersonProps {
  readonly identity: IdentityCaseView;
  readonly candidate: CandidateView;
}

export const SecondPerson = ({ identity, candidate }: SecondPersonProps) => {
  const { t } = useText();
  const person = useSignedIn();
  const [answer, setAnswer] = useState<'yes' | 'no'>();
  const proposer = identity.proposal?.by ?? '';
  const isProposer = person?.personId === identity.proposal?.byId;
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('screens:identity.secondTitle', { benchId: formatBenchId(candidate.benchId) })}</h1>
      </div>
      <div className={styles.split}>
        <div className={styles.column}>
          <p className={styles.large}>
            {candidate.device.manufacturer} {candidate.device.model}, {candidate.device.serial}
          </p>
          <CandidateWarnings candidate={candidate} />
          <EvidenceTable identity={identity} candidate={candidate} />
        </div>
        <div className={styles.column}>
          {person === undefined || isProposer ? (
            <p className={styles.notice} role="status">
              {isProposer
                ? t('screens:identity.handOver', { name: proposer })
                : t('screens:identity.scanBadge')}
            </p>
          ) : answer === undefined ? (
            <>
              <p>{t('screens:identity.proposedBy', { name: proposer })}</p>
              <NumberedChoices
                choices={[
                  { key: 'yes', label: t('screens:identity.yes'), onChoose: () => setAnswer('yes') },
                  { key: 'no', label: t('screens:identity.no'), onChoose: () => setAnswer('no') },
                ]}
              />
            </>
          ) : (
            <SecondSignature
              identityCase={identity.identityCase}
              candidate={candidate.benchId}
              answer={answer}
              name={person.name}
              onBack={() => setAnswer(undefined)}
            />
          )}
        </div>
      </div>
    </div>
  );
};

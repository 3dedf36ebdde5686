/** One candidate against the device: every fact, its weight, what the register says; and the proposal. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { CandidateView, IdentityCaseView } from '../../../src/station/identity-view.ts';
import { AlertLine } from '../../components/alert-line.tsx';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import { useStationCommand } from '../../station/hooks.ts';
import { CandidateWarnings } from './candidate-warnings.tsx';
import { Chance } from './chance.tsx';
import { EvidenceTable } from './evidence-table.tsx';
import styles from './who.module.css';

export interface CandidatePageProps {
  readonly identity: IdentityCaseView;
  readonly candidate: CandidateView;
  onBack(): void;
}

export const CandidatePage = ({ identity, candidate, onBack }: CandidatePageProps) => {
  const { t } = useText();
  const propose = useStationCommand('identity.propose');
  const canPropose = candidate.device.standing !== 'scrapped' && !propose.isRunning;
  const act = async (): Promise<void> => {
    if (canPropose) {
      await propose.run({ identityCase: identity.identityCase, candidate: candidate.benchId });
    }
  };
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command') return false;
    if (meaning.command === 'confirm' || meaning.command === '1') void act();
    else if (meaning.command === 'back' || meaning.command === '2') onBack();
    else return false;
    return true;
  });
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('screens:identity.proposeTitle', { benchId: formatBenchId(candidate.benchId) })}</h1>
        <Chance probability={candidate.probability} />
      </div>
      <CandidateWarnings candidate={candidate} />
      <EvidenceTable identity={identity} candidate={candidate} />
      <AlertLine sentence={propose.error?.sentence} />
      <div className={styles.actions}>
        <p className={styles.soft}>{t('screens:identity.proposeHint')}</p>
        <Button number={2} onPress={onBack}>
          {t('screens:identity.others')}
        </Button>
        <Button number={1} look="primary" isDisabled={!canPropose} onPress={() => void act()} autoFocus>
          {t('screens:identity.propose')}
        </Button>
      </div>
    </div>
  );
};

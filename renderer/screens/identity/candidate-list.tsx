/** The ranked candidates by number, and none of these as an equal among them. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../../src/domain/brand.ts';
import type { IdentityCaseView } from '../../../src/station/identity-view.ts';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { StandingMark } from '../../components/standing-mark.tsx';
import { useText } from '../../i18n/text.ts';
import { Chance } from './chance.tsx';
import styles from './who.module.css';

export interface CandidateListProps {
  readonly identity: IdentityCaseView;
  onChoose(chosen: BenchId | 'none'): void;
}

export const CandidateList = ({ identity, onChoose }: CandidateListProps) => {
  const { t } = useText();
  const { ranking, identityCase, disagreements } = identity;
  const first = ranking.candidates[0]?.probability ?? 0;
  const alike = ranking.candidates.filter(({ probability }) => probability > first / 2).length;
  const rows = ranking.candidates.map(({ benchId, device, probability }) => ({
    probability,
    choice: {
      key: benchId,
      onChoose: () => onChoose(benchId),
      label: (
        <span className={styles.candidate}>
          <span className={styles.benchId}>{formatBenchId(benchId)}</span>
          <span>
            {device.manufacturer} {device.model}, {device.serial}
          </span>
          <StandingMark standing={device.standing} />
          <Chance probability={probability} />
        </span>
      ),
    },
  }));
  const none = {
    probability: ranking.noneProbability,
    choice: {
      key: 'none',
      onChoose: () => onChoose('none'),
      label: (
        <span className={styles.candidate}>
          <span className={styles.benchId}>{t('screens:identity.none')}</span>
          <span className={styles.wide}>{t('screens:identity.noneHint')}</span>
          <Chance probability={ranking.noneProbability} />
        </span>
      ),
    },
  };
  const choices = [...rows, none].sort((a, b) => b.probability - a.probability).map(({ choice }) => choice);
  return (
    <div className={styles.screen}>
      <div className={styles.head}>
        <h1>{t('screens:identity.caseTitle', { identityCase })}</h1>
        <p>{t('screens:identity.ranked', { count: ranking.weighed })}</p>
      </div>
      {disagreements.map(({ benchId, by, why }) => (
        <p key={`${benchId}/${by}`} className={styles.notice}>
          {t('screens:identity.disagreed', { name: by, benchId: formatBenchId(benchId), why })}
        </p>
      ))}
      {alike > 1 && first > ranking.noneProbability ? (
        <p className={styles.notice}>{t('screens:identity.alike', { count: alike })}</p>
      ) : null}
      <NumberedChoices choices={choices} />
      <p className={styles.soft}>{t('screens:identity.keepOut')}</p>
    </div>
  );
};

/** How a case ended, and what happens now. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { IdentityCaseView } from '../../../src/station/identity-view.ts';
import { Icon } from '../../components/icon.tsx';
import { NumberedChoices } from '../../components/numbered-choices.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import styles from './who.module.css';

export const CaseClosed = ({ identity }: { readonly identity: IdentityCaseView }) => {
  const { t } = useText();
  const benchId = identity.proposal?.benchId;
  if (identity.state !== 'taken' || benchId === undefined) {
    return (
      <div className={styles.screen}>
        <h1 className={styles.outTitle}>
          <Icon name="stop" /> {t('screens:identity.unidentifiedTitle')}
        </h1>
        <p className={styles.large}>{t('screens:identity.unidentifiedText', { place: identity.keptAt })}</p>
        <p>{t('screens:identity.noneText')}</p>
      </div>
    );
  }
  return (
    <div className={styles.screen}>
      <h1 className={styles.outTitle}>
        <Icon name="stop" /> {t('screens:identity.takenTitle', { benchId: formatBenchId(benchId) })}
      </h1>
      <p className={styles.large}>
        {t('screens:identity.takenText', {
          first: identity.proposal?.by ?? '',
          second: identity.closed?.by ?? '',
        })}
      </p>
      <NumberedChoices
        choices={[
          {
            key: 'tag',
            label: t('screens:identity.openTag'),
            isPrimary: true,
            onChoose: () => navigate({ screen: 'tag', benchId, kind: 'quarantine' }),
          },
          {
            key: 'card',
            label: t('screens:identity.openCard'),
            onChoose: () => navigate({ screen: 'device', benchId }),
          },
        ]}
      />
    </div>
  );
};

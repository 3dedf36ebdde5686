/** In the place of the plan, while it is made or where it was not. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import type { StationQuery } from '../../station/hooks.ts';
import { Planning } from './planning.tsx';
import styles from './schedule.module.css';

export const WithoutPlan = ({ plan }: { readonly plan: StationQuery<OutputOf<'schedule.plan'>> }) => {
  const { t } = useText();
  if (plan.error === undefined || plan.isFetching) return <Planning />;
  return (
    <div className={styles.screen}>
      <StationError error={plan.error} />
      {plan.error.code === 'plan-canceled' ? (
        <div className={styles.buttons}>
          <Button look="primary" onPress={plan.refetch}>
            {t('schedule:planAgain')}
          </Button>
        </div>
      ) : null}
    </div>
  );
};

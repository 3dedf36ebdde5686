/** In the place of the plan, while it is made or where it was not. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { Button } from '../../components/button.tsx';
import { StationError } from '../../components/station-error.tsx';
import { useText } from '../../i18n/text.ts';
import { useScanHandler } from '../../scan/scan.ts';
import type { StationQuery } from '../../station/hooks.ts';
import { Planning } from './planning.tsx';
import styles from './schedule.module.css';

export const WithoutPlan = ({ plan }: { readonly plan: StationQuery<OutputOf<'schedule.plan'>> }) => {
  const { t } = useText();
  const { error, isFetching, refetch } = plan;
  const isCanceled = error?.code === 'plan-canceled' && !isFetching;
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm' || !isCanceled) return false;
    refetch();
    return true;
  });
  if (error === undefined || isFetching) return <Planning />;
  return (
    <div className={styles.screen}>
      <StationError error={error} />
      {isCanceled ? (
        <div className={styles.buttons}>
          <Button look="primary" onPress={refetch}>
            {t('schedule:planAgain')}
          </Button>
        </div>
      ) : null}
    </div>
  );
};

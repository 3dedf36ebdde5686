/** Says that something was recorded since the plan was made, and makes it anew. */
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { makePlan } from './plan-job.ts';
import styles from './returns-plan.module.css';

export const StalePlan = ({ isCurrent }: { readonly isCurrent: boolean }) => {
  const { t } = useText();
  const again = (): void => {
    void makePlan();
    navigate({ screen: 'returns-plan' });
  };
  return (
    <div className={styles.stale} role="status">
      {isCurrent ? null : (
        <>
          <p>{t('plan:stale')}</p>
          <Button icon="forward" onPress={again}>
            {t('plan:again')}
          </Button>
        </>
      )}
    </div>
  );
};

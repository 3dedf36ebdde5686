/** A device that is recorded out: it is checked in before anything else is done with it, and the way there is one press. */
import { formatBenchId } from '../../../src/domain/bench-id/bench-id.ts';
import type { DeviceSummary } from '../../../src/station/views.ts';
import { Button } from '../../components/button.tsx';
import { useText } from '../../i18n/text.ts';
import { navigate } from '../../navigation/route.ts';
import { useScanHandler } from '../../scan/scan.ts';
import styles from './check-in-first.module.css';

export const CheckInFirst = ({ device }: { readonly device: DeviceSummary }) => {
  const { t } = useText();
  const { benchId, openCheckIn } = device;
  const checkIn = (): void => navigate({ screen: 'desk', benchId });
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || meaning.command !== 'confirm') return false;
    checkIn();
    return true;
  });
  return (
    <div className={styles.first}>
      <p role="status" className={styles.words}>
        {t(openCheckIn === undefined ? 'desk:checkInFirst' : 'desk:askRestFirst', {
          device: formatBenchId(benchId),
        })}
      </p>
      <Button look="primary" size="large" icon="forward" onPress={checkIn}>
        {t(openCheckIn === undefined ? 'desk:checkInNow' : 'desk:askRest')}
      </Button>
    </div>
  );
};

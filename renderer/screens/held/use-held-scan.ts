/** On the screens of held devices, the scan of a device that is out of service opens it there, and not its card. */
import { navigate } from '../../navigation/route.ts';
import { isPast, useScanHandler } from '../../scan/scan.ts';

export const useHeldScan = (): void => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'device' || isPast(meaning.tag)) return false;
    const { standing, benchId } = meaning.device;
    if (standing === 'new' || standing === 'in service') return false;
    navigate({ screen: 'held', benchId });
    return true;
  });
};

/** The station behind the loopback host. */
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { openStation, type Station } from '../station/station.ts';
import { faultLog } from './fault-log.ts';
import { keepDaily } from './keep-daily.ts';
import { productFolder } from './product-folder.ts';
import { surroundingsOf } from './surroundings.ts';

export const openBrowserStation = async (folder: string): Promise<Station | Refusal> => {
  const station = await openStation({
    folder,
    productFolder,
    onFault: faultLog(folder),
    surroundings: surroundingsOf('browser', folder),
  });
  if (isRefusal(station)) return station;
  const stopKeeping = keepDaily(station, folder);
  return {
    ...station,
    close: async () => {
      stopKeeping();
      await station.close();
    },
  };
};

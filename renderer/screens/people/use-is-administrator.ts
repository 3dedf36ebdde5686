/** Whether the person at the window may change the people of the station. */
import { useReadyStation } from '../../station/status.ts';

export const useIsAdministrator = (): boolean =>
  useReadyStation()?.person?.roles.includes('administrator') ?? false;

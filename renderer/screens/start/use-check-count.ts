/** How many checks the current procedure has, for saying how far a walk has come. */
import { useStationQuery } from '../../station/hooks.ts';

export const useCheckCount = (): number =>
  useStationQuery('procedure.show', {}).data?.procedure.checks.length ?? 0;

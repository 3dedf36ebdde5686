/** Where to look for a device of the plan: who has it, its place in store, or whose it usually is. */
import type { OutputOf } from '../../../src/station/contract.ts';
import { useText } from '../../i18n/text.ts';

type Planned = OutputOf<'schedule.devices'>['devices'][number];

export const useWhereText = (): ((planned: Planned) => string) => {
  const { t, dateText } = useText();
  return ({ holder, outUntil, callIn, place, regularUser }) => {
    if (holder !== undefined) {
      if (callIn) return t('schedule:callIn', { holder });
      return outUntil === undefined
        ? t('schedule:out', { holder })
        : t('schedule:outUntil', { holder, date: dateText(outUntil) });
    }
    if (place !== undefined) return t('schedule:place', { place });
    return regularUser === undefined ? t('schedule:inStore') : t('schedule:inStoreOf', { user: regularUser });
  };
};

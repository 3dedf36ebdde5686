/** Who had a device, each person once, out of the times that somebody had it. */
import type { CalendarDate } from '../brand.ts';
import type { CustodySpell } from './custody.ts';

export interface PastUser {
  readonly userId: string;
  /** How many times it was handed to them. */
  readonly times: number;
  readonly firstOn: CalendarDate;
  /** The last day on which they had it; absent while they do. */
  readonly lastOn?: CalendarDate | undefined;
}

/** In the order in which they first had it. */
export const usersOf = (spells: readonly CustodySpell[]): readonly PastUser[] => {
  const users = new Map<string, PastUser>();
  for (const { userId, since, ended } of spells.toSorted((one, other) => one.spell - other.spell)) {
    const known = users.get(userId);
    users.set(userId, {
      userId,
      times: (known?.times ?? 0) + 1,
      firstOn: known?.firstOn ?? since.on,
      ...(ended === undefined ? {} : { lastOn: ended.on }),
    });
  }
  return [...users.values()];
};

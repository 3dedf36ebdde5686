/** How wrong PINs in a row slow down whoever guesses, without anybody being locked out for good by a bystander. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from './brand.ts';
import { daysBetween } from './calendar.ts';
import type { Person } from './person.ts';

/** Wrong PINs before there is a wait. Common practice, no source. */
export const triesBeforeLock = 5;

/**
 * NIST SP 800-63B §5.2.2: no more than 100 failed attempts in a row. After them the PIN counts for nothing until an
 * administrator sets another one.
 */
export const mostTries = 100;

const firstWaitSeconds = 60;
/** The same section: a wait that grows as the attempts come near the most, up to an hour (from memory). */
const longestWaitSeconds = 3_600;
/** For the only administrator, whom nobody else could let in again: one try a day, which no guessing profits from. */
const lastAdministratorWaitSeconds = 86_400;

/** What follows from a wrong PIN: tries that are left, a wait, or the end of this PIN. */
export type AfterWrongPin =
  | { readonly kind: 'tries left'; readonly left: number }
  | { readonly kind: 'wait'; readonly seconds: number }
  | { readonly kind: 'closed' };

/** `inARow` counts this one; `mayBeReset` where another administrator could set a new PIN. */
export const afterWrongPin = (inARow: number, mayBeReset: boolean): AfterWrongPin => {
  if (inARow >= mostTries)
    return mayBeReset ? { kind: 'closed' } : { kind: 'wait', seconds: lastAdministratorWaitSeconds };
  const left = triesBeforeLock - (inARow % triesBeforeLock);
  if (left < triesBeforeLock) return { kind: 'tries left', left };
  const waits = inARow / triesBeforeLock;
  return { kind: 'wait', seconds: Math.min(longestWaitSeconds, firstWaitSeconds * 2 ** (waits - 1)) };
};

/** The first wrong one in a row and each that brings a wait: so a script that guesses does not fill the record. */
export const isToBeRecorded = (inARow: number, after: AfterWrongPin): boolean =>
  inARow === 1 || after.kind !== 'tries left';

export const pinNoticeSchema = z.object({
  personId: z.string(),
  name: z.string(),
  /** Wrong PINs in a row until the latest wait. */
  inARow: z.int(),
  on: calendarDateSchema,
  /** Only a new PIN helps. */
  isClosed: z.boolean(),
});

/** So long an administrator is told of it. Common practice, no source. */
const toldForDays = 7;

/** Whose PIN was tried until there was a wait in the last days, and has not been set anew since. */
export const pinNotices = (
  people: readonly Person[],
  today: CalendarDate,
): readonly z.infer<typeof pinNoticeSchema>[] =>
  people.flatMap(({ personId, name, history = [] }) => {
    const last = history.findLast(({ event }) => isWait(event) || event.type === 'person.pin-set');
    if (last?.event.type !== 'person.pin-refused' || daysBetween(last.on, today) >= toldForDays) return [];
    const { inARow, waitSeconds } = last.event;
    return [{ personId, name, inARow, on: last.on, isClosed: waitSeconds === undefined }];
  });

const isWait = (event: NonNullable<Person['history']>[number]['event']): boolean =>
  event.type === 'person.pin-refused' && (event.waitSeconds !== undefined || event.inARow >= mostTries);

/** What can happen to a person of the station. The record of a person is kept after they have left. */
import { z } from 'zod';
import { calendarDateSchema } from './brand.ts';
import type { RecordedEvent } from './event.ts';
import { event } from './event-shape.ts';
import { designationSchema, personSchema, roleSchema } from './person.ts';
import { requestFromSchema } from './request-from.ts';

const personId = z.string();

/** Why something about a person was changed, in the words of whoever did it. */
export const whySchema = z.string().trim().min(1).max(300);

export const personEvents = [
  event('person.added', { person: personSchema.omit({ designation: true }) }),
  /** Replaces the designation that counted until then. */
  event('person.designated', { personId, designation: designationSchema }),
  /** From `endedOn` on the designation does not count. */
  event('person.designation-ended', { personId, endedOn: calendarDateSchema, because: whySchema }),
  event('person.name-changed', { personId, name: personSchema.shape.name, because: whySchema }),
  /** The earlier badge never signs in again. */
  event('person.badge-changed', { personId, badge: z.string(), because: whySchema }),
  event('person.roles-changed', { personId, roles: z.array(roleSchema).min(1), because: whySchema }),
  /** The first PIN, the person's own change, or, where somebody else put a new one in place, a reset with its reason. */
  event('person.pin-set', { personId, because: whySchema.optional() }),
  /** A wrong PIN, the first in a row or one that brought a wait; without a wait it is the last that is taken. */
  event('person.pin-refused', {
    personId,
    inARow: z.int().positive(),
    from: requestFromSchema,
    waitSeconds: z.int().positive().optional(),
  }),
  /** Ends the designation and signing in, from `leftOn` on. */
  event('person.left', { personId, leftOn: calendarDateSchema, because: whySchema }),
  /** Works here again; it takes a new designation to sign. */
  event('person.returned', { personId, because: whySchema }),
] as const;

export const personEventSchema = z.discriminatedUnion('type', personEvents);
export type PersonEvent = z.infer<typeof personEventSchema>;

export type RecordedPersonEvent = Pick<RecordedEvent, 'seq' | 'on' | 'by'> & { readonly event: PersonEvent };

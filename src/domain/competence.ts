/** Was this person a competent person on that day, for that device: the answer, and what it rests on. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from './brand.ts';
import type { Device } from './device.ts';
import { type Designation, designationSchema, type Person } from './person.ts';

/** A designation that a person held or holds. `ended.on` is the first day on which it did not count. */
export const heldDesignationSchema = z.object({
  designation: designationSchema,
  /** When it was recorded here, and by whom (a person's ID); absent where only the designation itself is known. */
  recorded: z.object({ on: calendarDateSchema, by: z.string() }).optional(),
  ended: z
    .object({
      on: calendarDateSchema,
      how: z.enum(['replaced', 'ended', 'left']),
      because: z.string().optional(),
      by: z.string(),
    })
    .optional(),
});
export type HeldDesignation = z.infer<typeof heldDesignationSchema>;

export const competenceSchema = z.discriminatedUnion('ground', [
  z.object({ ground: z.literal('designated'), designation: designationSchema }),
  z.object({ ground: z.literal('left'), on: calendarDateSchema }),
  z.object({ ground: z.literal('not designated') }),
  z.object({ ground: z.literal('not yet designated'), designation: designationSchema }),
  z.object({
    ground: z.literal('designation ended'),
    designation: designationSchema,
    on: calendarDateSchema,
  }),
  z.object({ ground: z.literal('training expired'), designation: designationSchema }),
  z.object({ ground: z.literal('out of scope'), designation: designationSchema }),
]);
/** Competent where the ground is `designated`; every other ground says why not. */
export type Competence = z.infer<typeof competenceSchema>;

/** What a competence is read from: a person, or what a view says of one. */
export type Designee = Pick<Person, 'designation' | 'left' | 'history'>;

/** Every designation that the person held, oldest first; the one that counts now, if any, is the last. */
export const designationsOf = ({ designation, history = [] }: Designee): readonly HeldDesignation[] => {
  const past: HeldDesignation[] = [];
  let current: HeldDesignation | undefined;
  const end = (ended: NonNullable<HeldDesignation['ended']>): void => {
    if (current !== undefined) past.push({ ...current, ended });
    current = undefined;
  };
  for (const { event, on, by } of history) {
    switch (event.type) {
      case 'person.designated':
        end({ on, how: 'replaced', by });
        current = { designation: event.designation, recorded: { on, by } };
        break;
      case 'person.designation-ended':
        end({ on: event.endedOn, how: 'ended', because: event.because, by });
        break;
      case 'person.left':
        end({ on: event.leftOn, how: 'left', because: event.because, by });
        break;
      default:
    }
  }
  if (current === undefined && designation !== undefined) current = { designation };
  return current === undefined ? past : [...past, current];
};

/**
 * Whether the designation, the training and the scope of a person stood on a day; without a device the scope is left
 * aside. A day counts whole: on the day on which a designation ended it did not count, whatever the hour.
 */
export const competenceOn = (
  person: Designee,
  on: CalendarDate,
  device?: Pick<Device, 'modelSheetId'>,
): Competence => {
  const { left } = person;
  if (left !== undefined && left.on <= on) return { ground: 'left', on: left.on };
  const held = designationsOf(person);
  const answers = held
    .filter(({ designation }) => designation.designatedOn <= on)
    .map((each) => ofOne(each, on, device));
  const competent = answers.find(({ ground }) => ground === 'designated');
  const latest = competent ?? answers.at(-1);
  if (latest !== undefined) return latest;
  const [first] = held;
  return first === undefined
    ? { ground: 'not designated' }
    : { ground: 'not yet designated', designation: first.designation };
};

const ofOne = (
  { designation, ended }: HeldDesignation,
  on: CalendarDate,
  device: Pick<Device, 'modelSheetId'> | undefined,
): Competence => {
  if (ended !== undefined && ended.on <= on)
    return { ground: 'designation ended', designation, on: ended.on };
  if (designation.trainingValidUntil < on) return { ground: 'training expired', designation };
  return device === undefined || isInScope(designation, device)
    ? { ground: 'designated', designation }
    : { ground: 'out of scope', designation };
};

const isInScope = ({ scope }: Designation, { modelSheetId }: Pick<Device, 'modelSheetId'>): boolean =>
  scope === undefined || scope.includes(modelSheetId);

export const isCompetentOn = (person: Designee, on: CalendarDate): boolean =>
  competenceOn(person, on).ground === 'designated';

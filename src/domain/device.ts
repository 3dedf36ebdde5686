/** A device as the register knows it, and what follows from its standing. */
import { z } from 'zod';
import { amendmentSchema } from './amendment.ts';
import { benchIdSchema, type CalendarDate, calendarDateSchema } from './brand.ts';
import { daysBetween } from './calendar.ts';
import { custodySchema, storedSchema } from './custody/custody.ts';
import { openQuestionsSchema } from './custody/open-check-in.ts';
import { declaredInspectionSchema } from './declared-inspection.ts';
import { dueWhatSchema } from './due/due-date.ts';
import { recordedUseSchema } from './due/type-of-use.ts';
import { equipmentFactsSchema } from './equipment-facts.ts';
import { heldShape } from './held/evidence.ts';
import { presumedIdentitySchema } from './identity/identity-case.ts';
import { knownMarkingEntrySchema } from './marking.ts';
import { deviceReinspectionSchema } from './reinspection/reinspection.ts';
import { revalidationSchema } from './revalidation.ts';
import { reasonSchema } from './verdict.ts';

export const standingSchema = z.enum(['new', 'in service', 'quarantined', 'at manufacturer', 'scrapped']);
export type Standing = z.infer<typeof standingSchema>;

/** Characters of a code that is bound to a device. */
export const shortestCode = 3;
export const longestCode = 200;

/** A further code bound to a device, besides its bench ID. */
export const otherCodeSchema = z.object({
  code: z.string().trim().min(shortestCode).max(longestCode),
  kind: z.enum(['maker', 'rfid', 'old tag', 'other']),
});
export type OtherCode = z.infer<typeof otherCodeSchema>;

/** The tag that belongs on the device now; every tag with another number is out of date. */
export const currentTagSchema = z.object({
  kind: z.enum(['status', 'quarantine']),
  tagNumber: z.int().positive(),
  issuedOn: calendarDateSchema,
  /** How often it was given out for printing. */
  printed: z.int().nonnegative(),
  /** When the printed tag was scanned and read; absent until then. */
  provedOn: calendarDateSchema.optional(),
});
export type CurrentTag = z.infer<typeof currentTagSchema>;

/** A tag that belonged on the device once: until when, and why it does not any more. */
export const pastTagSchema = currentTagSchema.extend({
  endedOn: calendarDateSchema,
  because: z.enum([
    'new inspection',
    'removed from service',
    'removed again',
    'released to the bench',
    'scrapped',
  ]),
});
export type PastTag = z.infer<typeof pastTagSchema>;

export const deviceSchema = z.object({
  benchId: benchIdSchema,
  modelSheetId: z.string(),
  serial: z.string(),
  dateOfManufacture: z.string(),
  marking: z.array(knownMarkingEntrySchema),
  otherCodes: z.array(otherCodeSchema),
  regularUserId: z.string().optional(),
  registeredOn: calendarDateSchema,
  standing: standingSchema,
  openInspection: z.int().optional(),
  lastInspection: z
    .object({
      inspection: z.int(),
      on: calendarDateSchema,
      verdict: z.enum(['pass', 'remove from service']),
      by: z.string(),
    })
    .optional(),
  /** What the device is due for, as its status tag says; no laxer rule moves it. */
  taggedDue: z.object({ on: calendarDateSchema, what: dueWhatSchema.optional() }).optional(),
  /**
   * The earliest date on which the device stops being fit for use, by every rule that holds now and by its tag; absent while
   * it is not in service. It follows from the program and the model sheet too, so whoever reads the record is given it.
   */
  dueOn: calendarDateSchema.optional(),
  dueWhat: dueWhatSchema.optional(),
  /** What competent persons determined, in the order in which it was recorded. */
  uses: z.array(recordedUseSchema).optional(),
  /** The last revalidation by the manufacturer, or by a centre that it authorised, that a certificate vouches for. */
  revalidation: revalidationSchema.optional(),
  /** Open removal reasons; empty unless the device is out of service. */
  reasons: z.array(reasonSchema),
  removedBy: z.string().optional(),
  currentTag: currentTagSchema.optional(),
  pastTags: z.array(pastTagSchema),
  lastTagNumber: z.int().nonnegative(),
  /** Present while nothing but two people's word says that this is the device. */
  presumedIdentity: presumedIdentitySchema.optional(),
  /** How often a label of ours was printed once more after the marking was read; absent where it never was. */
  labelsReprinted: z.int().positive().optional(),
  /** Earlier inspections that a list declared, in its order; absent where none did. They never count as ours. */
  declaredInspections: z.array(declaredInspectionSchema).optional(),
  ...equipmentFactsSchema.shape,
  /** Present while it is out with a user. */
  custody: custodySchema.optional(),
  /** Present while questions of its last check-in are open: it is held, and back. */
  openCheckIn: openQuestionsSchema.optional(),
  /** Its place in store; absent where none was recorded. */
  stored: storedSchema.optional(),
  ...heldShape,
  /** Present while it waits for a blind second inspection. */
  reinspection: deviceReinspectionSchema.optional(),
  /** Corrections of the record of the device, oldest first; absent where none was made. */
  amendments: z.array(amendmentSchema).optional(),
});
export type Device = z.infer<typeof deviceSchema>;

export const dueStateSchema = z.enum(['never inspected', 'overdue', 'due soon', 'current', 'out of service']);
export type DueState = z.infer<typeof dueStateSchema>;

/** The due date itself is still in time; the day after is overdue. */
export const dueStateOf = (device: Device, today: CalendarDate, dueSoonDays: number): DueState => {
  if (device.standing === 'new') return 'never inspected';
  if (device.standing !== 'in service' || device.dueOn === undefined) return 'out of service';
  const days = daysBetween(today, device.dueOn);
  if (days < 0) return 'overdue';
  return days <= dueSoonDays ? 'due soon' : 'current';
};

export const nextActionSchema = z.enum([
  'start inspection',
  'resume inspection',
  'check in first',
  'keep out of service',
  'nothing: scrapped',
]);
export type NextAction = z.infer<typeof nextActionSchema>;

/** The one thing to do with a device that was just scanned at the bench. */
export const nextActionOf = (device: Device): NextAction => {
  switch (device.standing) {
    case 'scrapped':
      return 'nothing: scrapped';
    case 'at manufacturer':
      return 'keep out of service';
    case 'quarantined':
      if (device.release === undefined) return 'keep out of service';
      if (device.custody !== undefined || device.openCheckIn !== undefined) return 'check in first';
      return device.openInspection === undefined ? 'start inspection' : 'resume inspection';
    case 'new':
    case 'in service':
      if (device.custody !== undefined) return 'check in first';
      return device.openInspection === undefined ? 'start inspection' : 'resume inspection';
  }
};

/** A tag that belongs on the device and that nobody has scanned there: it may not be printed, or unreadable, or elsewhere. */
export const hasUnprovedTag = ({ currentTag }: Device): boolean =>
  currentTag !== undefined && currentTag.provedOn === undefined;

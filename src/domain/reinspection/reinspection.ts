/** A blind re-inspection: a device is inspected a second time by somebody who does not know what the first one found. */
import { z } from 'zod';
import { benchIdSchema, type CalendarDate, calendarDateSchema } from '../brand.ts';
import { competenceOn, type Designee } from '../competence.ts';
import type { Device } from '../device.ts';

/**
 * Days after the first inspection within which the second is made, where the program says nothing: what is compared then is
 * two inspectors, not what happened to the device between them. Common practice, no source.
 */
export const usualReinspectionDays = 14;

export const reinspectionSchema = z.object({
  kind: z.literal('reinspection'),
  /** Counts up over the station, from 1. */
  number: z.int().positive(),
  phase: z.enum(['drawn', 'signed']),
  benchId: benchIdSchema,
  drawnBy: z.string(),
  drawnOn: calendarDateSchema,
  /** The last day on which it may begin. */
  until: calendarDateSchema,
  /** The numbers of the two inspections; the second that was begun last, while none is signed. */
  first: z.int().positive(),
  second: z.int().positive().optional(),
});
export type Reinspection = z.infer<typeof reinspectionSchema>;

/** What a device keeps of being drawn, until its second inspection is signed or something else happened to it. */
export const deviceReinspectionSchema = z.object({
  reinspection: z.int().positive(),
  first: z.int().positive(),
  until: calendarDateSchema,
  /** Persons who know what the first inspection found: whoever walked or signed it, and whoever looked. */
  knownTo: z.array(z.string()),
  /** The second inspection, while it is open. */
  begun: z.int().positive().optional(),
});
export type DeviceReinspection = z.infer<typeof deviceReinspectionSchema>;

/** The draw that a device waits for on a day, or the second inspection that is under way. */
export const waitingReinspection = (
  { reinspection }: Pick<Device, 'reinspection'>,
  today: CalendarDate,
): DeviceReinspection | undefined =>
  reinspection !== undefined && (reinspection.begun !== undefined || reinspection.until >= today)
    ? reinspection
    : undefined;

/**
 * Whether somebody may yet make the second inspection of a device, and so must not be shown what the first one found. Only a
 * person whose designation holds for the device can make it.
 */
export const isBlindTo = (
  device: Pick<Device, 'reinspection' | 'modelSheetId'>,
  person: (Designee & { readonly personId: string }) | undefined,
  today: CalendarDate,
): boolean => {
  const waiting = waitingReinspection(device, today);
  return (
    waiting !== undefined &&
    person !== undefined &&
    !waiting.knownTo.includes(person.personId) &&
    competenceOn(person, today, device).ground === 'designated'
  );
};

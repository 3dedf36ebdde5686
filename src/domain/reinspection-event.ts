/** What can happen with blind re-inspections besides the second inspection itself. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from './brand.ts';
import { event } from './event-shape.ts';

const number = z.int().positive();

export const reinspectionEvents = [
  event('reinspection.drawn', {
    reinspection: number,
    benchId: benchIdSchema,
    /** The inspection that it is held against. */
    first: number,
    until: calendarDateSchema,
    /** Persons who know what the first one found. */
    knownTo: z.array(z.string()).min(1),
    /** The random number of 32 bits that chose it, and of how many devices: anybody can make the draw again. */
    lot: z.object({ number: z.int().min(0).max(0xffffffff), of: number }),
  }),
  /** Who recorded this was shown what the first inspection found, and so cannot make the second. */
  event('reinspection.seen', { reinspection: number, benchId: benchIdSchema }),
] as const;

const reinspectionEventSchema = z.discriminatedUnion('type', reinspectionEvents);
export type ReinspectionEvent = z.infer<typeof reinspectionEventSchema>;

/** What can happen at the desk: devices go out and come back, kits are put together, places are counted. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from './brand.ts';
import { checkInAnswerSchema } from './custody/check-in-answer.ts';
import { preUseConfirmationSchema } from './custody/custody.ts';
import { kitSchema } from './custody/kit.ts';
import { openQuestionsSchema } from './custody/open-check-in.ts';
import { placeCodeSchema } from './custody/place-code.ts';
import { countResultSchema } from './custody/shelf-count.ts';
import { event } from './event-shape.ts';
import { whySchema } from './person-event.ts';

const benchId = benchIdSchema;
const userId = z.string();
const deskRulesReference = z.object({ key: z.string(), version: z.int().positive() });

export const custodyEvents = [
  event('device.checked-out', {
    benchId,
    userId,
    expectedOn: calendarDateSchema.optional(),
    kitId: z.string().optional(),
    preUse: preUseConfirmationSchema,
  }),
  /** Whatever was answered yes, or is not known, takes the device out of service in the same breath. */
  event('device.checked-in', {
    benchId,
    /** Who had it by the record; absent where it came back without ever having been checked out. */
    userId: userId.optional(),
    /** Whose answers these are. */
    answeredBy: z.string(),
    rules: deskRulesReference,
    answers: z.array(checkInAnswerSchema),
    /** What is still to be asked; absent where everything was answered. Only a device that is held leaves anything open. */
    open: openQuestionsSchema.optional(),
  }),
  /** What was said after the device was held: at the same check-in, or when somebody took it up again. */
  event('device.check-in-answered', {
    benchId,
    answeredBy: z.string(),
    rules: deskRulesReference,
    answers: z.array(checkInAnswerSchema),
    open: openQuestionsSchema.optional(),
  }),
  event('device.transferred', {
    benchId,
    fromUserId: userId,
    toUserId: userId,
    /** Why the attendant records it without the badge of the one who had it. */
    because: whySchema.optional(),
    expectedOn: calendarDateSchema.optional(),
    preUse: preUseConfirmationSchema,
  }),
  /** Never returned. The removal from service follows in the same breath. */
  event('device.lost', { benchId, userId, because: whySchema }),
  event('device.stored', { benchId, place: placeCodeSchema }),
  event('kit.saved', { kit: kitSchema }),
  event('kit.removed', { kitId: z.string() }),
  event('place.counted', countResultSchema.shape),
] as const;

const custodyEventSchema = z.discriminatedUnion('type', custodyEvents);
export type CustodyEvent = z.infer<typeof custodyEventSchema>;

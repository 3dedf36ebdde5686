/** Everything that can happen at a station. An event is never changed once it is recorded. */
import { z } from 'zod';
import { correctionSchema } from './amendment.ts';
import { answerSchema } from './answer.ts';
import { benchCapacitySchema } from './bench-capacity.ts';
import { benchIdSchema, calendarDateSchema, instantSchema } from './brand.ts';
import { custodyEvents } from './custody-event.ts';
import { declaredInspectionSchema } from './declared-inspection.ts';
import { otherCodeSchema } from './device.ts';
import { dueDateSchema } from './due/due-date.ts';
import { typeOfUseSchema } from './due/type-of-use.ts';
import { equipmentFactsSchema } from './equipment-facts.ts';
import { event } from './event-shape.ts';
import { heldEvents } from './held-event.ts';
import { caseRankingSchema, placeSchema } from './identity/identity-case.ts';
import { observationSchema } from './identity/observation.ts';
import { backupMadeSchema, keepingSchema, recordHeadSchema } from './keeping.ts';
import { lengthUnitSchema } from './length.ts';
import { knownMarkingEntrySchema, markingEntrySchema } from './marking.ts';
import { modelSheetSchema } from './model-sheet.ts';
import { personEvents, whySchema } from './person-event.ts';
import { findingPictureSchema, keptPictureSchema } from './picture.ts';
import { printerSchema } from './printer.ts';
import { programSchema } from './program.ts';
import { recallEvents } from './recall-event.ts';
import { reinspectionEvents } from './reinspection-event.ts';
import { revalidationSchema } from './revalidation.ts';
import { scannerSchema } from './scanner/scanner.ts';
import { reprintReasonSchema } from './tag-content.ts';
import { unattendedMinutesSchema } from './unattended.ts';
import { reasonSchema, verdictSchema } from './verdict.ts';

const inspectionNumber = z.int().positive();
const tagNumber = z.int().positive();
const identityCase = z.int().positive();

export const eventSchema = z.discriminatedUnion('type', [
  event('station.created', {
    stationId: z.string(),
    name: z.string(),
    timeZone: z.string(),
    lengthUnit: lengthUnitSchema,
    /** True for the invented fleet; the screens say so. */
    demo: z.boolean(),
  }),
  /** Checkpoints of the record are signed with the private key to this one from here on. Base64 of the 32 bytes of RFC 8032. */
  event('station.key-made', { publicKey: z.string().regex(/^[0-9A-Za-z+/]{42}[AEIMQUYcgkosw048]=$/) }),
  ...personEvents,
  ...custodyEvents,
  ...heldEvents,
  ...recallEvents,
  ...reinspectionEvents,
  event('model-sheet.recorded', { modelSheet: modelSheetSchema }),
  event('device.registered', {
    benchId: benchIdSchema,
    modelSheetId: z.string(),
    serial: z.string(),
    dateOfManufacture: z.string(),
    marking: z.array(knownMarkingEntrySchema),
    otherCodes: z.array(otherCodeSchema),
    regularUserId: z.string().optional(),
  }),
  /** All that is known now of its purchase and its first use: what is absent is not known. */
  event('device.facts-recorded', { benchId: benchIdSchema, ...equipmentFactsSchema.shape }),
  /** A competent person determined how hard the device is used, from this day on. */
  event('device.use-set', { benchId: benchIdSchema, typeOfUse: typeOfUseSchema, from: calendarDateSchema }),
  /** The certificate of a revalidation by the manufacturer lies before a competent person. It brings no device back. */
  event('device.revalidation-recorded', { benchId: benchIdSchema, ...revalidationSchema.shape }),
  event('device.code-bound', { benchId: benchIdSchema, otherCode: otherCodeSchema }),
  /** Taken out of service without an inspection: at the desk, in the field, or because an inspection was broken off. */
  event('device.removed', { benchId: benchIdSchema, reasons: z.array(reasonSchema).min(1), tagNumber }),
  /** The picture itself lies in the evidence beside the record. */
  event('device.picture-kept', { benchId: benchIdSchema, ...keptPictureSchema.shape }),
  event('inspection.started', {
    inspection: inspectionNumber,
    benchId: benchIdSchema,
    procedure: z.object({ key: z.string(), version: z.int(), sha256: z.string() }),
    /** The blind re-inspection that it is the second inspection of; who began it says that they do not know the first. */
    reinspection: z.int().positive().optional(),
  }),
  event('inspection.answered', {
    inspection: inspectionNumber,
    benchId: benchIdSchema,
    check: z.string(),
    answer: answerSchema,
  }),
  /** Taken during the walk, of what was seen at a check; the picture itself lies in the evidence beside the record. */
  event('finding.picture-kept', {
    inspection: inspectionNumber,
    benchId: benchIdSchema,
    ...findingPictureSchema.shape,
  }),
  event('inspection.signed', {
    inspection: inspectionNumber,
    benchId: benchIdSchema,
    verdict: verdictSchema,
    dueOn: calendarDateSchema.optional(),
    /** Whose interval it was, in records from before `due`. */
    dueRule: z.enum(['program', 'manufacturer']).optional(),
    /** What `dueOn` is the date of, and whose rule gave it. */
    due: dueDateSchema.pick({ what: true, rule: true, months: true }).optional(),
    program: z.object({ key: z.string(), version: z.int() }),
    /** Of the tag that belongs on the device from now on. */
    tagNumber,
    /** The blind re-inspection that it is the second inspection of: a pass leaves the device, its tag and its dates alone. */
    reinspection: z.int().positive().optional(),
  }),
  event('inspection.abandoned', { inspection: inspectionNumber, benchId: benchIdSchema, why: z.string() }),
  event('tag.issued', {
    benchId: benchIdSchema,
    tagNumber,
    kind: z.enum(['status', 'quarantine']),
    /** SHA-256 of the PDF that was given out. */
    pdfSha256: z.string(),
    /** The printer that took it; absent where it was saved and opened. */
    printerId: z.string().optional(),
    /** Why it was given out once more. */
    reprintBecause: reprintReasonSchema.optional(),
    /** The due date that it says, where that is earlier than the one that was signed. */
    dueOn: calendarDateSchema.optional(),
  }),
  /** The printed tag was scanned, and read as the tag that belongs on the device. */
  event('tag.proved', { benchId: benchIdSchema, tagNumber }),
  /** A device whose code and label cannot be read lies on the bench: what was seen of it, and who it may be. */
  event('identity.opened', {
    identityCase,
    observation: observationSchema,
    ranking: caseRankingSchema,
    keptAt: placeSchema,
  }),
  /** Changes nothing about the device that is proposed. */
  event('identity.proposed', { identityCase, candidate: benchIdSchema }),
  /** A second person looked at the device and says that it is another. */
  event('identity.disagreed', { identityCase, candidate: benchIdSchema, why: z.string() }),
  /** A second person looked at the device and agrees; the removal from service follows in the same breath. */
  event('identity.taken', { identityCase, benchId: benchIdSchema, proposedBy: z.string() }),
  event('identity.left-unidentified', { identityCase, keptAt: placeSchema }),
  /** Every element of the manufacturer's marking was read on the device, because a label of ours is wanted once more. */
  event('device.marking-read', {
    benchId: benchIdSchema,
    marking: z.array(markingEntrySchema),
    /** Why; absent where the marking is not intact, and so nothing is printed. */
    reprintBecause: reprintReasonSchema.optional(),
  }),
  /** The employer's written rules as they are from this day on; an administrator signed them with their PIN. */
  event('program.adopted', { program: programSchema, effectiveFrom: calendarDateSchema }),
  event('printer.saved', { printer: printerSchema }),
  event('printer.removed', { printerId: z.string() }),
  /** A list of devices was taken into the register; what it brought follows in the same breath. */
  event('fleet.imported', {
    fileName: z.string(),
    /** Of the file, in hex. */
    sha256: z.string(),
    devices: z.int().positive(),
    inspections: z.int().nonnegative(),
  }),
  /** What a list says of an earlier inspection; nobody here made it, and nothing follows from it but its removal. */
  event('inspection.declared', { benchId: benchIdSchema, ...declaredInspectionSchema.shape }),
  /** How the scanner of the station types; absent where what was learnt is forgotten. */
  event('scanner.learnt', { scanner: scannerSchema.optional() }),
  /** Says what one earlier event should have said; that event stays as it is. What it is about is named for looking it up. */
  event('record.amended', {
    /** Number of the event that is corrected. */
    amends: z.int().positive(),
    benchId: benchIdSchema.optional(),
    inspection: inspectionNumber.optional(),
    personId: z.string().optional(),
    correction: correctionSchema,
    because: whySchema,
    /** Who corrects read the marking on the device just now. */
    markingReadNow: z.literal(true).optional(),
  }),
  /** What the bench can take in hand from now on. */
  event('bench.capacity-set', { capacity: benchCapacitySchema }),
  /** After so many minutes a window that nobody touches is locked. */
  event('station.unattended-set', { minutes: unattendedMinutesSchema }),
  /** Where backups go by themselves; absent where they go nowhere any more. */
  event('keeping.set', { keeping: keepingSchema.optional() }),
  /** A backup was written, read again and found whole; it ends before this event. */
  event('backup.made', { backup: backupMadeSchema }),
  /** The record up to here came from a backup, and took the place of another one, which was kept aside. */
  event('record.restored', {
    fileName: z.string(),
    record: recordHeadSchema,
    /** What was there before, and how much of it is in the restored record. */
    replaced: recordHeadSchema.extend({ same: z.int().nonnegative() }).optional(),
  }),
]);
export type DomainEvent = z.infer<typeof eventSchema>;
export type EventType = DomainEvent['type'];

/** Who, when: the moment in UTC, and the calendar date in the station's time zone. `by` is a person's ID, or `station`. */
export const recordedEventSchema = z.object({
  seq: z.int().positive(),
  at: instantSchema,
  on: calendarDateSchema,
  by: z.string(),
  event: eventSchema,
});
export type RecordedEvent = z.infer<typeof recordedEventSchema>;

/** What `decide` is told about the moment and the person of a command; the domain has no clock of its own. */
export interface Occasion {
  readonly at: z.infer<typeof instantSchema>;
  readonly on: z.infer<typeof calendarDateSchema>;
  readonly by: string;
}

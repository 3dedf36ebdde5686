/** What a tag says, before anyone thinks about where it stands on the tag. */
import { z } from 'zod';
import { benchIdSchema, calendarDateSchema } from './brand.ts';
import { languageSchema, messageSchema } from './message.ts';
import { zoneSchema } from './procedure.ts';

export const tagKindSchema = z.enum(['status', 'quarantine', 'id']);
export type TagKind = z.infer<typeof tagKindSchema>;

/** What ties a tag to its station: the mark of the station, and a code that only the station can make for these words. */
export const tagSealSchema = z.object({
  mark: z.string().regex(/^[0-9A-HJKMNP-TV-Z]{4}$/),
  code: z.string().regex(/^[0-9A-HJKMNP-TV-Z]{8}$/),
});
export type TagSeal = z.infer<typeof tagSealSchema>;

const identified = z.object({
  benchId: benchIdSchema,
  seal: tagSealSchema,
  /** Counts up for each device, from 1; a number is never used twice on a device. */
  tagNumber: z.int().positive(),
  manufacturer: z.string(),
  model: z.string(),
  serial: z.string(),
  ratedLength: z.string(),
  station: z.string(),
  /** The languages that stand on the tag, in this order. */
  languages: z.array(languageSchema).min(1),
});

/** The durable tag of a device that passed its latest documented inspection. */
export const statusTagSchema = identified.extend({
  kind: z.literal('status'),
  inspectedOn: calendarDateSchema,
  dueOn: calendarDateSchema,
  /** What the due date is the date of, where that is not the next documented inspection. */
  dueFor: z.enum(['revalidation', 'service life']).optional(),
  /** The inspector's mark: initials or name as it stands in the record. */
  inspectorMark: z.string(),
});
export type StatusTag = z.infer<typeof statusTagSchema>;

/** The danger tag of a device that is out of service. */
export const quarantineTagSchema = identified.extend({
  kind: z.literal('quarantine'),
  removedOn: calendarDateSchema,
  removedBy: z.string(),
  /** Every reason, in the order of the procedure. */
  reasons: z.array(z.object({ zone: zoneSchema, sentence: messageSchema })).min(1),
  /** Where the device is kept. */
  keptAt: messageSchema,
  /** What must exist before the device can be inspected for return, and for which of the reasons, from 1 on. */
  evidence: z.array(
    z.object({
      reasons: z.array(z.int().positive()).min(1),
      /** Any one of them will do. */
      anyOf: z.array(messageSchema).min(1),
    }),
  ),
  /** What the program asks for besides, whatever the reason; empty where nothing brings the device back. */
  beforeReturn: z.array(messageSchema),
});
export type QuarantineTag = z.infer<typeof quarantineTagSchema>;

/** Whether its reasons are told apart by numbers: only where some evidence is for some of them alone. */
export const hasNumberedReasons = ({
  reasons,
  evidence,
}: Pick<QuarantineTag, 'reasons' | 'evidence'>): boolean =>
  evidence.some((piece) => piece.reasons.length < reasons.length);

/** Why a tag is printed once more. */
export const reprintReasonSchema = z.enum(['not readable', 'lost', 'damaged', 'misprinted']);
export type ReprintReason = z.infer<typeof reprintReasonSchema>;

/** A label that carries the bench ID and nothing else. */
export const idLabelSchema = z.object({ kind: z.literal('id'), benchId: benchIdSchema });
export type IdLabel = z.infer<typeof idLabelSchema>;

/** The label of the place where a device that is held is kept. */
export const binLabelSchema = z.object({
  kind: z.literal('bin'),
  /** Capitals and digits, so that a keyboard scanner types it alike on every keyboard layout. */
  code: z.string().regex(/^[A-Z0-9]{1,12}$/),
  place: messageSchema,
  station: z.string(),
  /** The languages that stand on the label, in this order. */
  languages: z.array(languageSchema).min(1),
});
export type BinLabel = z.infer<typeof binLabelSchema>;

export const tagContentSchema = z.discriminatedUnion('kind', [
  statusTagSchema,
  quarantineTagSchema,
  idLabelSchema,
]);
export type TagContent = z.infer<typeof tagContentSchema>;

/** All that is laid out as a tag: what hangs on a device, and what marks the place of one. */
export const printableTagSchema = z.discriminatedUnion('kind', [
  statusTagSchema,
  quarantineTagSchema,
  idLabelSchema,
  binLabelSchema,
]);
export type PrintableTag = z.infer<typeof printableTagSchema>;

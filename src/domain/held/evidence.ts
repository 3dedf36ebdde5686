/** The evidence that is recorded for the return of a held device, and the documents that are kept with it. */
import { z } from 'zod';
import { calendarDateSchema } from '../brand.ts';
import { sha256Schema } from '../picture.ts';

/** What the record says of a document; the file itself lies in the evidence beside the record, under its hash. */
export const documentFileSchema = z.object({
  /** Of the file as it is kept. */
  sha256: sha256Schema,
  mediaType: z.enum(['application/pdf', 'image/jpeg']),
  byteLength: z.int().positive(),
  /** As whoever attached it called it. */
  name: z.string().trim().min(1).max(200),
});
export type DocumentFile = z.infer<typeof documentFileSchema>;

export const certificateSchema = z.object({
  number: z.string().trim().min(1).max(120),
  on: calendarDateSchema,
  /** The manufacturer, or the centre that it authorised. */
  issuer: z.string().trim().min(1).max(120),
});
export type Certificate = z.infer<typeof certificateSchema>;

export const evidenceEntrySchema = z.object({
  /** A kind of the release rules. */
  kind: z.string(),
  /** Which open reasons of the device it is for: their places in the list, from 1 on. */
  covers: z.array(z.int().positive()).min(1),
  documents: z.array(documentFileSchema).max(12),
  certificate: certificateSchema.optional(),
  statement: z.string().trim().min(1).max(2000).optional(),
});
export type EvidenceEntry = z.infer<typeof evidenceEntrySchema>;

const signature = z.object({ by: z.string(), on: calendarDateSchema });

export const recordedEvidenceSchema = evidenceEntrySchema.extend({
  /** Of the reasons that are still there. */
  covers: z.array(z.int().positive()),
  /** The number of the event that recorded it. */
  evidence: z.int().positive(),
  ...signature.shape,
  /** The second person, who looked and agreed. */
  confirmed: signature.optional(),
  /** Whoever looked and agreed after that, where the program asks for more than two persons. */
  alsoConfirmed: z.array(signature).optional(),
  withdrawn: signature.extend({ because: z.string() }).optional(),
});
export type RecordedEvidence = z.infer<typeof recordedEvidenceSchema>;

/** Everybody who stands behind a statement, the writer first. */
export const personsBehind = ({ by, confirmed, alsoConfirmed = [] }: RecordedEvidence): readonly string[] => [
  by,
  ...(confirmed === undefined ? [] : [confirmed.by]),
  ...alsoConfirmed.map((each) => each.by),
];

/** A fall case of a device. */
export const deviceFallCaseSchema = z.object({
  fallCase: z.int().positive(),
  openedOn: calendarDateSchema,
  closedOn: calendarDateSchema.optional(),
  /** How many of the open reasons whoever closed it had before them. */
  covers: z.int().nonnegative().optional(),
});

/** Back at the bench for its new inspection: its quarantine tag was scanned back in and destroyed. */
export const releaseSchema = signature.extend({ tagNumber: z.int().positive() });

/** A reason that ended with a new documented inspection. */
export const closedReasonSchema = z.object({
  key: z.string(),
  sentence: z.object({ en: z.string(), es: z.string() }),
  closedOn: calendarDateSchema,
  inspection: z.int().positive(),
});

export const scrappingSchema = signature.extend({
  /** A person's ID; somebody else than who scrapped it. */
  witness: z.string(),
  photos: z.array(documentFileSchema).min(1),
});

/** What a device keeps of having been held; each is absent where there is nothing. */
export const heldShape = {
  evidence: z.array(recordedEvidenceSchema).optional(),
  release: releaseSchema.optional(),
  fallCases: z.array(deviceFallCaseSchema).optional(),
  /** The open return batch that it is in. */
  returnBatch: z.int().positive().optional(),
  closedReasons: z.array(closedReasonSchema).optional(),
  scrapped: scrappingSchema.optional(),
};

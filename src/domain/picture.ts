/** A picture that is kept with the record: the picture itself lies beside the record, under the hash of its bytes. */
import { z } from 'zod';

/** What a kept picture shows: the manufacturer's marking, or a tag of ours. */
export const pictureSubjectSchema = z.enum(['marking', 'tag']);
export type PictureSubject = z.infer<typeof pictureSubjectSchema>;

/** SHA-256 (FIPS 180-4) in lower-case hexadecimal. */
export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);

/** What the record says of the file of a picture. */
export const pictureFileSchema = z.object({
  /** Of the file as it is kept. */
  sha256: sha256Schema,
  mediaType: z.literal('image/jpeg'),
  byteLength: z.int().positive(),
  /** In dots. */
  width: z.int().positive(),
  height: z.int().positive(),
});
export type PictureFile = z.infer<typeof pictureFileSchema>;

/** A picture of the device itself, whatever is found on it. */
export const keptPictureSchema = z.object({ of: pictureSubjectSchema, ...pictureFileSchema.shape });
export type KeptPicture = z.infer<typeof keptPictureSchema>;

/** A picture of what was seen at one check of an inspection: a finding, or an element of the marking. */
export const findingPictureSchema = z.object({ check: z.string(), ...pictureFileSchema.shape });
export type FindingPicture = z.infer<typeof findingPictureSchema>;

/** A print destination of the station, as it is on record; what its settings mean is for the printing room to say. */
import { z } from 'zod';
import { tagKindSchema } from './tag-content.ts';
import { tagFaceSchema } from './tag-face.ts';

export const printerSchema = z.object({
  printerId: z.string(),
  settings: z.record(z.string(), z.json()),
  /** The kinds of tag that go there unless somebody chooses otherwise. */
  tagKinds: z.array(tagKindSchema),
  /** What is loaded, besides its size. */
  face: tagFaceSchema,
});
export type Printer = z.infer<typeof printerSchema>;

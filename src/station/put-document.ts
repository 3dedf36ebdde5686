/** Puts a document that a window or a terminal gave into the evidence: a PDF as it is, a picture as pictures are kept. */
import { z } from 'zod';
import type { DocumentFile } from '../domain/held/evidence.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { isPdf } from '../ledger/evidence-name.ts';
import type { EvidenceStore } from '../ledger/evidence-store.ts';
import { pictureBase64Schema } from './put-picture.ts';
import { stillPictureOf } from './still-picture.ts';

/** The bytes of a PDF, PNG, JPEG or WebP file; at most 20 MB. */
export const givenDocumentSchema = z.object({
  name: z.string().trim().min(1).max(200),
  contentBase64: pictureBase64Schema,
});
export type GivenDocument = z.output<typeof givenDocumentSchema>;

/** What the event that follows says of each. Refuses with `document-unreadable`. */
export const putDocuments = async (
  evidence: EvidenceStore,
  given: readonly GivenDocument[],
): Promise<DocumentFile[] | Refusal> => {
  const kept: DocumentFile[] = [];
  for (const { name, contentBase64 } of given) {
    const bytes = Buffer.from(contentBase64, 'base64');
    if (isPdf(bytes)) {
      kept.push({
        sha256: await evidence.put(bytes),
        mediaType: 'application/pdf',
        byteLength: bytes.length,
        name,
      });
      continue;
    }
    const still = await stillPictureOf(bytes);
    if (isRefusal(still)) return refusal('document-unreadable', { name }, 'documents');
    const sha256 = await evidence.put(still.bytes);
    kept.push({ sha256, mediaType: still.mediaType, byteLength: still.bytes.length, name });
  }
  return kept;
};

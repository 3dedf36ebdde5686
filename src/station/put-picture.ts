/** Puts a picture that a window or a terminal gave into the evidence, as it is kept. */
import { z } from 'zod';
import type { PictureFile } from '../domain/picture.ts';
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import type { EvidenceStore } from '../ledger/evidence-store.ts';
import { stillPictureOf } from './still-picture.ts';

/** The bytes of a PNG, JPEG or WebP file, base64; at most 20 MB. */
export const pictureBase64Schema = z.base64().max(28_000_000);

/** What the event that follows says of the file. Refuses with `image-unreadable`. */
export const putPicture = async (
  evidence: EvidenceStore,
  pictureBase64: string,
): Promise<PictureFile | Refusal> => {
  const still = await stillPictureOf(Buffer.from(pictureBase64, 'base64'));
  if (isRefusal(still)) return still;
  const { bytes, mediaType, width, height } = still;
  return { sha256: await evidence.put(bytes), mediaType, byteLength: bytes.length, width, height };
};

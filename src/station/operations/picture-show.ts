/** `picture.show`: a picture that is kept, whole, after its bytes were held against its hash. */
import { z } from 'zod';
import { sha256Schema } from '../../domain/picture.ts';
import { refusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const pictureShow = defineOperation({
  name: 'picture.show',
  summary: 'A picture that is kept, whole.',
  kind: 'query',
  access: everyRole,
  input: z.object({ sha256: sha256Schema }),
  output: z.object({ mediaType: z.literal('image/jpeg'), pictureBase64: z.string() }),
  run: async ({ evidence }, { sha256 }) => {
    const bytes = await evidence.get(sha256);
    if (bytes === 'missing') return refusal('picture-missing', { sha256 });
    if (bytes === 'changed') return refusal('picture-changed', { sha256 });
    return { mediaType: 'image/jpeg' as const, pictureBase64: Buffer.from(bytes).toString('base64') };
  },
});

/** `held.document`: a document that is kept with the record of a device or of its fall case. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { sha256Schema } from '../../domain/picture.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { showHeld } from '../show-held.ts';

export const heldDocument = defineOperation({
  name: 'held.document',
  summary: 'A document that is kept with the record of a held device.',
  kind: 'query',
  access: everyRole,
  input: z.object({ benchId: benchIdSchema, sha256: sha256Schema }),
  output: z.object({ name: z.string(), mediaType: z.string(), contentBase64: z.string() }),
  run: async (context, { benchId, sha256 }) => {
    const shown = await showHeld(context, benchId);
    if (isRefusal(shown)) return shown;
    const { evidence, fallCase, scrapped } = shown.held;
    const file = [
      ...evidence.flatMap(({ documents }) => documents),
      ...(fallCase?.photos ?? []),
      ...(scrapped?.photos ?? []),
    ].find((each) => each.sha256 === sha256);
    if (file === undefined) return refusal('document-not-kept', { benchId }, 'sha256');
    const bytes = await context.evidence.get(sha256);
    if (typeof bytes === 'string') return refusal('document-not-whole', { name: file.name }, 'sha256');
    const { name, mediaType } = file;
    return { name, mediaType, contentBase64: Buffer.from(bytes).toString('base64') };
  },
});

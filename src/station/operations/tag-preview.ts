/** `tag.preview`: the tag of a device as it would be printed, symbols read back; nothing is recorded. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { tagContentSchema } from '../../domain/tag-content.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { renderDeviceTag, tagRequestSchema } from '../render-device-tag.ts';

export const tagPreview = defineOperation({
  name: 'tag.preview',
  summary: 'The tag of a device as it would be printed.',
  kind: 'query',
  access: everyRole,
  input: tagRequestSchema,
  output: z.object({
    content: tagContentSchema,
    widthMm: z.number(),
    heightMm: z.number(),
    pngBase64: z.string(),
    pdfBase64: z.string(),
  }),
  run: async (context, request) => {
    const tag = await renderDeviceTag(context, request);
    if (isRefusal(tag)) return tag;
    const { widthMm, heightMm, png, pdf } = tag.rendered;
    return {
      content: tag.content,
      widthMm,
      heightMm,
      pngBase64: Buffer.from(png).toString('base64'),
      pdfBase64: Buffer.from(pdf).toString('base64'),
    };
  },
});

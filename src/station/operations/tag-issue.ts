/** `tag.issue`: gives the tag of a device out: saved as PDF and PNG, recorded with the hash of the PDF, opened for printing. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { reprintReasonSchema, type TagContent } from '../../domain/tag-content.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import { recordIssue, refusedIssue } from '../issue-tag.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { renderDeviceTag, tagRequestSchema } from '../render-device-tag.ts';

export const tagIssue = defineOperation({
  name: 'tag.issue',
  summary: 'Gives the tag of a device out, saved as PDF and PNG.',
  kind: 'command',
  access: everyRole,
  input: tagRequestSchema.extend({
    open: z.boolean().default(false),
    /** Needed where the tag was given out before. */
    reprintBecause: reprintReasonSchema.optional(),
  }),
  output: z.object({
    pdfPath: z.string(),
    pngPath: z.string(),
    /** The texts of the symbols on the tag, read back from its own picture. */
    symbols: z.array(z.object({ symbology: z.string(), text: z.string() })),
    pdfBase64: z.string(),
    opened: z.boolean(),
  }),
  run: async (context, { open, reprintBecause, ...request }) => {
    const tag = await renderDeviceTag(context, request);
    if (isRefusal(tag)) return tag;
    const { content, rendered } = tag;
    const refused = await refusedIssue(context, content, { reprintBecause });
    if (refused !== undefined) return refused;
    const folder = join(context.folder, 'tags');
    const base = join(folder, fileNameOf(content));
    try {
      await mkdir(folder, { recursive: true });
      await writeFile(`${base}.pdf`, rendered.pdf);
      await writeFile(`${base}.png`, rendered.png);
    } catch (error) {
      return storageRefusal(error, folder);
    }
    const recorded = await recordIssue(context, content, rendered.pdf, { reprintBecause });
    if (isRefusal(recorded)) return recorded;
    const opened = open && context.openFile !== undefined;
    if (opened) await context.openFile?.(`${base}.pdf`);
    return {
      pdfPath: `${base}.pdf`,
      pngPath: `${base}.png`,
      symbols: rendered.symbols.map(({ symbology, text }) => ({ symbology, text })),
      pdfBase64: Buffer.from(rendered.pdf).toString('base64'),
      opened,
    };
  },
});

const fileNameOf = (content: TagContent): string =>
  content.kind === 'id'
    ? `${content.benchId}-id`
    : `${content.benchId}-tag-${content.tagNumber}-${content.kind}`;

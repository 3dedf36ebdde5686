/** `tag.issue`: gives the tag of a device out: saved as PDF and PNG, recorded with the hash of the PDF, opened for printing. */
import { createHash } from 'node:crypto';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import type { TagContent } from '../../domain/tag-content.ts';
import { storageRefusal } from '../../ledger/storage-refusal.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';
import { record } from '../record.ts';
import { renderDeviceTag, tagRequestSchema } from '../render-device-tag.ts';

export const tagIssue = defineOperation({
  name: 'tag.issue',
  summary: 'Gives the tag of a device out, saved as PDF and PNG.',
  kind: 'command',
  access: everyRole,
  input: tagRequestSchema.extend({ open: z.boolean().default(false) }),
  output: z.object({
    pdfPath: z.string(),
    pngPath: z.string(),
    /** The texts of the symbols on the tag, read back from its own picture. */
    symbols: z.array(z.object({ symbology: z.string(), text: z.string() })),
    pdfBase64: z.string(),
    opened: z.boolean(),
  }),
  run: async (context, { open, ...request }) => {
    const tag = await renderDeviceTag(context, request);
    if (isRefusal(tag)) return tag;
    const { content, rendered } = tag;
    const folder = join(context.folder, 'tags');
    const base = join(folder, fileNameOf(content));
    try {
      await mkdir(folder, { recursive: true });
      await writeFile(`${base}.pdf`, rendered.pdf);
      await writeFile(`${base}.png`, rendered.png);
    } catch (error) {
      return storageRefusal(error, folder);
    }
    if (content.kind !== 'id') {
      const pdfSha256 = createHash('sha256').update(rendered.pdf).digest('hex');
      const { benchId, tagNumber, kind } = content;
      const result = await record(context, async (reader) => {
        const row = await deviceIn(reader, benchId);
        if (isRefusal(row)) return row;
        return row.device.currentTag?.tagNumber === tagNumber
          ? [{ type: 'tag.issued', benchId, tagNumber, kind, pdfSha256 }]
          : refusal('tag-kind-refused', { benchId, standing: row.device.standing, kind });
      });
      if (isRefusal(result)) return result;
    }
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

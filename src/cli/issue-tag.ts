/** Gives a tag out through the station and copies its files to where the person wants them. */
import { basename, join } from 'node:path';
import type { BenchId } from '../domain/brand.ts';
import type { Language } from '../domain/message.ts';
import type { TagKind } from '../domain/tag-content.ts';
import { readBytes, writeBytes } from './files.ts';
import type { StationCall } from './job.ts';

/** The PDF and the PNG of the tag, in the folder; their paths in that order. */
export const issueTagInto = async (
  call: StationCall,
  tag: { readonly benchId: BenchId; readonly kind: TagKind },
  folder: string,
  language: Language,
): Promise<readonly string[]> => {
  const issued = await call('tag.issue', tag);
  const copied: string[] = [];
  for (const source of [issued.pdfPath, issued.pngPath]) {
    const path = join(folder, basename(source));
    await writeBytes(path, await readBytes(source, language), language);
    copied.push(path);
  }
  return copied;
};

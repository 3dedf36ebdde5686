/** The XML parts of a workbook (ECMA-376 part 2, a zip archive), unpacked within limits whatever the archive claims of itself. */
import { buffer } from 'node:stream/consumers';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import { ZipFile as NewArchive } from 'yazl';
import { mostUnpackedBytes, mostWorkbookParts } from './limits.ts';

/** The archive unpacks to more than the limit: a mistake or a trap. */
export class WorkbookTooLarge extends Error {
  override readonly name = 'WorkbookTooLarge';
}

/** XML parts by their path; throws `WorkbookTooLarge`, or an error of the archive. */
export const unpackWorkbook = async (bytes: Buffer): Promise<ReadonlyMap<string, Buffer>> => {
  const archive = await yauzl.fromBufferPromise(bytes, { lazyEntries: true, validateEntrySizes: true });
  const parts = new Map<string, Buffer>();
  let left = mostUnpackedBytes;
  if (archive.entryCount > mostWorkbookParts) throw new WorkbookTooLarge();
  for await (const entry of archive.eachEntry()) {
    if (!/\.(xml|rels)$/.test(entry.fileName)) continue;
    const part = await unpacked(archive, entry, left);
    left -= part.length;
    parts.set(entry.fileName, part);
  }
  return parts;
};

const unpacked = async (archive: ZipFile, entry: Entry, most: number): Promise<Buffer> => {
  if (entry.uncompressedSize > most) throw new WorkbookTooLarge();
  const stream = await archive.openReadStreamPromise(entry);
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of stream as AsyncIterable<Buffer>) {
    size += chunk.length;
    if (size > most) throw new WorkbookTooLarge();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
};

/** The parts as an archive again, of which nothing but these can be read. */
export const packWorkbook = (parts: ReadonlyMap<string, Buffer>): Promise<Buffer> => {
  const archive = new NewArchive();
  for (const [path, part] of parts) archive.addBuffer(part, path, { compress: false });
  archive.end();
  return buffer(archive.outputStream);
};

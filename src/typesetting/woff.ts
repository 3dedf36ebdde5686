/** A WOFF font file unpacked to the plain font file inside it, so that its tables are inflated once and not at each use. */
import { inflateSync } from 'node:zlib';

const headerBytes = 44;
const entryBytes = 20;

/** By the WOFF 1.0 recommendation of W3C, §3 to §5. Throws where the bytes are not a WOFF file. */
export const unpackWoff = (woff: Uint8Array): Uint8Array => {
  const from = Buffer.from(woff.buffer, woff.byteOffset, woff.byteLength);
  if (from.toString('latin1', 0, 4) !== 'wOFF') throw new Error('not a WOFF file');
  const count = from.readUInt16BE(12);
  const into = Buffer.alloc(from.readUInt32BE(16));
  const entrySelector = Math.floor(Math.log2(count));
  const searchRange = 16 * 2 ** entrySelector;
  from.copy(into, 0, 4, 8);
  into.writeUInt16BE(count, 4);
  into.writeUInt16BE(searchRange, 6);
  into.writeUInt16BE(entrySelector, 8);
  into.writeUInt16BE(16 * count - searchRange, 10);
  let offset = 12 + 16 * count;
  for (let index = 0; index < count; index += 1) {
    const entry = headerBytes + entryBytes * index;
    const start = from.readUInt32BE(entry + 4);
    const packedLength = from.readUInt32BE(entry + 8);
    const length = from.readUInt32BE(entry + 12);
    const stored = from.subarray(start, start + packedLength);
    const table = packedLength < length ? inflateSync(stored) : stored;
    const record = 12 + 16 * index;
    from.copy(into, record, entry, entry + 4);
    from.copy(into, record + 4, entry + 16, entry + 20);
    into.writeUInt32BE(offset, record + 8);
    into.writeUInt32BE(length, record + 12);
    table.copy(into, offset);
    offset += Math.ceil(length / 4) * 4;
  }
  return into;
};

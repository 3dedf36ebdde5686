/** A zip archive written byte by byte (APPNOTE.TXT, PKWARE), so that it can say of itself what no program would write. */
import { crc32, deflateRawSync } from 'node:zlib';

export interface HandEntry {
  readonly name: string | Buffer;
  readonly content: Buffer;
  /** What the archive claims; the truth where absent. */
  readonly claimedBytes?: number;
  /** Of Unix, as in a symbolic link: 0o120777. */
  readonly mode?: number;
  /** The number of an entry whose bytes are this one's too: they overlap. */
  readonly bytesOf?: number;
}

export const zipByHand = (entries: readonly HandEntry[]): Buffer => {
  const local: Buffer[] = [];
  const central: Buffer[] = [];
  const offsets: number[] = [];
  let offset = 0;
  for (const { name, content, claimedBytes, mode = 0o100644, bytesOf } of entries) {
    const path = Buffer.from(name);
    const packed = deflateRawSync(content);
    const sizes = { packed: packed.length, unpacked: claimedBytes ?? content.length };
    const head = Buffer.alloc(30);
    head.writeUInt32LE(0x04034b50, 0);
    head.writeUInt16LE(20, 4);
    head.writeUInt16LE(8, 8);
    head.writeUInt32LE(crc32(content), 14);
    head.writeUInt32LE(sizes.packed, 18);
    head.writeUInt32LE(sizes.unpacked, 22);
    head.writeUInt16LE(path.length, 26);
    const at = bytesOf === undefined ? offset : (offsets[bytesOf] ?? 0);
    offsets.push(at);
    if (bytesOf === undefined) {
      local.push(head, path, packed);
      offset += head.length + path.length + packed.length;
    }
    const listed = Buffer.alloc(46);
    listed.writeUInt32LE(0x02014b50, 0);
    listed.writeUInt16LE(0x0314, 4);
    listed.writeUInt16LE(20, 6);
    listed.writeUInt16LE(8, 10);
    listed.writeUInt32LE(crc32(content), 16);
    listed.writeUInt32LE(sizes.packed, 20);
    listed.writeUInt32LE(sizes.unpacked, 24);
    listed.writeUInt16LE(path.length, 28);
    listed.writeUInt32LE((mode * 0x10000) >>> 0, 38);
    listed.writeUInt32LE(at, 42);
    central.push(listed, path);
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 8);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...local, directory, end]);
};

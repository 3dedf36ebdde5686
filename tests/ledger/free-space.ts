/**
 * Which bytes of an SQLite file hold nothing, after "Database File Format", sqlite.org/fileformat2.html: pages of the freelist
 * (section 1.5), and in b-tree pages the gap before the cells and the freeblocks (section 1.6).
 */

/** 1 for each byte of the file that holds nothing. */
export const freeSpaceOf = (file: Buffer): Uint8Array => {
  const free = new Uint8Array(file.length);
  const declared = file.readUInt16BE(16);
  const pageSize = declared === 1 ? 65_536 : declared;
  for (const page of pagesOfFreelist(file, pageSize)) free.fill(1, (page - 1) * pageSize, page * pageSize);
  for (let start = 0; start < file.length; start += pageSize) {
    if (free[start] === 1) continue;
    for (const [from, to] of gapsOf(file.subarray(start, start + pageSize), start === 0 ? 100 : 0))
      free.fill(1, start + from, start + to);
  }
  return free;
};

/** Trunk pages name their leaves; neither kind holds anything else. */
const pagesOfFreelist = (file: Buffer, pageSize: number): readonly number[] => {
  const pages: number[] = [];
  for (let trunk = file.readUInt32BE(32); trunk !== 0; ) {
    const at = (trunk - 1) * pageSize;
    const count = file.readUInt32BE(at + 4);
    for (let leaf = 0; leaf < count; leaf += 1) pages.push(file.readUInt32BE(at + 8 + leaf * 4));
    pages.push(trunk);
    trunk = file.readUInt32BE(at);
  }
  return pages;
};

const interiorPages = [2, 5];
const leafPages = [10, 13];

/** Overflow pages have no such header; what looks like one of them is taken to hold something everywhere. */
const gapsOf = (page: Buffer, header: number): readonly (readonly [number, number])[] => {
  const kind = page[header] ?? 0;
  if (![...interiorPages, ...leafPages].includes(kind)) return [];
  const headerLength = interiorPages.includes(kind) ? 12 : 8;
  const cells = page.readUInt16BE(header + 3);
  const pointersEnd = header + headerLength + 2 * cells;
  const contentStart = page.readUInt16BE(header + 5);
  if (contentStart < pointersEnd || contentStart > page.length) return [];
  const gaps: [number, number][] = [[pointersEnd, contentStart]];
  for (let block = page.readUInt16BE(header + 1); block !== 0; block = page.readUInt16BE(block)) {
    gaps.push([block + 4, block + page.readUInt16BE(block + 2)]);
  }
  return gaps;
};

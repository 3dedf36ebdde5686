/** Evidence as files: under the hash of their bytes, whole or not at all, and told when they are changed or gone. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmod, mkdir, readdir, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { EvidenceFolder } from '../../src/ledger/evidence-folder.ts';
import { StorageFault } from '../../src/ledger/storage-refusal.ts';
import { requireSmallDisk } from '../support/small-disk.ts';
import { newFolder } from './sqlite-places.ts';

/** The SHA-256 of "abc", FIPS 180-2 appendix B.1. */
const abc = Buffer.from('abc');
const abcSha256 = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

const listed = async (evidence: EvidenceFolder): Promise<readonly string[]> => {
  const found: string[] = [];
  for await (const sha256 of evidence.list()) found.push(sha256);
  return found;
};

describe('an evidence folder', () => {
  let folder: string;
  let evidence: EvidenceFolder;
  const file = () => join(folder, 'evidence', `${abcSha256}.jpg`);
  beforeEach(async () => {
    folder = await newFolder();
    evidence = new EvidenceFolder(folder);
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  it('holds nothing, and is not there, before the first file', async () => {
    expect(await listed(evidence)).toEqual([]);
    expect(await evidence.get(abcSha256)).toBe('missing');
    expect(await readdir(folder)).toEqual([]);
  });

  it('gives back what was put, under the hash of its bytes, also after it was opened anew', async () => {
    expect(await evidence.put(abc)).toBe(abcSha256);
    expect(await readFile(file())).toEqual(abc);
    const again = new EvidenceFolder(folder);
    expect(await again.get(abcSha256)).toEqual(abc);
    expect(await listed(again)).toEqual([abcSha256]);
  });

  it('says how many files it keeps and how much room they take, and counts nothing else that lies there', async () => {
    expect(await evidence.size()).toEqual({ count: 0, bytes: 0 });
    await evidence.put(abc);
    await evidence.put(Buffer.alloc(1000));
    await writeFile(join(folder, 'evidence', 'notes.txt'), 'not a picture');
    expect(await evidence.size()).toEqual({ count: 2, bytes: 1003 });
  });

  it('keeps the same bytes once, however often and however many at a time', async () => {
    await Promise.all([evidence.put(abc), evidence.put(abc), evidence.put(abc)]);
    await evidence.put(abc);
    expect(await readdir(join(folder, 'evidence'))).toEqual([`${abcSha256}.jpg`]);
  });

  it('tells a file that was changed, cut short or taken away', async () => {
    await evidence.put(abc);
    await writeFile(file(), 'abd');
    expect(await evidence.get(abcSha256)).toBe('changed');
    await writeFile(file(), 'abc');
    await truncate(file(), 2);
    expect(await evidence.get(abcSha256)).toBe('changed');
    await rm(file());
    expect(await evidence.get(abcSha256)).toBe('missing');
  });

  it('puts a changed file right when the same bytes are put again', async () => {
    await evidence.put(abc);
    await writeFile(file(), 'abd');
    await evidence.put(abc);
    expect(await evidence.get(abcSha256)).toEqual(abc);
  });

  it('names a file after what it is, and finds a document under the name that earlier versions gave it', async () => {
    const at = (name: string) => join(folder, 'evidence', name);
    const pdf = Buffer.from('%PDF-1.7\n1 0 obj\nendobj\n%%EOF\n');
    const sha256 = createHash('sha256').update(pdf).digest('hex');
    await mkdir(join(folder, 'evidence'));
    await writeFile(at(`${sha256}.jpg`), pdf);
    expect(await evidence.get(sha256)).toEqual(pdf);
    await evidence.put(pdf);
    expect(await readdir(join(folder, 'evidence'))).toEqual([`${sha256}.jpg`]);
    await rm(at(`${sha256}.jpg`));
    await evidence.put(pdf);
    await evidence.put(abc);
    expect((await readdir(join(folder, 'evidence'))).sort()).toEqual(
      [`${sha256}.pdf`, `${abcSha256}.jpg`].sort(),
    );
    expect(await evidence.get(sha256)).toEqual(pdf);
    expect((await listed(evidence)).toSorted()).toEqual([sha256, abcSha256].sort());
  });

  it('puts a document right that was changed under its earlier name, and has it once', async () => {
    const at = (name: string) => join(folder, 'evidence', name);
    const pdf = Buffer.from('%PDF-1.7\n1 0 obj\nendobj\n%%EOF\n');
    const sha256 = createHash('sha256').update(pdf).digest('hex');
    await mkdir(join(folder, 'evidence'));
    await writeFile(at(`${sha256}.jpg`), 'changed');
    expect(await evidence.get(sha256)).toBe('changed');
    await evidence.put(pdf);
    expect(await readdir(join(folder, 'evidence'))).toEqual([`${sha256}.pdf`]);
    await writeFile(at(`${sha256}.jpg`), pdf);
    expect(await listed(evidence)).toEqual([sha256]);
    expect(await evidence.size()).toEqual({ count: 1, bytes: pdf.length });
  });

  it('lists no file that was left unfinished, and no other', async () => {
    await evidence.put(abc);
    await writeFile(join(folder, 'evidence', '0b6c.part'), 'half of someth');
    await writeFile(join(folder, 'evidence', 'notes.txt'), 'of a person');
    expect(await listed(evidence)).toEqual([abcSha256]);
  });

  it('where it cannot be made says which folder, and leaves nothing behind', async () => {
    await writeFile(join(folder, 'evidence'), 'a file in its place');
    const fault = await evidence.put(abc).catch((error: unknown) => error);
    expect(fault).toBeInstanceOf(StorageFault);
    expect(fault).toMatchObject({ refusal: { code: 'folder-not-writable' } });
  });

  it('without the right to write refuses', async (context) => {
    await mkdir(join(folder, 'evidence'));
    await chmod(join(folder, 'evidence'), 0o555);
    if (process.getuid?.() === 0) {
      const disk = await requireSmallDisk(context, 64);
      try {
        disk.remount('ro');
        const refused = new EvidenceFolder(disk.folder).put(abc);
        await expect(refused).rejects.toMatchObject({ refusal: { code: 'folder-not-writable' } });
      } finally {
        await disk.remove();
      }
    } else {
      await expect(evidence.put(abc)).rejects.toMatchObject({ refusal: { code: 'folder-not-writable' } });
    }
    await chmod(join(folder, 'evidence'), 0o755);
  });

  it('on a full disk refuses, leaves no part of the file, and keeps it once there is room', async (context) => {
    const disk = await requireSmallDisk(context, 256);
    try {
      const small = new EvidenceFolder(disk.folder);
      await small.put(abc);
      await writeFile(join(disk.folder, 'fill'), Buffer.alloc(160 * 1024));
      const large = Buffer.alloc(128 * 1024, 7);
      await expect(small.put(large)).rejects.toMatchObject({ refusal: { code: 'disk-full' } });
      expect(await readdir(join(disk.folder, 'evidence'))).toEqual([`${abcSha256}.jpg`]);
      await rm(join(disk.folder, 'fill'));
      const sha256 = await small.put(large);
      const file = join(disk.folder, 'evidence', `${sha256}.jpg`);
      expect(execFileSync('sha256sum', [file], { encoding: 'utf8' })).toContain(sha256);
    } finally {
      await disk.remove();
    }
  });
});

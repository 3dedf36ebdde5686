import { chmod, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import { describe, expect, test } from 'vitest';
import { folderSettingsSchema } from '../../src/printing/destination-settings.ts';
import { FolderDestination } from '../../src/printing/folder/folder-destination.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { testFolder } from './debian-printers.ts';
import { stock, tagJob } from './sample-job.ts';

const destination = (folder: string, changes: object = {}): FolderDestination =>
  new FolderDestination(
    folderSettingsSchema.parse({ kind: 'folder', name: 'Files', stock, folder, ...changes }),
  );

describe('a folder', () => {
  test('gets the document and the picture as they are, and nothing else', async () => {
    const folder = await testFolder();
    const job = await tagJob(300);
    const outcome = await destination(folder).print(job);
    expect(outcome).toMatchObject({ printed: true, confirmed: true, format: 'application/pdf' });
    expect((await readdir(folder)).sort()).toEqual(['Status tag.pdf', 'Status tag.png']);
    expect(Buffer.compare(await readFile(join(folder, 'Status tag.pdf')), Buffer.from(job.pdf))).toBe(0);
    expect(Buffer.compare(await readFile(join(folder, 'Status tag.png')), Buffer.from(job.png))).toBe(0);
  });

  test('never loses a file that is there, even when many jobs of one title come at once', async () => {
    const folder = await testFolder();
    await writeFile(join(folder, 'Status tag.pdf'), 'somebody else’s');
    const desk = destination(folder, { withPicture: false });
    const job = await tagJob(300);
    const outcomes = await Promise.all(Array.from({ length: 8 }, () => desk.print(job)));
    expect(outcomes.every((outcome) => 'printed' in outcome)).toBe(true);
    const names = await readdir(folder);
    expect(names).toHaveLength(9);
    expect(await readFile(join(folder, 'Status tag.pdf'), 'utf8')).toBe('somebody else’s');
    const others = names.filter((name) => name !== 'Status tag.pdf');
    for (const name of others) {
      expect(Buffer.compare(await readFile(join(folder, name)), Buffer.from(job.pdf))).toBe(0);
    }
  });

  test('takes a title with characters that no file may have', async () => {
    const folder = await testFolder();
    const job = { ...(await tagJob(300)), title: '../../etc/tag: "A\u0000B"?' };
    expect(await destination(folder, { withPicture: false }).print(job)).toMatchObject({ printed: true });
    expect(await readdir(folder)).toHaveLength(1);
  });

  test('that is not there is said to be missing, and a file is no folder', async () => {
    const folder = await testFolder();
    const missing = destination(join(folder, 'gone'));
    expect((await missing.check()).problem?.code).toBe('printer-folder-missing');
    expect(await missing.print(await tagJob(300))).toMatchObject({
      refused: true,
      code: 'printer-folder-missing',
    });
    await writeFile(join(folder, 'file'), '');
    expect((await destination(join(folder, 'file')).check()).problem?.code).toBe('printer-folder-missing');
  });

  test.runIf(process.getuid?.() !== 0)('that cannot be written says so', async () => {
    const folder = await testFolder();
    await chmod(folder, 0o500);
    expect((await destination(folder).check()).problem?.code).toBe('printer-folder-unwritable');
  });

  test.runIf(requireTool('pdftotext'))(
    'gets the document moved by the offset, its page of the same size',
    async () => {
      const folder = await testFolder();
      const job = await tagJob(300);
      const [plain, moved] = [destination(folder), destination(folder, { offset: { xMm: 2, yMm: -1 } })];
      await plain.print({ ...job, title: 'plain' });
      await moved.print({ ...job, title: 'moved' });
      const page = (await PDFDocument.load(await readFile(join(folder, 'moved.pdf')))).getPage(0);
      // 100 × 50 mm in points of 1/72 in.
      expect([page.getWidth(), page.getHeight()].map(Math.round)).toEqual([283, 142]);
      const firstWord = (name: string): [number, number] => {
        const [, x, y] = /<word xMin="([\d.]+)" yMin="([\d.]+)"/.exec(
          runTool('pdftotext', ['-bbox', join(folder, name), '-']),
        )!;
        return [Number(x), Number(y)];
      };
      const [from, to] = [firstWord('plain.pdf'), firstWord('moved.pdf')];
      // 2 mm = 5.669 pt to the right; 1 mm = 2.835 pt up. pdftotext measures from the top left.
      expect(to[0] - from[0]).toBeCloseTo(5.669, 2);
      expect(to[1] - from[1]).toBeCloseTo(-2.835, 2);
    },
  );
});

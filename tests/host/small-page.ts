/** A page as small as can be, in the place of the built one. */
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type RendererFiles, readRendererFiles } from '../../src/host/renderer-files.ts';

export const temporaryFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'srl-bench-test-'));

export const smallPage = async (): Promise<RendererFiles> => {
  const folder = await temporaryFolder();
  await mkdir(join(folder, 'assets'));
  const page =
    '<!doctype html><html><head><script type="module" src="./assets/page.js"></script></head><body><div id="root"></div></body></html>';
  await writeFile(join(folder, 'index.html'), page);
  await writeFile(join(folder, 'assets', 'page.js'), 'document.title = "small page";');
  await writeFile(join(folder, 'assets', 'notes.unknown'), 'not of a kind that is served');
  const files = await readRendererFiles(folder);
  if (files === undefined) throw new Error('The small page was not read.');
  return files;
};

/** The product's own files: whether each that the station needs is there, and the typeface as it was shipped. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { AssetFaults } from '../../domain/health/judge-machine.ts';

/** Folders of which every file is data that the station reads. */
const dataFolders = [
  'desk',
  'drawings',
  'export',
  'import',
  'messages/en',
  'messages/es',
  'procedures',
  'programs',
  'programs/release',
];

/** `HASH  NAME` a line, as `sha256sum` writes it. */
export const fontHashesName = 'SHA256SUMS';

export const checkAssets = async (assetsFolder: string): Promise<AssetFaults> => {
  const faulty: string[] = [];
  let looked = 0;
  const check = async (name: string, isSound: (content: Buffer) => boolean): Promise<void> => {
    looked += 1;
    const content = await readFile(join(assetsFolder, name)).catch(() => undefined);
    if (content === undefined || !isSound(content)) faulty.push(name);
  };
  for (const folder of dataFolders) {
    const names = await readdir(join(assetsFolder, folder)).catch(() => []);
    const files = names.filter((name) => name.endsWith('.json') || name.endsWith('.txt'));
    if (files.length === 0) faulty.push(folder);
    for (const name of files)
      await check(`${folder}/${name}`, name.endsWith('.json') ? isJson : (content) => content.length > 0);
  }
  const hashes = await readFile(join(assetsFolder, 'fonts', fontHashesName), 'utf8').catch(() => '');
  const lines = hashes.split('\n').flatMap((line) => /^([0-9a-f]{64}) [ *](\S+)\r?$/.exec(line) ?? []);
  if (lines.length === 0) faulty.push(`fonts/${fontHashesName}`);
  for (let at = 0; at < lines.length; at += 3)
    await check(`fonts/${lines[at + 2]}`, (content) => sha256(content) === lines[at + 1]);
  return { looked, faulty };
};

const isJson = (content: Buffer): boolean => {
  try {
    JSON.parse(content.toString('utf8'));
    return true;
  } catch {
    return false;
  }
};

const sha256 = (content: Buffer): string => createHash('sha256').update(content).digest('hex');

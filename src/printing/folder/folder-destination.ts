/** A folder as a print destination: the document, and its dots where asked for, appear there complete and under a free name. */
import { randomBytes } from 'node:crypto';
import { access, constants, link, open, rename, stat, unlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Refusal, refusal } from '../../domain/refusal.ts';
import type { Destination, PrinterState, PrintJob, PrintOptions, PrintOutcome } from '../destination.ts';
import type { FolderSettings } from '../destination-settings.ts';
import { pdfOf } from '../moved-pdf.ts';

export class FolderDestination implements Destination {
  readonly #settings: FolderSettings;

  constructor(settings: FolderSettings) {
    this.#settings = settings;
  }

  async check(): Promise<PrinterState> {
    const { folder } = this.#settings;
    try {
      if (!(await stat(folder)).isDirectory()) throw Object.assign(new Error(folder), { code: 'ENOTDIR' });
      await access(folder, constants.W_OK | constants.X_OK);
      return { condition: 'idle', reasons: [] };
    } catch (error) {
      return { condition: 'stopped', reasons: [], problem: this.#refusalOf(error) };
    }
  }

  /** Takes any size. Other files are left as they are: where the name is taken, a number follows it. */
  async print(job: PrintJob, { signal, onState }: PrintOptions = {}): Promise<PrintOutcome> {
    if (signal?.aborted === true) return refusal('printer-job-canceled', { printer: this.#settings.name });
    const { folder, withPicture } = this.#settings;
    const name = fileName(job.title);
    const files: string[] = [];
    try {
      const pdf = await pdfOf(job, this.#settings);
      files.push(await writeNew(folder, name, '.pdf', pdf));
      if (withPicture) files.push(await writeNew(folder, name, '.png', job.png));
    } catch (error) {
      await Promise.all(files.map((file) => unlink(file).catch(() => undefined)));
      return this.#refusalOf(error);
    }
    onState?.({ state: 'completed' });
    return { printed: true, format: 'application/pdf', confirmed: true, files };
  }

  #refusalOf(error: unknown): Refusal {
    const { folder, name } = this.#settings;
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    switch (code) {
      case 'ENOENT':
      case 'ENOTDIR':
        return refusal('printer-folder-missing', { printer: name, folder });
      case 'ENOSPC':
      case 'EDQUOT':
        return refusal('printer-folder-full', { printer: name, folder });
      case undefined:
        throw error;
      default:
        return refusal('printer-folder-unwritable', { printer: name, folder });
    }
  }
}

/** Characters that Windows forbids in names become a hyphen; 120 characters at most. */
const fileName = (title: string): string =>
  title
    .replaceAll(/[\p{Cc}<>:"/\\|?*]+/gu, '-')
    .slice(0, 120)
    .replace(/^[. ]+|[. ]+$/g, '') || 'print';

const writeNew = async (
  folder: string,
  name: string,
  extension: string,
  bytes: Uint8Array,
): Promise<string> => {
  const temporary = join(folder, `.${randomBytes(8).toString('hex')}.part`);
  await writeFile(temporary, bytes, { flag: 'wx', flush: true });
  try {
    for (let number = 1; ; number += 1) {
      const path = join(folder, `${name}${number === 1 ? '' : ` (${number})`}${extension}`);
      if (await claim(temporary, path)) return path;
    }
  } finally {
    await unlink(temporary).catch(() => undefined);
  }
};

/** False where the name is taken. A second link never replaces a file; a file system without links reserves the name first. */
const claim = async (temporary: string, path: string): Promise<boolean> => {
  try {
    await link(temporary, path);
    return true;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'EEXIST') return false;
    if (code !== 'EPERM' && code !== 'ENOTSUP' && code !== 'ENOSYS' && code !== 'EINVAL') throw error;
  }
  try {
    await (await open(path, 'wx')).close();
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
  await rename(temporary, path);
  return true;
};

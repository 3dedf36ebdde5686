/** Printing with what the operating system has for it: its print dialog for the page, its viewer for a PDF. */
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { shell, type WebContents } from 'electron';
import type { ShellAnswer } from '../src/station/shell-bridge.ts';

/** Electron's word for a dialog that a person closed (from memory: `print_view_manager_base.cc` of Chromium's Electron patches). */
const canceled = /cancell?ed/i;

/** Only what the dialog says was printed counts as printed. */
export const printPage = (contents: WebContents): Promise<ShellAnswer> =>
  new Promise((resolve) =>
    contents.print({ silent: false, printBackground: true }, (success, failureReason) =>
      resolve(
        success ? { ok: true } : { ok: false, why: canceled.test(failureReason) ? 'canceled' : 'failed' },
      ),
    ),
  );

/** PDFs that a page showed, kept until the program ends: a viewer may read them late. */
export class ShownDocuments {
  readonly #folder: string;
  #last = 0;

  constructor(folder: string) {
    this.#folder = join(folder, 'shown');
  }

  /** A sandboxed page has no viewer of its own that prints in true size; the system's has. */
  async open(fileName: string, pdfBase64: string): Promise<ShellAnswer> {
    const pdf = Buffer.from(pdfBase64, 'base64');
    if (pdf.subarray(0, 5).toString('latin1') !== '%PDF-') return { ok: false, why: 'refused' };
    this.#last += 1;
    const folder = join(this.#folder, String(this.#last));
    const path = join(folder, fileName);
    try {
      await mkdir(folder, { recursive: true });
      await writeFile(path, pdf, { mode: 0o600 });
    } catch {
      return { ok: false, why: 'failed' };
    }
    const fault = await shell.openPath(path);
    return fault === '' ? { ok: true } : { ok: false, why: 'failed' };
  }

  /** At the start and at the end. What a viewer still holds stays for the next time. */
  async clear(): Promise<void> {
    await rm(this.#folder, { recursive: true, force: true }).catch(() => undefined);
  }
}

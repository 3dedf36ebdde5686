/** Shows a PDF where it can be printed: in the viewer of the PC, from a browser window in a tab; saves it where neither can be had. */
import { isInShell, openPdfInShell } from './shell-bridge.ts';

/** The address is given free after a minute, when the viewer has long read it. */
const keptMs = 60_000;

export const openPdf = (pdfBase64: string, fileName: string): void => {
  if (isInShell()) void openInShellOrSave(pdfBase64, fileName);
  else if (window.open(addressOf(pdfBase64), '_blank') === null) save(pdfBase64, fileName);
};

const openInShellOrSave = async (pdfBase64: string, fileName: string): Promise<void> => {
  if (!(await openPdfInShell(pdfBase64, fileName))) save(pdfBase64, fileName);
};

const save = (pdfBase64: string, fileName: string): void => {
  const link = document.createElement('a');
  link.href = addressOf(pdfBase64);
  link.download = fileName;
  link.click();
};

const addressOf = (pdfBase64: string): string => {
  const bytes = Uint8Array.from(atob(pdfBase64), (character) => character.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
  window.setTimeout(() => URL.revokeObjectURL(address), keptMs);
  return address;
};

/** Shows a PDF in a window of its own, from where it can be printed; saves it where no window may open. */

/** The address is given free after a minute, when the viewer has long read it. */
const keptMs = 60_000;

export const openPdf = (pdfBase64: string, fileName: string): void => {
  const bytes = Uint8Array.from(atob(pdfBase64), (character) => character.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
  window.setTimeout(() => URL.revokeObjectURL(address), keptMs);
  if (window.open(address, '_blank') !== null) return;
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
};

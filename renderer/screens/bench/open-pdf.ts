/** Opens a PDF that the station handed over in a new tab or window, from which it can be printed. */

/** The address is given free after a minute, when the viewer has long read it. */
const keptMs = 60_000;

export const openPdf = (base64: string): void => {
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
  window.open(address, '_blank', 'noopener');
  window.setTimeout(() => URL.revokeObjectURL(address), keptMs);
};

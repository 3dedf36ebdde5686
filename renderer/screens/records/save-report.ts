/** Shows a report that was made in a window that cannot open files of the station: a PDF in a tab, a list as a download. */
import { call } from '../../station/client.ts';
import { openPdf } from '../../station/open-pdf.ts';

/** The address is given free after a minute, when the browser has long read it. */
const keptMs = 60_000;

export const saveReport = async (job: number): Promise<void> => {
  const file = await call('report.file', { job });
  if (!file.ok) return;
  const { fileName, contentBase64 } = file.output;
  if (fileName.endsWith('.pdf')) return openPdf(contentBase64, fileName);
  const bytes = Uint8Array.from(atob(contentBase64), (character) => character.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/octet-stream' }));
  window.setTimeout(() => URL.revokeObjectURL(address), keptMs);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
};

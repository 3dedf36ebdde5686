/** The page's way to the desktop shell, and the only one that knows of it; in a browser window the browser does what it can instead. */
import type { Language } from '../../src/domain/message.ts';
import type { ShellAct, ShellBridge, ShellNews, ShellState } from '../../src/station/shell-bridge.ts';

declare global {
  interface Window {
    /** Put there by the preload of the desktop shell. */
    readonly srlBench?: ShellBridge;
  }
}

export const isInShell = (): boolean => window.srlBench !== undefined;

/** Carries a call to the station; `undefined` in a browser window, which has the loopback host for it. */
export const callThroughShell = (
  operation: string,
  input: unknown,
  language: Language,
): Promise<unknown> | undefined => window.srlBench?.call(operation, input, language);

/** What the shell says of the PC and of the window; `undefined` in a browser window. */
export const shellState = async (): Promise<ShellState | undefined> => {
  const state = await ask({ act: 'look' });
  return state !== undefined && 'onBattery' in state ? state : undefined;
};

/** Told of every news of the shell; none come in a browser window. */
export const onShellNews = (listener: (news: ShellNews) => void): void => window.srlBench?.onNews(listener);

/** The menu and the boxes of the shell speak what the page speaks. */
export const tellLanguage = (language: Language): void => void ask({ act: 'speak', language });

/** The page as it is, through the dialog of the operating system or of the browser. */
export const printPage = async (): Promise<void> => {
  if ((await ask({ act: 'print-page' })) === undefined) window.print();
};

/** Has the PC show a PDF; false in a browser window, and where the PC has nothing that shows it. */
export const openPdfInShell = async (pdfBase64: string, fileName: string): Promise<boolean> => {
  const answer = await ask({ act: 'open-pdf', fileName, pdfBase64 });
  return answer !== undefined && 'ok' in answer && answer.ok;
};

const ask = async (act: ShellAct): Promise<Awaited<ReturnType<ShellBridge['act']>> | undefined> => {
  try {
    return await window.srlBench?.act(act);
  } catch {
    return { ok: false, why: 'failed' };
  }
};

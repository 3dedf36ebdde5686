/** The PC and the program on it: runtime, shell, browser, page, the product's own files, memory. */
import { type Finding, finding } from './finding.ts';
import { thresholds } from './thresholds.ts';

/** In what the station runs: a window of the desktop shell, the loopback host for browsers, or a command. */
export type ShellKind = 'electron' | 'browser' | 'terminal';

/** What the shell or the host knows of the PC. */
export interface Machine {
  readonly shell: ShellKind;
  readonly nodeVersion: string;
  /** The least version that the product asks for, as `20.19`. */
  readonly nodeWanted: string;
  /** Of the runtime that the station runs in; absent outside Electron. */
  readonly electronVersion?: string | undefined;
  /** Electron's runtime lies on this PC. */
  readonly hasElectronRuntime: boolean;
  /** The path of the browser that a window would open in; absent where there is none. */
  readonly browser?: string | undefined;
  readonly isPageBuilt: boolean;
}

export const judgeRuntime = ({ nodeVersion, nodeWanted }: Machine): Finding => {
  const values = { version: nodeVersion, wanted: nodeWanted };
  return isAtLeast(nodeVersion, nodeWanted)
    ? finding('runtime', 'good', 'node-good', values)
    : finding('runtime', 'wrong', 'node-old', values);
};

/** Numbers parted by full stops, compared one by one; what follows them does not count. */
export const isAtLeast = (version: string, wanted: string): boolean => {
  const [have, need] = [version, wanted].map((text) => (text.match(/\d+/g) ?? []).map(Number));
  for (const [index, least] of (need ?? []).entries()) {
    const part = have?.[index] ?? 0;
    if (part !== least) return part > least;
  }
  return true;
};

export const judgeShell = ({ shell, electronVersion, hasElectronRuntime }: Machine): Finding => {
  switch (shell) {
    case 'electron':
      return finding('shell', 'good', 'shell-electron', { version: electronVersion ?? '' });
    case 'browser':
      return finding('shell', 'good', hasElectronRuntime ? 'shell-browser' : 'shell-browser-no-electron');
    case 'terminal':
      return finding('shell', 'good', hasElectronRuntime ? 'shell-terminal' : 'shell-terminal-no-electron');
  }
};

export const judgeBrowser = ({ browser, hasElectronRuntime }: Machine): Finding => {
  if (browser !== undefined)
    return finding('browser', 'good', 'browser-found', { browser: { private: browser } });
  return finding('browser', 'attention', hasElectronRuntime ? 'browser-none' : 'no-window');
};

export const judgePage = ({ isPageBuilt, shell }: Machine): Finding => {
  if (isPageBuilt) return finding('page', 'good', 'page-built');
  return finding('page', shell === 'terminal' ? 'attention' : 'wrong', 'page-not-built');
};

export interface AssetFaults {
  /** How many files of the product were looked at. */
  readonly looked: number;
  /** Files of the product that are missing, empty, changed or not to be read, by their names below `assets`. */
  readonly faulty: readonly string[];
}

export const judgeAssets = ({ looked, faulty }: AssetFaults): Finding =>
  faulty.length === 0
    ? finding('assets', 'good', 'assets-good', { count: looked })
    : finding('assets', 'wrong', 'assets-faulty', {
        count: faulty.length,
        files: faulty.slice(0, 5).join(', '),
      });

export interface Memory {
  /** Of the process of the station. */
  readonly usedBytes: number;
  /** Of the PC, for all programs. */
  readonly freeBytes: number;
}

export const judgeMemory = ({ usedBytes, freeBytes }: Memory): Finding => {
  const values = { used: megabytes(usedBytes), free: megabytes(freeBytes) };
  if (freeBytes < thresholds.memory.attentionFreeBytes)
    return finding('memory', 'attention', 'memory-short', values);
  return usedBytes > thresholds.memory.attentionBytes
    ? finding('memory', 'attention', 'memory-large', values)
    : finding('memory', 'good', 'memory-good', values);
};

/** Whole megabytes, of a million bytes each. */
export const megabytes = (bytes: number): number => Math.round(bytes / 1_000_000);

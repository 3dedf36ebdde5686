/** Scans as the screens get them: what was read, what it means here, and who is asked first what to do with it. */
import { createContext, useContext, useLayoutEffect, useRef } from 'react';
import type { CommandName } from '../../src/domain/command-symbol.ts';
import type { KeyboardFault } from '../../src/domain/scanner/keystroke.ts';
import type { OutputOf } from '../../src/station/contract.ts';

export type ScanMeaning = OutputOf<'scan.interpret'>;

type TagJudgement = NonNullable<Extract<ScanMeaning, { meaning: 'device' }>['tag']>;

/** True of a scanned tag that belonged on its device once and does not any more. */
export const isPast = (
  tag: TagJudgement | undefined,
): tag is Extract<TagJudgement, { state: 'superseded' | 'void' }> =>
  tag?.state === 'superseded' || tag?.state === 'void';

/** True of the tag that belongs on its device, was printed, and was never scanned before. */
export const isUnproved = (tag: TagJudgement | undefined): boolean =>
  tag?.state === 'current' && tag.tag.printed > 0 && tag.tag.provedOn === undefined;

export interface Scan {
  readonly text: string;
  readonly meaning: ScanMeaning;
  /** True where a person typed it into the scan field. */
  readonly typed: boolean;
}

/** True where the scan is dealt with; false hands it to the handler that was mounted before. */
export type ScanHandler = (scan: Scan) => boolean;

/**
 * `window` is asked last: what the window does with a scan that no screen and no dialog wants. `witness` is told of every
 * scan before anybody is asked, and takes none. While there is a `lock`, every scan is its, and nobody else is told.
 */
export type ScanLayer = 'window' | 'screen' | 'witness' | 'lock';

/** `no end`: the scanner sends neither Enter nor Tab after a code. */
export type ScanNotice = KeyboardFault | 'no end';

export interface ScanReading {
  /** The latest text that was read. */
  readonly last?: string | undefined;
  readonly isReading: boolean;
  /** Why the latest text could not be understood, in a sentence. */
  readonly error?: string | undefined;
  /** What is wrong with the scanner or the keyboard, although the text may have been understood. */
  readonly notice?: ScanNotice | undefined;
}

/** True where the key is taken, and goes nowhere else. */
export type KeyListener = (event: KeyboardEvent) => boolean;

export interface ScanBoard {
  /** Adds a handler; what is returned takes it away. */
  add(handler: { readonly current: ScanHandler }, layer: ScanLayer): () => void;
  /** Reads a text as if it had been scanned; `typed` lets a bench ID with errors be repaired to a suggestion. */
  submit(text: string, typed: boolean): void;
  /** Acts as if that symbol of the command sheet had been scanned. */
  press(command: CommandName): void;
  /** Takes what is said of the scanner off the screen. */
  dismissNotice(): void;
  /** Hands every key to the listener instead, so that a scanner is learnt; what is returned ends that. */
  listenToKeys(listener: KeyListener): () => void;
}

export const ScanBoardContext = createContext<ScanBoard>({
  add: () => () => undefined,
  submit: () => undefined,
  press: () => undefined,
  dismissNotice: () => undefined,
  listenToKeys: () => () => undefined,
});
export const ScanReadingContext = createContext<ScanReading>({ isReading: false });

export const useScanBoard = (): ScanBoard => useContext(ScanBoardContext);
export const useScanReading = (): ScanReading => useContext(ScanReadingContext);

/**
 * Asks `handler` about each scan from the moment that the component is seen, the most recently mounted first. A digit key struck by
 * hand outside a text field arrives like the digit of the command sheet: `{ meaning: 'command', command: '3' }`.
 */
export const useScanHandler = (handler: ScanHandler, layer: ScanLayer = 'screen'): void => {
  const board = useScanBoard();
  const latest = useRef(handler);
  useLayoutEffect(() => {
    latest.current = handler;
  });
  useLayoutEffect(() => board.add(latest, layer), [board, layer]);
};

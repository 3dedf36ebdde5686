/** One stroke of a key, down and up, by the clock of its own event (`Input.dispatchKeyEvent`, Chrome DevTools Protocol). */
import type { CDPSession } from 'playwright-core';

export interface KeyStroke {
  readonly key: string;
  readonly code?: string;
  /** What it writes; absent for a key that writes nothing. */
  readonly text?: string;
  /** Bits: 2 for Ctrl, 8 for Shift. */
  readonly modifiers: number;
  readonly windowsVirtualKeyCode?: number;
}

export const dispatchKey = async (session: CDPSession, stroke: KeyStroke, atMs: number): Promise<void> => {
  const { text, ...key } = stroke;
  const event = { ...key, timestamp: atMs / 1000 };
  await Promise.all([
    session.send('Input.dispatchKeyEvent', {
      type: text === undefined ? 'rawKeyDown' : 'keyDown',
      ...event,
      ...(text === undefined ? {} : { text }),
    }),
    session.send('Input.dispatchKeyEvent', { type: 'keyUp', ...event }),
  ]);
};

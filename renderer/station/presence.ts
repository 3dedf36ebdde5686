/** Tells the loopback host that this window is there, hidden or not, and that it closes; the shell sees its windows itself. */
import { isInShell } from './shell-bridge.ts';

/** The host waits for a minute and a half. */
const everyMs = 30_000;

/** A window that only loads itself anew is heard of again at once. */
export const tellPresence = (): void => {
  if (isInShell()) return;
  window.setInterval(() => void navigator.sendBeacon('/here'), everyMs);
  window.addEventListener('pagehide', () => void navigator.sendBeacon('/leave'));
};

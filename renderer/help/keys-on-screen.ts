/** Which keys and symbols work on what is shown: read off the marks of the screen itself, so that no second list can differ. */

export interface KeyHere {
  /** The digit or the letter that stands on it. */
  readonly key: string;
  /** What it does, as its button says it. */
  readonly does: string;
}

/** Of the dialog that is open on top, else of the whole window. Each key once, digits first. */
export const keysOnScreen = (): readonly KeyHere[] => {
  const dialogs = document.querySelectorAll('[role="dialog"], [role="alertdialog"]');
  const shown: ParentNode = dialogs.item(dialogs.length - 1) ?? document;
  const found = new Map<string, string>();
  for (const mark of shown.querySelectorAll<HTMLElement>('[data-key]')) {
    const key = mark.dataset.key ?? '';
    const does = wordsBeside(mark);
    if (does !== '' && !found.has(key) && isShown(mark)) found.set(key, does);
  }
  return [...found]
    .map(([key, does]) => ({ key, does }))
    .toSorted((a, b) => a.key.localeCompare(b.key, 'en', { numeric: true }));
};

const isShown = (element: HTMLElement): boolean => element.getClientRects().length > 0;

/** What stands on the same button, label or line, without the marks themselves. */
const wordsBeside = (mark: HTMLElement): string => {
  const host = mark.closest('button, label, a, li, p, td') ?? mark.parentElement;
  if (host === null) return '';
  const copy = host.cloneNode(true);
  if (!(copy instanceof HTMLElement)) return '';
  for (const other of copy.querySelectorAll('[data-key], svg')) other.remove();
  return (host.getAttribute('aria-label') ?? copy.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
};

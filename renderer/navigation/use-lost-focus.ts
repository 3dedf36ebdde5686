/** Gives the focus to a part of the screen whenever what had it went away, so that it is never nowhere. */
import { type RefObject, useEffect } from 'react';

/** A screen that came before its parts holds the focus for them. */
export const useLostFocus = (part: RefObject<HTMLElement | null>): void => {
  useEffect(() => {
    const focused = document.activeElement;
    if (focused === document.body || focused?.id === 'screen') part.current?.focus({ preventScroll: true });
  });
};

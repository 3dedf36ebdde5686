/** Gives the focus to a part of the screen whenever what had it went away, so that it is never nowhere. */
import { type RefObject, useEffect } from 'react';

export const useLostFocus = (part: RefObject<HTMLElement | null>): void => {
  useEffect(() => {
    if (document.activeElement === document.body) part.current?.focus({ preventScroll: true });
  });
};

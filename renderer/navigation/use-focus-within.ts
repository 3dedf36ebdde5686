/** Puts the focus on the first matching element of a part of the screen when that part appears. */
import { type RefObject, useEffect, useRef } from 'react';

export const useFocusWithin = <Part extends HTMLElement>(selector: string): RefObject<Part | null> => {
  const part = useRef<Part>(null);
  useEffect(() => {
    part.current?.querySelector<HTMLElement>(selector)?.focus();
  }, [selector]);
  return part;
};

/** Where a screen went away with what had the focus, the next one has it, so that Tab and a screen reader go on from there. */
import { useEffect, useRef } from 'react';

export const useFocusOnScreen = (screen: string): void => {
  const shown = useRef(screen);
  useEffect(() => {
    if (shown.current === screen) return;
    shown.current = screen;
    if (document.activeElement === document.body) document.getElementById('screen')?.focus();
  }, [screen]);
};

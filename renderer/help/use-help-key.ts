/** F1 anywhere, and `?` where no field has the focus: a `?` counts once it is let go of and no scanner has gone on typing. */
import { useEffect } from 'react';
import { settleMs } from '../scan/wedge.ts';

const questionMark = '?';

export const useHelpKey = (open: () => void): void => {
  useEffect(() => {
    let isArmed = false;
    let timer: number | undefined;
    const onKeyDown = (event: KeyboardEvent): void => {
      window.clearTimeout(timer);
      isArmed = event.key === questionMark && !isInField() && !event.repeat;
      if (event.key !== 'F1') return;
      event.preventDefault();
      open();
    };
    const onKeyUp = (event: KeyboardEvent): void => {
      if (event.key !== questionMark || !isArmed) return;
      isArmed = false;
      timer = window.setTimeout(open, settleMs);
    };
    window.addEventListener('keydown', onKeyDown, { capture: true });
    window.addEventListener('keyup', onKeyUp, { capture: true });
    return () => {
      window.clearTimeout(timer);
      window.removeEventListener('keydown', onKeyDown, { capture: true });
      window.removeEventListener('keyup', onKeyUp, { capture: true });
    };
  }, [open]);
};

const isInField = (): boolean =>
  document.activeElement?.matches('input, textarea, select, [contenteditable]') === true;

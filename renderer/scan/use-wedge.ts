/** Listens to the keyboard of the window for a scanner that types, wherever the focus is. */
import { useEffect } from 'react';
import { type FieldSnapshot, restore, snapshotOf, takesKeys, takesText } from './field-snapshot.ts';
import { noBurst, pressKey, settleMs } from './wedge.ts';

export type DigitCommand = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9';

export interface WedgeListener {
  onScan(text: string): void;
  /** A digit that a person struck outside a text field. */
  onDigit(digit: DigitCommand): void;
}

/** `listener` must stay the same object while the component is mounted. */
export const useWedge = (listener: WedgeListener): void => {
  useEffect(() => {
    let burst = noBurst;
    let before: FieldSnapshot | undefined;
    let digitTimer: number | undefined;

    const onKeyDown = (event: KeyboardEvent): void => {
      window.clearTimeout(digitTimer);
      const isShortcut =
        (event.ctrlKey || event.altKey || event.metaKey) && !event.getModifierState('AltGraph');
      if (isShortcut) {
        burst = noBurst;
        return;
      }
      const focused = document.activeElement;
      const pressed = pressKey(burst, event.key, event.timeStamp);
      burst = pressed.burst;
      switch (pressed.decision.kind) {
        case 'first':
          before = takesKeys(focused) ? snapshotOf(focused) : undefined;
          if (!takesKeys(focused) && isDigit(event.key)) {
            const digit = event.key;
            digitTimer = window.setTimeout(() => listener.onDigit(digit), settleMs);
          }
          return;
        case 'burst':
          if (!takesText(focused)) stop(event);
          return;
        case 'scan':
          stop(event);
          if (before !== undefined) restore(before);
          before = undefined;
          listener.onScan(pressed.decision.text);
          return;
        case 'other':
          return;
      }
    };

    window.addEventListener('keydown', onKeyDown, { capture: true });
    return () => {
      window.clearTimeout(digitTimer);
      window.removeEventListener('keydown', onKeyDown, { capture: true });
    };
  }, [listener]);
};

const isDigit = (key: string): key is DigitCommand => /^[0-9]$/.test(key);

const stop = (event: KeyboardEvent): void => {
  event.preventDefault();
  event.stopImmediatePropagation();
};

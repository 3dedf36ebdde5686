/** Listens to the keyboard of the window for a scanner that types, wherever the focus is. */
import { useEffect } from 'react';
import type { Scanner } from '../../src/domain/scanner/scanner.ts';
import { type FieldSnapshot, restore, snapshotOf, takesKeys, takesText } from './field-snapshot.ts';
import type { KeyListener } from './scan.ts';
import { AltNumber, struckKeyOf } from './struck-key.ts';
import {
  type Burst,
  lacksEnd,
  noBurst,
  personMaxLength,
  pressKey,
  type StruckKey,
  settledScan,
  settleMs,
  type WedgeScan,
} from './wedge.ts';

export type DigitCommand = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9';

export interface WedgeListener {
  /**
   * `giveBack` puts the first so many of its characters back where they were typed, for they were a person's; false where
   * they were typed nowhere, or somebody typed on since.
   */
  onScan(scan: WedgeScan, giveBack: (characters: number) => boolean): void;
  /** A digit that a person struck outside a text field. */
  onDigit(digit: DigitCommand): void;
  /** Something typed like a scanner, and nothing ended it. */
  onNoEnd(): void;
}

/** How the field was before each of the first characters of a burst, and how it is after the last. */
interface Typed {
  readonly before: readonly FieldSnapshot[];
  readonly after: FieldSnapshot;
}

interface Current<Value> {
  readonly current: Value | undefined;
}

/** All three must stay the same objects while the component is mounted. The key listener, where there is one, is asked first. */
export const useWedge = (
  listener: WedgeListener,
  scanner: Current<Scanner>,
  keyListener: Current<KeyListener>,
): void => {
  useEffect(() => {
    const altNumber = new AltNumber();
    let burst: Burst = noBurst;
    let before: readonly FieldSnapshot[] = [];
    let timer: number | undefined;

    const givenBackFrom =
      (typed: Typed | undefined) =>
      (characters: number): boolean => {
        if (typed === undefined || typed.after.field.value !== typed.before[0]?.value) return false;
        restore(typed.before[characters] ?? typed.after);
        return true;
      };
    const takeScan = (scan: WedgeScan): void => {
      const [first] = before;
      const typed = first === undefined ? undefined : { before, after: snapshotOf(first.field) };
      before = [];
      burst = noBurst;
      if (first !== undefined) restore(first);
      listener.onScan(scan, givenBackFrom(typed));
    };
    /** Keys of a person that were held back lest they be a scanner's. */
    const handOnDigits = (): void => {
      const keys = burst.map(({ text }) => text);
      if (before.length > 0 || keys.length > personMaxLength) return;
      const digits = keys.filter(isDigit);
      if (digits.length < keys.length) return;
      burst = noBurst;
      for (const digit of digits) listener.onDigit(digit);
    };
    const settle = (): void => {
      const scan = settledScan(burst, scanner.current);
      if (scan !== undefined) takeScan(scan);
      else if (lacksEnd(burst)) listener.onNoEnd();
      handOnDigits();
    };
    const remember = (): void => {
      const focused = document.activeElement;
      if (takesKeys(focused) && before.length <= personMaxLength) before = [...before, snapshotOf(focused)];
    };

    const take = (key: StruckKey, event: KeyboardEvent): void => {
      window.clearTimeout(timer);
      const previous = burst;
      const pressed = pressKey(burst, key, scanner.current);
      const isOver = pressed.burst.length < 2 && pressed.decision.kind !== 'scan';
      if (isOver && pressed.burst !== previous) handOnDigits();
      burst = pressed.burst;
      switch (pressed.decision.kind) {
        case 'first':
          before = [];
          remember();
          timer = window.setTimeout(settle, settleMs);
          return;
        case 'burst':
          remember();
          timer = window.setTimeout(settle, settleMs);
          if (event.ctrlKey || !takesText(document.activeElement)) stop(event);
          return;
        case 'scan':
          stop(event);
          takeScan(pressed.decision.scan);
          return;
        case 'other':
          if (burst.length > 0) timer = window.setTimeout(settle, settleMs);
          return;
      }
    };

    const onKeyDown = (event: KeyboardEvent): void => {
      if (keyListener.current?.(event) === true) {
        burst = noBurst;
        stop(event);
      } else if (!altNumber.press(event)) take(event.repeat ? { kind: 'breaks' } : struckKeyOf(event), event);
    };
    const onKeyUp = (event: KeyboardEvent): void => {
      const text = altNumber.release(event);
      if (text === undefined) return;
      const stroke = { text, code: '', shift: false, capsLock: false, at: event.timeStamp };
      take({ kind: 'writes', stroke }, event);
    };

    window.addEventListener('keydown', onKeyDown, { capture: true });
    window.addEventListener('keyup', onKeyUp, { capture: true });
    return () => {
      window.clearTimeout(timer);
      window.removeEventListener('keydown', onKeyDown, { capture: true });
      window.removeEventListener('keyup', onKeyUp, { capture: true });
    };
  }, [listener, scanner, keyListener]);
};

const isDigit = (key: string): key is DigitCommand => /^[0-9]$/.test(key);

const stop = (event: KeyboardEvent): void => {
  event.preventDefault();
  event.stopImmediatePropagation();
};

/** Lets the keys on the buttons press them: a letter counts once it is let go of and no scanner has gone on typing. */
import { useEffect } from 'react';
import type { CommandName } from '../../../src/domain/command-symbol.ts';
import { useScanBoard } from '../../scan/scan.ts';
import { settleMs } from '../../scan/wedge.ts';
import { commandOfKey, type FocusPlace, mayBeginScan, reachesWalk } from './shortcut.ts';

export const useShortcuts = (): void => {
  const { press } = useScanBoard();
  useEffect(() => {
    let armed: string | undefined;
    let timer: number | undefined;
    const disarm = (): void => {
      window.clearTimeout(timer);
      armed = undefined;
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      disarm();
      if (event.repeat || event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return;
      const command = commandOfKey(event.key);
      if (command === undefined || !reachesWalk(command, focusPlace())) return;
      if (mayBeginScan(event.key)) armed = event.key;
      else press(command);
    };
    const onKeyUp = (event: KeyboardEvent): void => {
      window.clearTimeout(timer);
      const command: CommandName | undefined = event.key === armed ? commandOfKey(event.key) : undefined;
      armed = undefined;
      if (command !== undefined) timer = window.setTimeout(() => press(command), settleMs);
    };
    window.addEventListener('keydown', onKeyDown);
    window.addEventListener('keyup', onKeyUp, { capture: true });
    return () => {
      disarm();
      window.removeEventListener('keydown', onKeyDown);
      window.removeEventListener('keyup', onKeyUp, { capture: true });
    };
  }, [press]);
};

const focusPlace = (): FocusPlace => {
  const focused = document.activeElement;
  if (document.querySelector('[role="dialog"], [role="alertdialog"]') !== null) return 'dialog';
  if (focused?.matches('input[inputmode="numeric"]') === true) return 'digit field';
  if (focused?.matches('input, textarea, select') === true) return 'text field';
  return focused?.matches('button, a, [role="slider"], [role="button"]') === true ? 'control' : 'page';
};

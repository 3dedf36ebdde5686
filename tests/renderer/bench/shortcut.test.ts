import { describe, expect, it } from 'vitest';
import { pinAfter } from '../../../renderer/screens/bench/pin-entry.ts';
import {
  commandOfKey,
  letterOf,
  mayBeginScan,
  reachesWalk,
} from '../../../renderer/screens/bench/shortcut.ts';

describe('the keys of the walk', () => {
  it('do what stands on the buttons, in small and capital letters', () => {
    expect(commandOfKey('g')).toBe('good');
    for (const command of ['good', 'defect', 'next', 'back'] as const) {
      expect(commandOfKey(letterOf[command])).toBe(command);
      expect(commandOfKey(letterOf[command].toLowerCase())).toBe(command);
    }
  });

  it('leave digits to the scan listener', () => {
    for (const digit of '0123456789') expect(commandOfKey(digit)).toBeUndefined();
  });

  it('wait for what follows where a scan may begin with them, and only there', () => {
    expect(mayBeginScan('g')).toBe(true);
    expect(mayBeginScan('Escape')).toBe(false);
    expect(mayBeginScan('Enter')).toBe(false);
  });

  it('write into a text field instead of answering; only Escape reaches the walk from there', () => {
    expect(reachesWalk('good', 'text field')).toBe(false);
    expect(reachesWalk('confirm', 'text field')).toBe(false);
    expect(reachesWalk('erase', 'text field')).toBe(false);
    expect(reachesWalk('cancel', 'text field')).toBe(true);
  });

  it('leave Enter to the button that has the focus', () => {
    expect(reachesWalk('confirm', 'control')).toBe(false);
    expect(reachesWalk('good', 'control')).toBe(true);
  });

  it('do nothing to the walk behind a dialog', () => {
    expect(reachesWalk('good', 'dialog')).toBe(false);
    expect(reachesWalk('cancel', 'dialog')).toBe(false);
  });
});

describe('a PIN from the command sheet', () => {
  it('grows by digits, is shortened by Erase and begun anew by Cancel', () => {
    expect(pinAfter('27', '1')).toBe('271');
    expect(pinAfter('271', 'erase')).toBe('27');
    expect(pinAfter('271', 'cancel')).toBe('');
  });

  it('takes nothing else', () => {
    expect(pinAfter('27', 'good')).toBeUndefined();
    expect(pinAfter('27', 'next')).toBeUndefined();
  });
});

/** Whether this window shows nothing but its lock, for those that listen to the whole window. */

import { restore } from '../scan/field-snapshot.ts';

const mark = 'locked';

export const isWindowLocked = (): boolean => mark in document.documentElement.dataset;

/** A PIN that waits to be signed with must not wait for whoever comes with the badge. */
const emptyPinFields = (): void => {
  for (const field of document.querySelectorAll<HTMLInputElement>('input[type="password"]'))
    restore({ field, value: '', selection: undefined });
};

/** Hides everything but the lock, dialogs too; what is returned shows it again as it was, but for PINs. */
export const hideWindow = (): (() => void) => {
  emptyPinFields();
  document.documentElement.dataset[mark] = '';
  return () => {
    delete document.documentElement.dataset[mark];
  };
};

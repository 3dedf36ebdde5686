/** Number fields that are filled from the command sheet: Next and Back go from one to the other; digits, the point and Erase write. */
import type { RefObject } from 'react';
import { useScanHandler } from '../../scan/scan.ts';

export interface ScannedField {
  readonly value: string;
  change(value: string): void;
}

/** `fields` are the first fields of the form, in their order. What is selected in one is replaced, as when somebody types. */
export const useFieldsByScan = (
  form: RefObject<HTMLFormElement | null>,
  fields: readonly ScannedField[],
): void => {
  useScanHandler(({ meaning }) => {
    if (meaning.meaning !== 'command' || form.current === null) return false;
    const { command } = meaning;
    const inputs = [...form.current.querySelectorAll('input')].slice(0, fields.length);
    const focused = document.activeElement;
    const at = focused instanceof HTMLInputElement ? inputs.indexOf(focused) : -1;
    if (command === 'confirm') {
      form.current.requestSubmit();
      return true;
    }
    if (command === 'next' || command === 'back') {
      const to = inputs.at(command === 'next' ? (at + 1) % inputs.length : Math.max(at, 0) - 1);
      to?.focus();
      to?.select();
      return true;
    }
    const written = writtenBy(command);
    if (written === undefined) return false;
    const field = fields[Math.max(at, 0)];
    const input = inputs[Math.max(at, 0)];
    if (field === undefined || input === undefined) return false;
    const isWhole = at < 0 || (input.selectionStart === 0 && input.selectionEnd === input.value.length);
    const before = isWhole ? '' : field.value;
    input.focus();
    field.change(written === 'erase' ? before.slice(0, -1) : `${before}${written}`);
    return true;
  });
};

const writtenBy = (command: string): string | undefined => {
  if (command === 'erase') return command;
  if (command === 'point') return '.';
  return /^\d$/.test(command) ? command : undefined;
};

/** The rules of print destinations. */
import type { Station } from '../evolve.ts';
import type { Printer } from '../printer.ts';
import { refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** People choose a printer by its name, so no two have the same one. */
export const decideSavePrinter = ({ printers }: Station, printer: Printer): Decision => {
  const name = String(printer.settings.name ?? '');
  const twin = printers.find(
    (other) =>
      other.printerId !== printer.printerId &&
      String(other.settings.name ?? '').toLowerCase() === name.toLowerCase(),
  );
  return twin === undefined
    ? [{ type: 'printer.saved', printer }]
    : refusal('printer-name-taken', { name }, 'settings.name');
};

export const decideRemovePrinter = ({ printers }: Station, printerId: string): Decision =>
  printers.some((printer) => printer.printerId === printerId)
    ? [{ type: 'printer.removed', printerId }]
    : refusal('printer-not-known', { printerId }, 'printerId');

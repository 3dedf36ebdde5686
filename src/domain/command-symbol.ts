/**
 * The symbols of the command sheet, with which a gloved hand drives the screens by scanner alone: answers, and the ways to
 * the screens that can be gone to from everywhere, and to the help of whatever is on the screen.
 *
 * Letters and digits only, so that a keyboard scanner types them alike on every keyboard layout.
 */
import type { Message } from './message.ts';

/** The screens that can be gone to from everywhere. */
export const placeNames = [
  'start',
  'desk',
  'bench',
  'held',
  'register',
  'schedule',
  'records',
  'setup',
] as const;
export type PlaceName = (typeof placeNames)[number];

export const commandNames = [
  'good',
  'defect',
  'next',
  'back',
  'confirm',
  'cancel',
  'point',
  'erase',
  'picture',
  '0',
  '1',
  '2',
  '3',
  '4',
  '5',
  '6',
  '7',
  '8',
  '9',
  ...placeNames,
  'help',
] as const;
export type CommandName = (typeof commandNames)[number];

export interface CommandSymbol {
  readonly name: CommandName;
  readonly text: string;
  readonly label: Message;
}

const words: Record<CommandName, Message> = {
  good: { en: 'Good', es: 'Bien' },
  defect: { en: 'Defect', es: 'Defecto' },
  next: { en: 'Next', es: 'Siguiente' },
  back: { en: 'Back', es: 'Atrás' },
  confirm: { en: 'Confirm', es: 'Confirmar' },
  cancel: { en: 'Cancel', es: 'Cancelar' },
  point: { en: 'Decimal point', es: 'Coma decimal' },
  erase: { en: 'Erase', es: 'Borrar' },
  picture: { en: 'Picture', es: 'Foto' },
  0: { en: '0', es: '0' },
  1: { en: '1', es: '1' },
  2: { en: '2', es: '2' },
  3: { en: '3', es: '3' },
  4: { en: '4', es: '4' },
  5: { en: '5', es: '5' },
  6: { en: '6', es: '6' },
  7: { en: '7', es: '7' },
  8: { en: '8', es: '8' },
  9: { en: '9', es: '9' },
  start: { en: 'Start', es: 'Inicio' },
  desk: { en: 'Desk', es: 'Mostrador' },
  bench: { en: 'Bench', es: 'Banco' },
  held: { en: 'Held', es: 'Retenidos' },
  register: { en: 'Register', es: 'Registro' },
  schedule: { en: 'Schedule', es: 'Agenda' },
  records: { en: 'Records', es: 'Historial' },
  setup: { en: 'Setup', es: 'Ajustes' },
  help: { en: 'Help', es: 'Ayuda' },
};

export const commandSymbols: readonly CommandSymbol[] = commandNames.map((name) => ({
  name,
  text: `XC${name.toUpperCase()}`,
  label: words[name],
}));

const namesByText: ReadonlyMap<string, CommandName> = new Map(
  commandSymbols.map(({ text, name }) => [text, name]),
);

export const readCommandSymbol = (text: string): CommandName | undefined =>
  namesByText.get(text.trim().toUpperCase());

export const placeOf = (command: CommandName): PlaceName | undefined =>
  placeNames.find((name) => name === command);

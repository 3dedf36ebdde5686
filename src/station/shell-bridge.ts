/** What the page and the desktop shell say to each other besides the calls of the contract; a browser window has none of it. */
import { z } from 'zod';
import { type Language, languageSchema } from '../domain/message.ts';

/** A PDF is no larger than the largest input of the contract as base64. */
const base64Limit = 28_000_000;

/** What the page may ask of the shell. */
export const shellActSchema = z.discriminatedUnion('act', [
  /** The page speaks this language now; so do the menu and the boxes. */
  z.strictObject({ act: z.literal('speak'), language: languageSchema }),
  /** How things stand, asked once when the page has come up. */
  z.strictObject({ act: z.literal('look') }),
  /** The desk in a window of its own. */
  z.strictObject({ act: z.literal('open-desk') }),
  /** The page as it is, through the dialog of the operating system. */
  z.strictObject({ act: z.literal('print-page') }),
  /** A PDF in the program that the PC shows PDF with, from where it can be printed in its true size. */
  z.strictObject({
    act: z.literal('open-pdf'),
    fileName: z.string().regex(/^[\w-]{1,80}\.pdf$/),
    pdfBase64: z.base64().max(base64Limit),
  }),
]);
export type ShellAct = z.output<typeof shellActSchema>;

export type ShellAnswer =
  | { readonly ok: true }
  | { readonly ok: false; readonly why: 'refused' | 'canceled' | 'failed' };

export interface ShellState {
  /** The page broke down and was loaded anew; said once. */
  readonly wasRecovered: boolean;
  readonly onBattery: boolean;
}

/** What the shell tells the page without being asked. */
export type ShellNews =
  /** Another day may have come, or another person: what is on the screen is asked for anew. */
  { readonly news: 'look-again' } | { readonly news: 'power'; readonly onBattery: boolean };

/** What the preload gives to the page as `window.srlBench`. */
export interface ShellBridge {
  call(operation: string, input: unknown, language: Language): Promise<unknown>;
  act(act: ShellAct): Promise<ShellAnswer | ShellState>;
  /** One listener; a further one takes its place. */
  onNews(listener: (news: ShellNews) => void): void;
}

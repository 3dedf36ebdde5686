/** What the shell was started with. */
import { type Language, languages } from '../src/domain/message.ts';

export interface StartOptions {
  readonly data: string | undefined;
  readonly language: Language | undefined;
  /** The window of the bench fills the screen. */
  readonly isKiosk: boolean;
  /** The desk comes up in a window of its own. */
  readonly hasDesk: boolean;
  /** Whoever started the shell is told how it went, and speaks to the person. */
  readonly reports: boolean;
}

/** What is not known is left to Electron and Chromium, whose own switches stand among ours. */
export const startOptions = (args: readonly string[]): StartOptions => {
  const after = (name: string): string | undefined => {
    const index = args.indexOf(name);
    return index < 0 ? undefined : args[index + 1];
  };
  const asked = after('--language');
  return {
    data: after('--data'),
    language: languages.find((language) => language === asked),
    isKiosk: args.includes('--kiosk'),
    hasDesk: args.includes('--desk'),
    reports: args.includes('--report'),
  };
};

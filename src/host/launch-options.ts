/** The options of `npm start`, which has no commands. Read by hand: what reads schemas takes longer to load than a window to begin. */
import { parseArgs } from 'node:util';
import type { Language } from '../domain/message.ts';

export interface LaunchOptions {
  readonly data?: string | undefined;
  readonly port?: number | undefined;
  readonly language?: Language | undefined;
  readonly kiosk: boolean;
  readonly desk: boolean;
  readonly 'headless-check': boolean;
  readonly help: boolean;
}

/** `undefined` where an option is unknown or has no sensible value. */
export const readLaunchOptions = (args: readonly string[]): LaunchOptions | undefined => {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        data: { type: 'string' },
        port: { type: 'string' },
        language: { type: 'string' },
        kiosk: { type: 'boolean', default: false },
        desk: { type: 'boolean', default: false },
        'headless-check': { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    const { port, language, ...others } = values;
    if (!isLanguage(language) || !isPort(port)) return undefined;
    return { ...others, language, port: port === undefined ? undefined : Number(port) };
  } catch {
    return undefined;
  }
};

const isLanguage = (text: string | undefined): text is Language | undefined =>
  text === undefined || text === 'en' || text === 'es';

/** A TCP port, RFC 9293 §3.1: 16 bits; 0 takes any that is free. */
const isPort = (text: string | undefined): boolean =>
  text === undefined || (/^\d{1,5}$/.test(text) && Number(text) <= 65_535);

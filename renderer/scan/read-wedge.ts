/** What a scan of the wedge means: the first of its possible texts that the station knows. */
import { readCommandSymbol } from '../../src/domain/command-symbol.ts';
import { type KeyboardFault, readKeystrokes } from '../../src/domain/scanner/keystroke.ts';
import { type Scanner, withoutAffixes } from '../../src/domain/scanner/scanner.ts';
import type { CallError } from '../../src/station/contract.ts';
import { call } from '../station/client.ts';
import type { ScanMeaning } from './scan.ts';
import type { WedgeScan } from './wedge.ts';

export interface WedgeReading {
  readonly text: string;
  /** What must have gone wrong on the way if that is the text. */
  readonly fault?: KeyboardFault;
  /** The leading characters that were a person's, and are no part of it. */
  readonly lead: number;
}

/** All of its possible texts, the likeliest first; those without a person's leading keys last. Each text once. */
export const readingsOf = ({ keys, lead }: WedgeScan, scanner?: Scanner): readonly WedgeReading[] => {
  const starts = lead === 0 ? [0] : [0, lead];
  const all = starts.flatMap((start) =>
    readKeystrokes(keys.slice(start), scanner?.usesUsPlaces).map(({ text, ...fault }) => ({
      text: scanner === undefined ? text : withoutAffixes(text, scanner),
      ...fault,
      lead: start,
    })),
  );
  return all.filter(({ text }, index) => all.findIndex((other) => other.text === text) === index);
};

/** Command symbols are known without asking. At an empty station every other text is unknown, and the set-up takes badges. */
export const meaningOf = async (text: string, typed: boolean): Promise<ScanMeaning | CallError> => {
  const command = readCommandSymbol(text);
  if (command !== undefined) return { meaning: 'command', command };
  const result = await call('scan.interpret', { text, typed });
  if (result.ok) return result.output;
  return result.error.code === 'station-not-set-up' ? { meaning: 'unknown', text } : result.error;
};

interface Read {
  readonly reading: WedgeReading;
  readonly meaning: ScanMeaning | CallError;
}

/** How far the station understood a text: something that it knows, a maker's symbol that it does not know, or nothing. */
const understood = ({ meaning }: Read): 0 | 1 | 2 => {
  if (!('meaning' in meaning) || meaning.meaning === 'malformed') return 0;
  if (meaning.meaning !== 'unknown') return 2;
  return meaning.data === undefined ? 0 : 1;
};

/** The text that the station understood furthest, the likelier one where two are alike. */
export const meaningOfReadings = async (readings: readonly WedgeReading[]): Promise<Read | undefined> => {
  let best: Read | undefined;
  for (const reading of readings) {
    const read = { reading, meaning: await meaningOf(reading.text, false) };
    if (best === undefined || understood(read) > understood(best)) best = read;
    if (understood(best) === 2) break;
  }
  return best;
};

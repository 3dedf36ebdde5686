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

const isKnown = (meaning: ScanMeaning | CallError): meaning is ScanMeaning =>
  'meaning' in meaning && meaning.meaning !== 'unknown' && meaning.meaning !== 'malformed';

/** Where the station knows none of the texts, the first one stands, with the answer to it. */
export const meaningOfReadings = async (
  readings: readonly WedgeReading[],
): Promise<{ readonly reading: WedgeReading; readonly meaning: ScanMeaning | CallError } | undefined> => {
  let unknown: { reading: WedgeReading; meaning: ScanMeaning | CallError } | undefined;
  for (const reading of readings) {
    const meaning = await meaningOf(reading.text, false);
    if (isKnown(meaning)) return { reading, meaning };
    unknown ??= { reading, meaning };
  }
  return unknown;
};

/** The answer of a label printer to the question how it is. */

/** Source of the fields: "ZPL II Programming Guide", ~HS, Host Status Return. */
export interface HostStatus {
  /** Keywords of `printer-state-reasons` (RFC 8011 §5.4.12). */
  readonly reasons: readonly string[];
  readonly formatsInBuffer: number;
  readonly labelsRemaining: number;
  readonly partialFormat: boolean;
}

const startOfText = '\u0002';
const endOfText = '\u0003';

/** Three strings, each between STX and ETX; undefined until all three are there. */
export const readHostStatus = (answer: string): HostStatus | undefined => {
  const strings = answer
    .split(endOfText)
    .slice(0, -1)
    .map((string) => string.slice(string.lastIndexOf(startOfText) + 1).split(','));
  const [first, second, third] = strings;
  if (first === undefined || second === undefined || third === undefined) return undefined;
  if (first.length < 12 || second.length < 11) return undefined;
  const set = (fields: readonly string[], index: number) => fields[index]?.trim() === '1';
  const flags: readonly (readonly [string, boolean])[] = [
    ['media-empty', set(first, 1)],
    ['paused', set(first, 2)],
    ['spool-area-full', set(first, 5)],
    ['fuser-under-temp', set(first, 10)],
    ['fuser-over-temp', set(first, 11)],
    ['cover-open', set(second, 2)],
    ['marker-supply-empty', set(second, 3)],
  ];
  return {
    reasons: flags.filter(([, on]) => on).map(([keyword]) => keyword),
    formatsInBuffer: Number(first[4]),
    labelsRemaining: Number(second[8]),
    partialFormat: set(first, 7),
  };
};

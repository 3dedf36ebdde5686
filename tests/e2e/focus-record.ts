/** The order of focus on many screens as a text that is read by people and compared by a test. */
import type { FocusStop } from './focus-round.ts';

export interface ScreenOrder {
  readonly screen: string;
  readonly stops: readonly FocusStop[];
}

/** Stops of one role in one list that are written out; of more there is only their number, for they go on alike. */
const writtenOfList = 4;
/** What is the same on most screens is written out once. */
const around: readonly string[] = ['other', 'banner', 'navigation'];

export const focusRecord = (screens: readonly ScreenOrder[]): string => {
  const knownAround = new Map<string, string>();
  return screens
    .map(({ screen, stops }) => {
      const first = stops.findIndex(({ region }) => !around.includes(region));
      const head = linesOf(first < 0 ? stops : stops.slice(0, first));
      const rest = linesOf(first < 0 ? [] : stops.slice(first));
      const asOn = knownAround.get(head.join('\n'));
      if (asOn === undefined) knownAround.set(head.join('\n'), screen);
      const written =
        asOn === undefined || head.length === 0 ? head : [`as on “${asOn}” in banner and navigation`];
      return [`# ${screen}`, ...[...written, ...rest].map((line) => `  ${line}`), ''].join('\n');
    })
    .join('\n');
};

const linesOf = (stops: readonly FocusStop[]): readonly string[] => {
  const lines: string[] = [];
  for (let from = 0; from < stops.length; ) {
    const { list, region } = stops[from] as FocusStop;
    const next = stops.findIndex(
      (stop, index) => index > from && (stop.list !== list || stop.region !== region),
    );
    const until = next < 0 ? stops.length : next;
    const together = stops.slice(from, until);
    const isLong = list !== undefined && together.length > 2 * writtenOfList;
    lines.push(...(isLong ? together.slice(0, writtenOfList) : together).map(lineOf));
    if (isLong) lines.push(`${region}: ${together.length - writtenOfList} more in the same list`);
    from = until;
  }
  return lines;
};

/** What may be different in every run, and what stands for it: bench IDs are drawn, and long numbers count or go by the clock. */
const ofThisRun: readonly (readonly [RegExp, string])[] = [
  [/\b[0-9A-HJKMNP-TV-Z]{5}-[0-9A-HJKMNP-TV-Z]{5}/g, 'BENCH-ID'],
  [/\d{3,}/g, '000'],
];

const lineOf = ({ region, role, name }: FocusStop): string => {
  const same = ofThisRun.reduce((text, [pattern, instead]) => text.replaceAll(pattern, instead), name);
  return `${region}: ${role} “${same}”`;
};

/** The order of focus on many screens as a text that is read by people and compared by a test. */
import type { FocusStop } from './focus-round.ts';

export interface ScreenOrder {
  readonly screen: string;
  readonly stops: readonly FocusStop[];
}

/** Stops of one role in one list that are written out; of more there is only that they are there, for they go on alike. */
const writtenOfList = 4;

export const focusRecord = (screens: readonly ScreenOrder[]): string =>
  screens.map(({ screen, stops }) => recordOfScreen(screen, stops)).join('\n');

/** What a screen has besides what stands around it. */
export const recordOfScreen = (screen: string, stops: readonly FocusStop[]): string => {
  const own = stops.filter((stop) => !isAround(stop));
  return [`# ${screen}`, ...linesOf(own).map((line) => `  ${line}`), ''].join('\n');
};

/** The text as it was recorded, by screen. */
export const recordedScreens = (text: string): ReadonlyMap<string, string> =>
  new Map(
    text
      .split(/^(?=# )/m)
      .map((part): [string, string] => [/^# (.*)$/m.exec(part)?.[1] ?? '', `${part.trimEnd()}\n`]),
  );

/** What stands around a screen, in its order; a screen may lack some of it. */
const orderAround: readonly RegExp[] = [
  /^Skip to the screen$/,
  /^Scan field/,
  /^Camera$/,
  /^Sign out$/,
  /^Help$/,
  /^Show in Spanish/,
  /^Dark screen$/,
  /^Start$/,
  /^Desk$/,
  /^Bench$/,
  /^Held$/,
  /^Register$/,
  /^Schedule$/,
  /^Records$/,
  /^Setup$/,
];

const placeAround = ({ name }: FocusStop): number => orderAround.findIndex((each) => each.test(name));

const isAround = (stop: FocusStop): boolean =>
  stop.region === 'banner' ||
  (stop.region === 'navigation' && stop.role === 'link') ||
  (stop.region === 'other' && placeAround(stop) >= 0);

/** What stands around the screen and is not known, or comes in another order. */
export const faultsAround = (stops: readonly FocusStop[]): readonly string[] => {
  const around = stops.filter(isAround);
  return around.flatMap((stop, index) => {
    const place = placeAround(stop);
    if (place < 0) return [`not known around the screens: ${lineOf(stop)}`];
    const before = around[index - 1];
    return before !== undefined && placeAround(before) >= place
      ? [`out of the order around the screens: ${lineOf(stop)}`]
      : [];
  });
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
    if (isLong) lines.push(`${region}: more in the same list`);
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

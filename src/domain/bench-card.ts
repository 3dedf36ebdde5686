/** What stands on the card beside the bench: the cautions, and the order of the inspection with the caution where the hand is. */
import type { Message } from './message.ts';
import { languages } from './message.ts';
import type { Procedure } from './procedure.ts';

export interface BenchCardStep {
  /** The checks of one part of the device, in one line. */
  readonly checks: Message;
  readonly cautions: readonly Message[];
}

export interface BenchCard {
  /** As `v2`. */
  readonly version: string;
  readonly cautions: readonly Message[];
  readonly steps: readonly BenchCardStep[];
}

/** Checks that follow one another in a zone are one step; a caution stands once in it. */
export const benchCardOf = ({ version, cautions, checks }: Procedure): BenchCard => {
  const steps: { zone: string; titles: Message[]; cautions: Message[] }[] = [];
  for (const { zone, title, caution } of checks) {
    const last = steps.at(-1);
    const step = last?.zone === zone ? last : { zone, titles: [], cautions: [] };
    if (step !== last) steps.push(step);
    step.titles.push(title);
    if (caution !== undefined && !step.cautions.some(({ en }) => en === caution.en))
      step.cautions.push(caution);
  }
  const general = new Set(cautions.map(({ en }) => en));
  return {
    version: `v${version}`,
    cautions,
    steps: steps.map((step) => ({
      checks: inOneLine(step.titles),
      cautions: step.cautions.filter(({ en }) => !general.has(en)),
    })),
  };
};

const inOneLine = (titles: readonly Message[]): Message =>
  Object.fromEntries(
    languages.map((language) => [language, withoutRepeats(titles.map((title) => title[language]))]),
  ) as Message;

/** `Upper hook: gate`, `Upper hook: swivel` become `Upper hook: gate · swivel`. */
const withoutRepeats = (titles: readonly string[]): string =>
  titles
    .map((title, index) => {
      const [subject = '', ...rest] = title.split(': ');
      const [before = ''] = titles[index - 1]?.split(': ') ?? [];
      return index > 0 && rest.length > 0 && subject === before ? rest.join(': ') : title;
    })
    .join(' · ');

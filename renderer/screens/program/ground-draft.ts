/** The grounds on which a device is taken out of service at once: the trade's, which stay, and the employer's own. */
import type { RemovalGround } from '../../../src/domain/program.ts';

/** Those of the program, with what it lacks of the trade's; the trade's first and in their order. */
export const groundsOf = (
  grounds: readonly RemovalGround[],
  ofTrade: readonly RemovalGround[],
): readonly RemovalGround[] => [
  ...ofTrade.map((ground) => grounds.find(({ key }) => key === ground.key) ?? ground),
  ...grounds.filter(({ key }) => !isOfTrade(key, ofTrade)),
];

export const isOfTrade = (key: string, ofTrade: readonly RemovalGround[]): boolean =>
  ofTrade.some((ground) => ground.key === key);

/** In the employer's own words, so in both languages alike. */
export const ownGround = (
  words: string,
  noteNeeded: boolean,
  known: readonly RemovalGround[],
): RemovalGround => {
  const label = words.trim().replace(/[.:\s]+$/, '');
  const sentence = `${label}${noteNeeded ? ':' : '.'}`;
  return {
    key: freeKey(label, known),
    zone: 'whole-device',
    label: { en: label, es: label },
    reason: { en: sentence, es: sentence },
    noteNeeded,
  };
};

const mostLetters = 30;

/** From the words, so that the record can be read; a second one of the same words is numbered. */
const freeKey = (label: string, known: readonly RemovalGround[]): string => {
  const words = label
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()
    .slice(0, mostLetters)
    .trim()
    .replaceAll(' ', '-');
  const key = `own-${words === '' ? 'ground' : words}`;
  for (let count = 1; ; count += 1) {
    const candidate = count === 1 ? key : `${key}-${count}`;
    if (known.every((ground) => ground.key !== candidate)) return candidate;
  }
};

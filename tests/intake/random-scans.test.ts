/** A million texts, random, near valid ones, and valid ones: none throws, and none is taken for another code than its own. */
import { expect, test } from 'vitest';
import { parseBenchId } from '../../src/domain/bench-id/bench-id.ts';
import { gs1CheckDigit } from '../../src/domain/marking-data.ts';
import { readScan } from '../../src/intake/read-scan.ts';

/** Mulberry32, a public-domain generator: the same texts in every run. */
const generator = (seed: number) => () => {
  seed = (seed + 0x6d2b79f5) | 0;
  let value = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  value = (value + Math.imul(value ^ (value >>> 7), 61 | value)) ^ value;
  return ((value ^ (value >>> 14)) >>> 0) / 4294967296;
};
const random = generator(20260310);
const below = (limit: number) => Math.floor(random() * limit);
const oneOf = <Each>(list: readonly Each[]): Each => list[below(list.length)]!;
const digits = (count: number) => Array.from({ length: count }, () => below(10)).join('');

const alphabets = [
  '0123456789',
  '01172124080038004',
  '0123456789ABCDEFGHJKMNPQRSTVWXYZ',
  '()[]>\\]C1d2Q3\x1d\x1e\x04 05 06S1P',
  Array.from({ length: 128 }, (_, code) => String.fromCharCode(code)).join(''),
  'aé日🙂\u200b\ud800\ufeff\0\n\t',
] as const;
const randomText = (): string => {
  const alphabet = oneOf(alphabets);
  return Array.from({ length: below(40) }, () => alphabet[below(alphabet.length)]).join('');
};

interface Known {
  /** The data of each element, and with which AI. */
  readonly elements: readonly (readonly [string, string])[];
  readonly code: string;
}

const [GS, RS, EOT] = ['\x1d', '\x1e', '\x04'];
const serialLetters = 'ABCXYZ0123456789-/.';
const serial = () =>
  Array.from({ length: 1 + below(12) }, () => serialLetters[below(serialLetters.length)]).join('');
const known: readonly Known[] = Array.from({ length: 200 }, () => {
  const body = `09${digits(11)}`;
  const elements = [
    ['01', `${body}${gs1CheckDigit(body)}`],
    ['10', serial()],
    ['11', `26${oneOf(['01', '12'])}${oneOf(['00', '15', '31'])}`],
    ['21', `${serial()}#`.replace('#', '_')],
  ] as const;
  return { elements, code: elements.map(([ai, value]) => `(${ai})${value}`).join('') };
});

const shuffled = <Each>(list: readonly Each[]): readonly Each[] =>
  list
    .map((each) => [random(), each] as const)
    .sort(([a], [b]) => a - b)
    .map(([, each]) => each);

/** A text with that meaning, as one scanner or another sends it. */
const sent = ({ elements }: Known): string => {
  const order = shuffled(elements);
  const raw = order.map(([ai, value]) => `${ai}${value}${GS}`).join('');
  return oneOf([
    () => `]C1${raw}`,
    () => `]d2${raw.slice(0, -1)}`,
    () => `]Q3${GS}${raw}`,
    () => order.map(([ai, value]) => `(${ai})${value}`).join(''),
    () => `[)>${RS}05${GS}${raw.slice(0, -1)}${RS}${EOT}`,
  ])();
};

/** The letters and digits in any order, and how often each. What separates elements, and their AIs, is not in it. */
const lettersOf = (text: string): string => [...text.replace(/[^0-9A-Za-z]/g, '')].sort().join('');
/** With its letters, once and twice: the same code two times in one scan is that code still. */
const byCode = new Map(
  known.map((each) => {
    const letters = [lettersOf(each.code), lettersOf(each.code + each.code)];
    return [each.code, { ...each, meant: each, letters }];
  }),
);

const sentOnce = Array.from({ length: 20_000 }, () => {
  const meant = oneOf(known);
  return { meant, whole: sent(meant) };
});

const damaged = (text: string): string => {
  const at = below(text.length);
  const other = oneOf(['0', '1', 'A', GS, RS, '(', ')', ' ', '\0', text.charAt(below(text.length))]);
  return oneOf([
    () => text.slice(0, at) + text.slice(at + 1),
    () => text.slice(0, at) + other + text.slice(at),
    () => text.slice(0, at) + other + text.slice(at + 1),
    () => text.slice(0, at),
    () => text.replaceAll(GS, ''),
    () => text.slice(at) + text.slice(0, at),
    () => text + oneOf(sentOnce).whole,
  ])();
};

/** Without what stands before the data: a symbology identifier, or the head of ISO/IEC 15434. */
const withoutHead = (text: string): string => {
  const data = text.trim().replace(/^\][A-Za-z][0-9A-Za-z]/, '');
  const head = `[)>${RS}05${GS}`;
  return data.startsWith(head) ? data.slice(head.length) : data;
};

test('a million texts: no exception, and no device but the one whose code it is', () => {
  const counts = { intact: 0, damaged: 0, random: 0, 'bench ID': 0 };
  const wrong: string[] = [];
  for (let round = 0; round < 1_000_000; round += 1) {
    const kind = oneOf(['intact', 'damaged', 'damaged', 'random'] as const);
    const { meant, whole } = oneOf(sentOnce);
    const text = kind === 'random' ? randomText() : kind === 'intact' ? whole : damaged(whole);
    const scan = readScan(text, 2026);
    if (scan.kind === 'bench ID') {
      counts['bench ID'] += 1;
      if (parseBenchId(text.replace(/^\s*\]\w\w/, '')).kind !== 'exact') wrong.push(text);
      continue;
    }
    const found = scan.kind === 'marking data' ? byCode.get(scan.code) : undefined;
    if (kind === 'intact' && found?.meant !== meant) wrong.push(`not found: ${JSON.stringify(text)}`);
    if (found === undefined) continue;
    counts[kind] += 1;
    if (kind !== 'intact' && !found.letters.includes(lettersOf(withoutHead(text))))
      wrong.push(JSON.stringify([text, found.code]));
    if (!found.elements.every(([, value]) => text.includes(value)))
      wrong.push(JSON.stringify([text, found.code]));
  }
  expect(wrong.slice(0, 20)).toEqual([]);
  expect(counts.intact).toBeGreaterThan(200_000);
  // A separator more or less at the end, or a space around, is the same code still.
  expect(counts.damaged).toBeGreaterThan(1000);
  expect(counts.random).toBe(0);
}, 120_000);

/**
 * Serial numbers against what a notice writes. Each expectation was worked by hand, with its reasoning beside it; the random
 * cases are held against all completions of the unreadable characters, looked up in the list of all serial numbers meant.
 */
import { expect, test } from 'vitest';
import { matchSerial } from '../../../src/domain/recall/match-serial.ts';
import { signsOf } from '../../../src/domain/recall/signs.ts';
import { seededRandom } from '../../support/seeded-random.ts';

type Level = 'certain' | 'possible' | 'no';

const range = 'B-0991…B-1010';
const year = '19B*';

/** [what is on the device, what the notice writes, what follows, why] */
const cases: readonly (readonly [string, string, Level, string])[] = [
  // A range in one pattern: B and four digits, 991 to 1010.
  ['B-0991', range, 'certain', 'the first of the range'],
  ['B-1010', range, 'certain', 'the last of the range'],
  ['B-1000', range, 'certain', '991 ≤ 1000 ≤ 1010'],
  ['B-0990', range, 'no', '990 < 991, and everything is legible'],
  ['B-1011', range, 'no', '1011 > 1010'],
  ['b 0995', range, 'certain', 'case, space and hyphen do not count'],
  ['B0995', range, 'certain', 'the hyphen left out'],
  ['C-0995', range, 'no', 'another letter'],
  ['B-995', range, 'possible', 'number 995, but the maker writes four digits'],
  ['B-00995', range, 'possible', 'number 995 with a zero too many'],
  ['B-0099', range, 'no', 'number 99'],
  ['B-10100', range, 'no', 'number 10100, however it is written'],
  ['B-O995', range, 'possible', 'the letter O where the maker has a digit'],
  ['B-IOO5', range, 'possible', 'I and O for 1 and 0: 1005'],
  ['8-0995', range, 'no', '8 is not taken for B: it was read, and only O, I and L are doubted'],
  ['B-0995-2', range, 'no', 'another part follows, and the pattern has none'],
  ['0995', range, 'no', 'the letter of the pattern is not there, and nothing is said to be unreadable'],
  // Unreadable characters.
  ['B-099?', range, 'possible', '990 is outside, 991 to 999 are inside'],
  ['B-100?', range, 'possible', '1000 to 1009: all inside, but nobody has read the digit'],
  ['B-098?', range, 'no', '980 to 989: none inside'],
  ['B-101?', range, 'possible', '1010 alone is inside'],
  ['B-?010', range, 'possible', '1010 is inside'],
  ['B-?011', range, 'no', '0011, 1011, … 9011: none inside'],
  ['B-?9?5', range, 'possible', '0995 is inside'],
  ['B-?8?5', range, 'no', 'a second digit of 8 is never inside'],
  ['?-0995', range, 'possible', 'the letter may be B'],
  ['?-0985', range, 'no', 'whatever the letter is, 985 is outside'],
  ['B?0995', range, 'possible', 'the unreadable mark may be the hyphen'],
  ['B-09?95', range, 'possible', 'it may be a mark: B-09-95 has the characters of B-0995'],
  ['????', range, 'possible', 'one letter and three digits would be B995 with a zero left out'],
  ['?????', range, 'possible', 'it may be B0995'],
  ['???????', range, 'possible', 'B000995 has zeros too many, and the number is inside'],
  ['', range, 'possible', 'nothing can be read'],
  ['*', range, 'possible', 'nothing can be read'],
  ['B-09*', range, 'possible', 'B-0991 begins so'],
  [
    'B-08*',
    range,
    'no',
    'B-08 begins 80 to 89 and 800 to 899 in four digits; with more zeros none is 991 to 1010 either',
  ],
  ['*10', range, 'possible', 'B-1010 ends so'],
  ['*89', range, 'no', 'no number from 991 to 1010 ends with 89'],
  ['C*', range, 'no', 'every serial number of the range begins with B'],
  ['*B*', range, 'possible', 'it may be any of them'],
  ['B-Ж995', range, 'possible', 'a letter of another alphabet may be anything: here the 0'],
  // Mixed lengths.
  ['B-991', 'B-991…B-1010', 'certain', 'the first, in three digits'],
  ['B-1005', 'B-991…B-1010', 'certain', 'four digits from 1000 on'],
  ['B-0995', 'B-991…B-1010', 'certain', 'four digits, as the last of the range has'],
  ['B-00995', 'B-991…B-1010', 'possible', 'more digits than either end has'],
  ['B-99', 'B-991…B-1010', 'no', 'number 99'],
  ['B-99?', 'B-991…B-1010', 'possible', '991 to 999'],
  ['B-98?', 'B-991…B-1010', 'no', '980 to 989'],
  ['B-10?', 'B-991…B-1010', 'no', '100 to 109; as B-10 with a mark it is 10'],
  ['B-9?', 'B-9…B-12', 'possible', '90 to 99 are outside, but the ? may be a mark: then it is B-9'],
  // A range whose end is written short.
  ['B-1003', 'B-0991…1010', 'certain', 'the end is B-1010, written without its letter'],
  ['C-1003', 'B-0991…1010', 'no', 'the letter of the first holds for the last'],
  // Year letters.
  ['19B-0001', year, 'certain', 'it begins with 19B'],
  ['19C-0001', year, 'no', 'it begins with 19C'],
  ['19?-0001', year, 'possible', 'the year letter may be B'],
  ['1?B-????', year, 'possible', 'it may begin with 19B'],
  ['19B-????', year, 'certain', 'the beginning was read, and the rest does not matter'],
  ['19B*', year, 'certain', 'the beginning was read, and the rest does not matter'],
  ['I9B-0001', year, 'possible', 'the letter I where the maker has 1'],
  ['KB-100', 'KA*…KD*', 'certain', 'KA ≤ KB ≤ KD'],
  ['KE-100', 'KA*…KD*', 'no', 'KE is after KD'],
  ['K?-100', 'KA*…KD*', 'possible', 'A to D may stand there'],
  ['KD-999', 'KA*…KD*', 'certain', 'KD is the last beginning, whatever follows'],
  ['A-950', 'A-900…B-099', 'certain', 'from A-900 on to the end of the letter A'],
  ['B-050', 'A-900…B-099', 'certain', 'the letter B until 099'],
  ['A-899', 'A-900…B-099', 'no', 'before A-900'],
  ['B-100', 'A-900…B-099', 'no', 'after B-099'],
  ['?-500', 'A-900…B-099', 'no', 'A-500 is before, B-500 after, and other letters are outside'],
  ['?-950', 'A-900…B-099', 'possible', 'A-950 is inside'],
  // Numbers that only a mark parts: each is a number of its own.
  ['N2-24-1500', 'N2-24-1000…N2-25-1999', 'certain', '2, 24 and 1500 are between the ends'],
  ['N2-25-0900', 'N2-24-1000…N2-25-1999', 'certain', 'year 25, before 1999'],
  ['N2-25-900', 'N2-24-1000…N2-25-1999', 'possible', 'year 25, number 900 with a zero left out'],
  ['N2-24-900', 'N2-24-1000…N2-25-1999', 'no', 'year 24 begins with 1000'],
  ['N2-25-2000', 'N2-24-1000…N2-25-1999', 'no', 'after the last'],
  ['N2-2?-0900', 'N2-24-1000…N2-25-1999', 'possible', 'in year 25 it is inside'],
  ['N2-24-1500', 'N2-24-1000…1999', 'certain', 'the end says only its last number'],
  ['N2-25-1500', 'N2-24-1000…1999', 'no', 'the last is of year 24 too'],
  // One serial number, and masks.
  ['B-0991', 'B-0991', 'certain', 'the one that is named'],
  ['B-0992', 'B-0991', 'no', 'not the one that is named'],
  ['B-099?', 'B-0991', 'possible', 'it may be the one that is named'],
  ['Q7-12', 'Q?-12', 'certain', 'the notice leaves the second character open'],
  ['Q7-13', 'Q?-12', 'no', 'it ends with 13'],
  ['Q-12', 'Q?-12', 'no', 'the notice says that there is a character'],
  // What cannot be compared is never a no.
  ['B-5000', 'B-1010…B-0991', 'possible', 'the range runs backwards: nobody knows what is meant'],
  ['B-5000', 'B-0991…X', 'possible', 'the ends have different patterns'],
  ['B-5000', 'B-0991, B-0995', 'possible', 'a list in one line is not taken for a serial number'],
  ['B-5000', 'from B-0991', 'possible', 'words are left to a person'],
  ['B-5000', 'B-0991/B-1010', 'possible', 'two serial numbers, or an odd one'],
  ['B-5000', 'Б-0991…Б-1010', 'possible', 'another alphabet'],
];

test('at least sixty cases are worked by hand', () => {
  expect(cases.length).toBeGreaterThanOrEqual(60);
  expect(new Set(cases.map(([seen, written]) => `${seen} ${written}`)).size).toBe(cases.length);
});

test.each(cases)('%s against %s is %s: %s', (seen, written, level) => {
  expect(matchSerial(signsOf(seen), written).level).toBe(level);
});

test.each([
  'B-0991…B-1010',
  'B-0991 … B-1010',
  'B-0991..B-1010',
  'B-0991 - B-1010',
  'B-0991–B-1010',
  'B-0991 to B-1010',
  'B-0991 a B-1010',
  'B-0991 hasta 1010',
])('a range may be written %s', (written) => {
  const level = (seen: string): Level => matchSerial(signsOf(seen), written).level;
  expect([level('B-0990'), level('B-0991'), level('B-1010'), level('B-1011')]).toEqual([
    'no',
    'certain',
    'certain',
    'no',
  ]);
});

const alphabet = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

/** What the maker means, as a list: [letter, number] from the first to the last, by counting. */
interface Meant {
  readonly written: string;
  /** In the maker's writing. */
  readonly asGiven: ReadonlySet<string>;
  /** With other zeros in front, and O, I and L as digits. */
  readonly loosely: ReadonlySet<string>;
  readonly members: readonly string[];
}

const fold = (text: string): string => text.replaceAll('O', '0').replaceAll('I', '1').replaceAll('L', '1');
const longest = 9;

/** A number written with every number of zeros in front. */
const withZeros = (number: string): string[] =>
  Array.from({ length: longest - number.length + 1 }, (_, zeros) => '0'.repeat(zeros) + number);

/** `batch` is a number without zeros in front, or nothing; it stands before the letter or after it. */
const meant = (batch: string, letter: string, isBefore: boolean, first: string, last: string): Meant => {
  const headed = (number: string): string => (isBefore ? number + letter : letter + number);
  const asGiven = new Set<string>();
  const loosely = new Set<string>();
  const batches = batch === '' ? [''] : withZeros(batch);
  for (let number = Number(first); number <= Number(last); number += 1) {
    for (const { length } of [first, last]) asGiven.add(headed(batch) + String(number).padStart(length, '0'));
    for (const before of batches)
      for (const after of withZeros(String(number))) {
        const text = headed(before) + after;
        if (text.length <= longest) loosely.add(fold(text));
      }
  }
  const prefix = isBefore ? batch + letter : `${letter}-${batch}`;
  return { written: `${prefix}-${first}…${prefix}-${last}`, asGiven, loosely, members: [...asGiven] };
};

interface Completion {
  readonly text: string;
  /** Some unreadable character was taken for a mark; so it is only where the rest is as the maker writes it. */
  readonly hasMark: boolean;
}

/** Every text that the unreadable characters may hide. */
function* completions(seen: string, hasMark = false): Generator<Completion> {
  const place = seen.search(/[?*]/);
  if (place < 0) {
    yield { text: seen, hasMark };
    return;
  }
  const [before, after] = [seen.slice(0, place), seen.slice(place + 1)];
  if (seen.charAt(place) === '*') {
    for (const hidden of ['', ...alphabet, ...pairs]) yield* completions(before + hidden + after, hasMark);
    return;
  }
  yield* completions(before + after, true);
  for (const character of alphabet) yield* completions(before + character + after, hasMark);
}
const pairs = alphabet.flatMap((one) => alphabet.map((other) => one + other));

const random = seededRandom(7);

const drawnRange = (): Meant => {
  const width = random.whole(2, 4);
  const low = random.whole(1, 10 ** width - 2);
  const high = low + random.whole(0, 40);
  const isPadded = random.next() < 0.6;
  const letter = random.pick([...'ABCIOKQ']);
  const batch = random.next() < 0.5 ? String(random.whole(1, 29)) : '';
  const isBefore = batch === '' || random.next() < 0.5;
  const wide = String(high).length;
  return meant(
    batch,
    letter,
    isBefore,
    isPadded ? String(low).padStart(wide, '0') : String(low),
    String(high),
  );
};

/** A serial number in or near the range, with characters changed, lost or unreadable. */
const drawnSeen = ({ members }: Meant): string => {
  const signs = [...random.pick(members)];
  if (random.next() < 0.5) signs[random.whole(0, signs.length - 1)] = random.pick(alphabet);
  if (random.next() < 0.1) signs.splice(random.whole(0, signs.length), 0, '0');
  const unreadable = random.pick([0, 0, 0, 0, 1, 1, 1, 1, 2, 2]);
  for (const place of random.sample([...signs.keys()], unreadable)) signs[place] = '?';
  if (unreadable === 0 && random.next() < 0.1) signs[random.whole(0, signs.length - 1)] = '*';
  return signs.join('');
};

test('of 100,000 random cases none is a no where some completion is meant, a certain where some is not, or a possible for nothing', () => {
  const seenLevels = { certain: 0, possible: 0, no: 0 };
  const ranges = Array.from({ length: 1000 }, drawnRange);
  for (let number = 0; number < 100_000; number += 1) {
    const range = ranges[number % ranges.length]!;
    const seen = drawnSeen(range);
    const { level } = matchSerial(signsOf(seen), range.written);
    seenLevels[level] += 1;
    let isSome = false;
    let isAll = !seen.includes('*');
    for (const { text, hasMark } of completions(seen)) {
      if (range.asGiven.has(text)) isSome = true;
      else isAll = false;
      if (!hasMark && range.loosely.has(fold(text))) isSome = true;
      if (isSome && !isAll) break;
    }
    const should = isAll ? 'certain' : isSome ? 'possible' : 'no';
    // A run is completed with two characters at most, so there may be more readings than were tried.
    const isRight = level === should || (seen.includes('*') && should === 'no' && level === 'possible');
    if (!isRight) throw new Error(`${seen} against ${range.written}: ${level}, and should be ${should}`);
  }
  for (const level of ['certain', 'possible', 'no'] as const)
    expect(seenLevels[level]).toBeGreaterThan(5_000);
}, 600_000);

/** Code 128 as ISO/IEC 15417 has it, as far as a bench ID needs it: the widths of every symbol and how ten characters are encoded. */

/** Widths in modules of bars and spaces in turn, bar first, by code value 0 to 105; then the stop pattern with its last bar. */
const widthTable =
  '212222222122222221121223121322131222122213122312132212221213221312231212112232122132122231113222123122' +
  '123221223211221132221231213212223112312131311222321122321221312212322112322211212123212321232121111323' +
  '131123131321112313132113132311211313231113231311112133112331132131113123113321133121313121211331231131' +
  '213113213311213131311123311321331121312113312311332111314111221411431111111224111422121124121421141122' +
  '141221112214112412122114122411142112142211241211221114413111241112134111111242121142121241114212124112' +
  '124211411212421112421211212141214121412121111143111341131141114113114311411113411311113141114131311141' +
  '411131211412211214211232';

export const startB = 104;
export const startC = 105;
export const stopCode = 106;
export const toSetC = 99;
export const toSetB = 100;
/** Values of data and check symbols are 0 to 102; the check symbol is a sum modulo 103. */
export const checkModulus = 103;
export const symbolModules = 11;
export const stopModules = 13;

const modulesOf = (widths: string): Uint8Array =>
  Uint8Array.from(
    [...widths].flatMap((width, index) => Array<number>(Number(width)).fill(index % 2 === 0 ? 1 : 0)),
  );

/** The modules of each symbol by its value, 1 where dark: eleven, and thirteen for the stop pattern at 106. */
export const code128Modules: readonly Uint8Array[] = [
  ...Array.from({ length: 106 }, (_none, value) => modulesOf(widthTable.slice(6 * value, 6 * value + 6))),
  modulesOf('2331112'),
];

/** What stands at a place between start and check symbol: one character, a pair of digits, or a change of code set. */
export type Slot =
  | { readonly kind: 'character'; readonly at: number }
  | { readonly kind: 'pair'; readonly at: number }
  | { readonly kind: 'fixed'; readonly code: number };

/** The symbols between start and check symbol, and the start symbol. */
export interface Shape {
  readonly start: number;
  readonly slots: readonly Slot[];
}

/**
 * How ten characters are encoded, which hangs only on where digits are: a run of four or more goes in code set C, after
 * one digit in code set B where the run is odd and does not open the text.
 */
export const shapeOf = (isDigit: readonly boolean[]): Shape => {
  const runAt = (at: number): number => {
    let length = 0;
    while (isDigit[at + length] === true) length += 1;
    return length;
  };
  const slots: Slot[] = [];
  const start = runAt(0) >= 4 ? startC : startB;
  let inC = start === startC;
  for (let at = 0; at < isDigit.length; ) {
    const run = runAt(at);
    if (inC && run < 2) {
      inC = false;
      slots.push({ kind: 'fixed', code: toSetB });
    } else if (!inC && run >= 4 && run % 2 === 0) {
      inC = true;
      slots.push({ kind: 'fixed', code: toSetC });
    } else if (inC) {
      slots.push({ kind: 'pair', at });
      at += 2;
    } else {
      slots.push({ kind: 'character', at });
      at += 1;
    }
  }
  return { start, slots };
};

const isDigitCode = (code: number): boolean => code >= 48 && code <= 57;

/** The value in code set B of a character: ASCII from the space on. */
export const setBValue = (character: string): number => character.charCodeAt(0) - 32;

/** The values of all symbols of a text of capitals and digits, from start to stop. */
export const code128Values = (text: string): readonly number[] => {
  const shape = shapeOf([...text].map((character) => isDigitCode(character.charCodeAt(0))));
  const values = shape.slots.map((slot) => {
    if (slot.kind === 'fixed') return slot.code;
    return slot.kind === 'pair' ? Number(text.slice(slot.at, slot.at + 2)) : setBValue(text.charAt(slot.at));
  });
  const sum = values.reduce((total, value, index) => total + (index + 1) * value, shape.start);
  return [shape.start, ...values, sum % checkModulus, stopCode];
};

/** Every shape that a text of ten characters can take, most likely first by how many of all texts take it. */
export const everyShape = (length: number): readonly Shape[] => {
  const shapes = new Map<string, { shape: Shape; count: number }>();
  for (let mask = 0; mask < 2 ** length; mask += 1) {
    const isDigit = Array.from({ length }, (_none, at) => ((mask >> at) & 1) === 1);
    const digits = isDigit.filter(Boolean).length;
    const count = 10 ** digits * 22 ** (length - digits);
    const shape = shapeOf(isDigit);
    const key = JSON.stringify(shape);
    const known = shapes.get(key);
    shapes.set(key, { shape, count: count + (known?.count ?? 0) });
  }
  return [...shapes.values()].sort((a, b) => b.count - a.count).map(({ shape }) => shape);
};

/** Every way in which a series of darkness can be the symbols of a Code 128, weighed: a search over places, widths and values. */
import { blurredSeries } from '../field.ts';
import {
  checkModulus,
  code128Modules,
  type Shape,
  setBValue,
  startB,
  startC,
  stopCode,
  symbolModules,
} from './code128.ts';

/** Darkness about ±1 across the bars, and what each sample counts. */
export interface Series {
  readonly darkness: Float32Array;
  readonly precision: Float32Array;
}

/** How well each value stands at each place and width, in units of log likelihood (up to a part that no value changes). */
export interface Emissions {
  readonly samples: number;
  /** Widths of a symbol of eleven modules, in samples, each 2.5 % above the one before. */
  readonly widths: readonly number[];
  readonly codes: readonly number[];
  /** By place, width and code. */
  readonly scores: Float32Array;
}

export const widthRatio = 1.025;

export const widthsBetween = (least: number, most: number): readonly number[] => {
  const widths: number[] = [];
  for (let width = least; width <= most; width *= widthRatio) widths.push(width);
  return widths;
};

/**
 * `darkness` about ±1 with `precision` in each sample; `blur` is its standard deviation in samples. The likelihood of a
 * symbol is that of its modules, blurred, in white noise: Σ precision · (darkness · template − template² / 2), where the blur is
 * put on the series and not on every template.
 */
export const emissionsOf = (
  series: Series,
  blur: number,
  widths: readonly number[],
  codes: readonly number[],
): Emissions => {
  const samples = series.darkness.length;
  const weighed = series.darkness.map((value, at) => clipped(value) * (series.precision[at] ?? 0));
  const across = cumulative(blurredSeries(weighed, blur));
  const weight = cumulative(series.precision);
  const scores = new Float32Array(samples * widths.length * codes.length).fill(Number.NEGATIVE_INFINITY);
  const modules = new Float32Array(stopModulesMost);
  for (const [widthIndex, width] of widths.entries()) {
    const module = width / symbolModules;
    const energies = codes.map((code) => energyOf(code, blur / module));
    for (let at = 0; at + width < samples; at += 1) {
      const most = Math.min(stopModulesMost, Math.floor((samples - 1 - at) / module));
      let before = valueBetween(across, at);
      for (let index = 0; index < most; index += 1) {
        const next = valueBetween(across, at + (index + 1) * module);
        modules[index] = next - before;
        before = next;
      }
      const meanWeight = (valueBetween(weight, at + width) - valueBetween(weight, at)) / symbolModules;
      const base = (at * widths.length + widthIndex) * codes.length;
      for (let index = 0; index < codes.length; index += 1) {
        const pattern = signs[codes[index] ?? 0];
        if (pattern === undefined || pattern.length > most) continue;
        let score = 0;
        for (let each = 0; each < pattern.length; each += 1)
          score += (pattern[each] ?? 0) * (modules[each] ?? 0);
        scores[base + index] = score - 0.5 * meanWeight * (energies[index] ?? 0);
        const code = codes[index] ?? 0;
        if (code >= startB)
          scores[base + index] =
            (scores[base + index] ?? 0) +
            (code === stopCode
              ? quietScore(across, weight, at + stopModulesMost * module, quietModules * module)
              : quietScore(across, weight, at - quietModules * module, quietModules * module));
      }
    }
  }
  return { samples, widths, codes, scores };
};

/** Of the ten modules of light margin that the standard asks for, those that hardly anything reaches into. */
const quietModules = 5;

/** How well a light margin stands there, as far as the series goes. */
const quietScore = (across: Float64Array, weight: Float64Array, from: number, length: number): number => {
  const first = Math.max(0, from);
  const last = Math.min(across.length - 1, from + length);
  if (last <= first) return 0;
  const darkness = valueBetween(across, last) - valueBetween(across, first);
  return -darkness - 0.5 * (valueBetween(weight, last) - valueBetween(weight, first));
};

/** A spot far darker or lighter than the bars around says no more than the bars do. */
const clipped = (value: number): number => Math.max(-1.6, Math.min(1.6, value));

const stopModulesMost = 13;

const signs: readonly Float32Array[] = code128Modules.map((modules) =>
  Float32Array.from(modules, (dark) => (dark === 1 ? 1 : -1)),
);

/** The same bars with half the samples: to find a symbol, not to read it. */
export const halved = ({ darkness, precision }: Series): Series => {
  const half = (of: (at: number) => number): Float32Array =>
    Float32Array.from({ length: Math.floor(darkness.length / 2) }, (_none, at) => of(2 * at));
  return {
    darkness: half((at) => ((darkness[at] ?? 0) + (darkness[at + 1] ?? 0)) / 2),
    precision: half((at) => (precision[at] ?? 0) + (precision[at + 1] ?? 0)),
  };
};

const cumulative = (values: Float32Array): Float64Array => {
  const sums = new Float64Array(values.length + 1);
  for (let at = 0; at < values.length; at += 1) sums[at + 1] = (sums[at] ?? 0) + (values[at] ?? 0);
  return sums;
};

const valueBetween = (sums: Float64Array, at: number): number => {
  const whole = Math.floor(at);
  const low = sums[whole] ?? 0;
  return low + (at - whole) * ((sums[whole + 1] ?? low) - low);
};

const energySteps = 8;
const energies = new Map<number, readonly number[]>();

/** The energy of a symbol's own modules, in modules, when blurred between a space before it and a bar after it. */
const energyOf = (code: number, blurModules: number): number => {
  const key = Math.round(blurModules * 20);
  let known = energies.get(key);
  if (known === undefined) {
    known = signs.map((pattern) => {
      const wide = new Float32Array((pattern.length + 4) * energySteps);
      wide.fill(-1, 0, 2 * energySteps);
      for (let at = 0; at < pattern.length; at += 1)
        wide.fill(pattern[at] ?? 0, (at + 2) * energySteps, (at + 3) * energySteps);
      wide.fill(pattern.length === stopModulesMost ? -1 : 1, (pattern.length + 2) * energySteps);
      const blurred = blurredSeries(wide, (key / 20) * energySteps);
      let energy = 0;
      for (let at = 2 * energySteps; at < (pattern.length + 2) * energySteps; at += 1)
        energy += (blurred[at] ?? 0) ** 2;
      return energy / energySteps;
    });
    energies.set(key, known);
  }
  return known[code] ?? 0;
};

/** One symbol on a path. */
export interface PathStep {
  readonly code: number;
  readonly at: number;
  readonly width: number;
}

export interface Reading {
  readonly shape: Shape;
  readonly score: number;
  readonly path: readonly PathStep[];
  /** For each slot of the shape, by code: the best score of any path that has the code there. */
  readonly slotScores: readonly ReadonlyMap<number, number>[];
}

/** Widths of neighbours differ by at most two steps: a symbol on the flank of a cylinder grows by 5 % a symbol at 60°. */
const mostWidthSteps = 2;
const widthStepCost = 1;

/** A symbol that stands at a place of the sequence, one of several codes, by their index in the emissions. */
type Choice = readonly number[];

/** `alphabet`: the characters that a text may have. `undefined` where no path fits into the series. */
export const readShape = (
  emissions: Emissions,
  shape: Shape,
  alphabet: string,
  closeness: number,
): Reading | undefined => {
  const { characters, pairs, anyCode, just } = choicesOf(emissions, alphabet);
  const choices: Choice[] = [
    just(shape.start),
    ...shape.slots.map((slot) =>
      slot.kind === 'character' ? characters : slot.kind === 'pair' ? pairs : just(slot.code),
    ),
    anyCode,
    just(stopCode),
  ];
  return searched(emissions, choices, shape, closeness);
};

interface Choices {
  readonly characters: Choice;
  readonly pairs: Choice;
  readonly anyCode: Choice;
  readonly just: (code: number) => Choice;
  /** The best of each choice at every place and width, as far as it was asked for. */
  readonly best: Map<Choice, Float32Array>;
}

const known = new WeakMap<Emissions, Choices>();

const choicesOf = (emissions: Emissions, alphabet: string): Choices => {
  const done = known.get(emissions);
  if (done !== undefined) return done;
  const indexOf = new Map(emissions.codes.map((code, index) => [code, index]));
  const indices = (codes: readonly number[]): Choice =>
    codes.flatMap((code) => {
      const index = indexOf.get(code);
      return index === undefined ? [] : [index];
    });
  const single = new Map<number, Choice>();
  const choices: Choices = {
    characters: indices([...alphabet].map(setBValue)),
    pairs: indices(Array.from({ length: 100 }, (_none, value) => value)),
    anyCode: indices(Array.from({ length: checkModulus }, (_none, value) => value)),
    just: (code) => {
      const choice = single.get(code) ?? indices([code]);
      single.set(code, choice);
      return choice;
    },
    best: new Map(),
  };
  known.set(emissions, choices);
  return choices;
};

/** The best of the chosen codes at every place and width. */
const bestOf = ({ scores, codes }: Emissions, choice: Choice): Float32Array => {
  const best = new Float32Array(scores.length / codes.length);
  for (let cell = 0; cell < best.length; cell += 1) {
    let most = Number.NEGATIVE_INFINITY;
    const base = cell * codes.length;
    for (let each = 0; each < choice.length; each += 1) {
      const score = scores[base + (choice[each] ?? 0)] ?? most;
      if (score > most) most = score;
    }
    best[cell] = most;
  }
  return best;
};

const searched = (
  emissions: Emissions,
  choices: readonly Choice[],
  shape: Shape,
  closeness: number,
): Reading | undefined => {
  const { samples, widths, scores, codes } = emissions;
  const count = widths.length;
  const cells = (samples + 1) * count;
  const shared = known.get(emissions)?.best;
  const bestOfChoice = (choice: Choice): Float32Array => {
    const best = shared?.get(choice) ?? bestOf(emissions, choice);
    shared?.set(choice, best);
    return best;
  };
  const endOf = (at: number, width: number): number => Math.round(at + (widths[width] ?? 0));
  const lastEnd = (at: number, width: number): number =>
    Math.round(at + ((widths[width] ?? 0) * stopModulesMost) / symbolModules);

  /** By place and width of the symbol that starts there: the best of all that stands before it. */
  const before: Float32Array[] = [];
  let entering: Float32Array = new Float32Array(cells);
  for (const [index, choice] of choices.entries()) {
    before.push(entering);
    const best = bestOfChoice(choice);
    const leaving = new Float32Array(cells).fill(Number.NEGATIVE_INFINITY);
    if (index < choices.length - 1) {
      for (let at = 0; at < samples; at += 1)
        for (let width = 0; width < count; width += 1) {
          const cell = at * count + width;
          const score = (entering[cell] ?? 0) + (best[cell] ?? 0);
          const end = endOf(at, width);
          if (end >= samples || score === Number.NEGATIVE_INFINITY) continue;
          const to = end * count + width;
          if (score > (leaving[to] ?? 0)) leaving[to] = score;
        }
      entering = spread(leaving, count);
    }
  }

  /** By place and width of the symbol that ends there: the best of all that stands after it. */
  const after: Float32Array[] = choices.map(() => new Float32Array(0));
  let following: Float32Array = new Float32Array(cells);
  for (let index = choices.length - 1; index >= 0; index -= 1) {
    after[index] = following;
    const best = bestOfChoice(choices[index] ?? []);
    const starting = new Float32Array(cells).fill(Number.NEGATIVE_INFINITY);
    for (let at = 0; at < samples; at += 1)
      for (let width = 0; width < count; width += 1) {
        const cell = at * count + width;
        const end = index === choices.length - 1 ? lastEnd(at, width) : endOf(at, width);
        if (end > samples) continue;
        starting[cell] = (best[cell] ?? 0) + (following[end * count + width] ?? 0);
      }
    following = spread(starting, count);
  }
  const total = following.reduce((most, score) => Math.max(most, score), Number.NEGATIVE_INFINITY);
  if (total === Number.NEGATIVE_INFINITY) return undefined;

  const slotScores: ReadonlyMap<number, number>[] = [];
  const path: PathStep[] = [];
  for (const [index, choice] of choices.entries()) {
    const best = bestOfChoice(choice);
    const [entry, exit] = [before[index], after[index]];
    if (entry === undefined || exit === undefined) return undefined;
    const found = new Map<number, number>();
    let top: PathStep = { code: -1, at: 0, width: 0 };
    let topScore = Number.NEGATIVE_INFINITY;
    for (let at = 0; at < samples; at += 1)
      for (let width = 0; width < count; width += 1) {
        const cell = at * count + width;
        const end = index === choices.length - 1 ? lastEnd(at, width) : endOf(at, width);
        if (end > samples) continue;
        const others = (entry[cell] ?? 0) + (exit[end * count + width] ?? 0);
        if (!(others + (best[cell] ?? 0) > total - closeness)) continue;
        for (let each = 0; each < choice.length; each += 1) {
          const codeIndex = choice[each] ?? 0;
          const score = others + (scores[cell * codes.length + codeIndex] ?? 0);
          const code = codes[codeIndex] ?? 0;
          if (score > (found.get(code) ?? Number.NEGATIVE_INFINITY)) found.set(code, score);
          if (score > topScore) {
            topScore = score;
            top = { code, at, width: widths[width] ?? 0 };
          }
        }
      }
    path.push(top);
    slotScores.push(found);
  }
  return { shape, score: total, path, slotScores: slotScores.slice(1, -2) };
};

/** The best among neighbouring widths, less the cost of every step between them. */
const spread = (cells: Float32Array, count: number): Float32Array => {
  const result = new Float32Array(cells.length);
  for (let row = 0; row < cells.length; row += count)
    for (let width = 0; width < count; width += 1) {
      let most = cells[row + width] ?? 0;
      for (let step = 1; step <= mostWidthSteps; step += 1) {
        const cost = step * widthStepCost;
        if (width >= step) most = Math.max(most, (cells[row + width - step] ?? 0) - cost);
        if (width + step < count) most = Math.max(most, (cells[row + width + step] ?? 0) - cost);
      }
      result[row + width] = most;
    }
  return result;
};

export const everyCode: readonly number[] = [
  ...Array.from({ length: 103 }, (_none, value) => value),
  startB,
  startC,
  stopCode,
];

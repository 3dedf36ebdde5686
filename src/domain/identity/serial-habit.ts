/** How serial numbers of a model look, so that it can be said how easily one that nobody registered would look the same. */
import { type Column, characterIndex, characters, columnOf } from './character.ts';
import { type Fragment, likeText, probabilityOfFragment, readCharacters } from './fragment.ts';

/** Of the characters of a serial number of which nothing is known, eight in ten are digits: common practice, no source. */
const digitShare = 0.8;
const unknownColumn: Column = Float64Array.from([...characters, ''], (seen) =>
  /^\d$/.test(seen) ? digitShare / 10 : (1 - digitShare) / 26,
);

/** Serial numbers of which nothing is known have 1 to 20 characters, each length as probable as another. */
const unknownLengths = 20;

/** That a serial number does not look like the others of its model at all: common practice, no source. */
const unusualShare = 0.02;

/**
 * Of devices outside the register: how many have a serial number near those of the same model and year in it, as if bought
 * with them; the others have one anywhere in what was made of the model. Common practice, no source.
 */
const nearShare = 0.5;

/**
 * How many serial numbers' worth the habit of the wider group counts in a narrower one, and what is unknown counts in the
 * widest: smoothing, so that a character that was never met is improbable and not impossible.
 */
const widerCounts = 4;
const unknownCounts = 1;

/** Characters by place, of serial numbers with the same number of characters. */
interface Shape {
  count: number;
  readonly places: readonly Uint32Array[];
}

export class SerialHabit {
  readonly #wider: SerialHabit | undefined;
  readonly #shapes = new Map<number, Shape>();
  #count = 0;

  /** `wider` is the habit that this one falls back on where it has met few; it learns with it. */
  constructor(wider?: SerialHabit) {
    this.#wider = wider;
  }

  /** `serial` in comparable form; an empty one says nothing. */
  learn(serial: string): void {
    const { length } = serial;
    if (length === 0) return;
    this.#wider?.learn(serial);
    let shape = this.#shapes.get(length);
    if (shape === undefined) {
      shape = {
        count: 0,
        places: Array.from({ length }, () => new Uint32Array(characters.length + 1)),
      };
      this.#shapes.set(length, shape);
    }
    this.#count += 1;
    shape.count += 1;
    for (let place = 0; place < length; place += 1) {
      const counts = shape.places[place];
      const character = characterIndex(serial.charCodeAt(place));
      if (counts !== undefined) counts[character] = (counts[character] ?? 0) + 1;
    }
  }

  /** P(fragment | some serial number of this habit), for many habits and one fragment. */
  static probabilityOf(fragment: Fragment): (habit: SerialHabit) => number {
    const seen = readCharacters(fragment);
    const unknown = probabilityOfUnknown(fragment);
    const known = new Map<SerialHabit, number>();
    const of = (habit: SerialHabit): number => {
      const probability = known.get(habit) ?? compute(habit);
      known.set(habit, probability);
      return probability;
    };
    const compute = (habit: SerialHabit): number => {
      const own = habit.#usual(fragment, seen);
      if (habit.#wider !== undefined) {
        const wider = of(habit.#wider);
        return own === undefined ? wider : nearShare * own + (1 - nearShare) * wider;
      }
      return own === undefined ? unknown : (1 - unusualShare) * own + unusualShare * unknown;
    };
    return of;
  }

  #usual(fragment: Fragment, seen: readonly number[]): number | undefined {
    if (this.#count === 0) return undefined;
    return [...this.#shapes].reduce((sum, [length, { count }]) => {
      const text = Array.from({ length }, (_, place) => this.#column(length, place, seen));
      return sum + (count / this.#count) * probabilityOfFragment(fragment, text);
    }, 0);
  }

  /** Filled in only for the characters that were `seen`. */
  #column(length: number, place: number, seen: readonly number[]): Column {
    const shape = this.#shapes.get(length);
    const wider = this.#wider === undefined ? unknownColumn : this.#wider.#column(length, place, seen);
    const weight = this.#wider === undefined ? unknownCounts : widerCounts;
    const all = (shape?.count ?? 0) + weight;
    const column = new Float64Array(characters.length + 1);
    for (const index of seen) column[index] = (weight * (wider[index] ?? 0)) / all;
    const counts = shape?.places[place] ?? new Uint32Array();
    for (let there = 0; there < counts.length; there += 1) {
      const count = counts[there] ?? 0;
      if (count === 0) continue;
      const taken = columnOf(there);
      for (const index of seen) column[index] = (column[index] ?? 0) + (count * (taken[index] ?? 0)) / all;
    }
    return column;
  }
}

/** P(fragment | a serial number of which nothing is known). */
const probabilityOfUnknown = (fragment: Fragment): number => {
  let sum = 0;
  for (let length = 1; length <= unknownLengths; length += 1) {
    sum += probabilityOfFragment(fragment, likeText(length, unknownColumn));
  }
  return sum / unknownLengths;
};

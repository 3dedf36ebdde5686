/** What somebody who watches the desk knows of a check-in: what was asked, what is still open, and for which words a device is held. */
import type { CheckInAnswer } from '../../src/domain/custody/check-in-answer.ts';
import { deskRules } from './invariants-world.ts';

export const everySaid = ['no', 'yes', 'just yes', 'not known', 'left out'] as const;
/** To one question each; *just yes* does not say what it was. */
export type Said = (typeof everySaid)[number];

export const answersOf = (said: readonly Said[]): CheckInAnswer[] =>
  deskRules.checkIn.flatMap(({ key, choices }, index): CheckInAnswer[] => {
    switch (said[index]) {
      case 'yes':
        return [{ question: key, said: 'yes', choices: [choices[0]!.key] }];
      case 'just yes':
        return [{ question: key, said: 'yes', choices: [] }];
      case 'not known':
        return [{ question: key, said: 'not known' }];
      case 'no':
        return [{ question: key, said: 'no' }];
      default:
        return [];
    }
  });

export class WatchedCheckIn {
  /** By the number of the question; `undefined` while no check-in goes on. */
  #open: Map<number, 'no answer' | 'no words'> | undefined;
  /** Keys of the reasons that must stand. */
  readonly #words = new Set<string>();

  get isOpen(): boolean {
    return this.#open !== undefined;
  }

  get open(): number {
    return this.#open?.size ?? 0;
  }

  get words(): ReadonlySet<string> {
    return this.#words;
  }

  /** Whether these answers are taken, and whether they hold the device; nothing of the rules under test is asked. */
  take(said: readonly Said[], isBack: boolean): { readonly taken: boolean; readonly holds: boolean } {
    const isDoubt = said.some((each) => each === 'yes' || each === 'just yes' || each === 'not known');
    const before = this.#open;
    if (before === undefined) {
      if (!isBack || (!isDoubt && said.includes('left out'))) return { taken: false, holds: false };
    } else if (!isDoubt && !said.some((each, index) => each === 'no' && before.get(index) === 'no answer'))
      return { taken: false, holds: false };
    const open = before ?? new Map(said.map((_, index) => [index, 'no answer'] as const));
    const holds = said.map((each, index) => this.#takeOne(open, index, each)).some((isNew) => isNew);
    this.#open = open.size === 0 ? undefined : open;
    return { taken: true, holds };
  }

  /** True where it is a new reason. */
  #takeOne(open: Map<number, 'no answer' | 'no words'>, index: number, said: Said): boolean {
    const { key, choices } = deskRules.checkIn[index]!;
    const was = open.get(index);
    switch (said) {
      case 'left out':
        return false;
      case 'no':
        if (was === 'no answer') open.delete(index);
        return false;
      case 'not known':
        open.delete(index);
        this.#words.add(`check-in.${key}.not-known`);
        return true;
      case 'yes':
        open.delete(index);
        this.#words.delete(`check-in.${key}.yes`);
        this.#words.add(`check-in.${key}.${choices[0]!.key}`);
        return true;
      case 'just yes':
        if (was === 'no answer') open.set(index, 'no words');
        else open.delete(index);
        if (was !== 'no words') this.#words.add(`check-in.${key}.yes`);
        return was !== 'no words';
    }
  }
}

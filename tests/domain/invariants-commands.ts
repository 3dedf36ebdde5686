/** The random commands of the invariants: what people might do at the bench, at the desk and with what is held. */
import fc from 'fast-check';
import type { Said } from './invariants-check-in.ts';
import { type Name, procedure } from './invariants-world.ts';

export const devices = 3;

export type Command =
  | { readonly do: 'start' | 'break off' | 'remove' | 'lose'; readonly device: number }
  | {
      readonly do: 'answer';
      readonly device: number;
      readonly by: Name;
      readonly bad: string | undefined;
      readonly skip: string | undefined;
    }
  | { readonly do: 'sign'; readonly device: number; readonly by: Name }
  /** A whole inspection, and the scan of its tag where `prove`. */
  | {
      readonly do: 'inspect';
      readonly device: number;
      readonly by: Name;
      readonly bad: string | undefined;
      readonly prove: boolean;
    }
  | { readonly do: 'prove'; readonly device: number; readonly back: number }
  | { readonly do: 'read marking'; readonly device: number; readonly intact: boolean }
  | {
      readonly do: 'check out';
      readonly device: number;
      readonly user: Name;
      readonly confirmed: boolean;
      readonly days: number | undefined;
    }
  | {
      readonly do: 'check in';
      readonly device: number;
      readonly answers: readonly Said[];
      readonly found: boolean;
    }
  | {
      readonly do: 'hand over';
      readonly device: number;
      readonly user: Name;
      readonly confirmed: boolean;
      readonly because: boolean;
    }
  /** The evidence for every open reason, save one piece where `leaveOut`; then the tag, the latest or an older one. */
  | {
      readonly do: 'bring back';
      readonly device: number;
      readonly leaveOut: number | undefined;
      readonly back: number;
    }
  | { readonly do: 'scrap'; readonly device: number; readonly cut: boolean; readonly witness: Name }
  | { readonly do: 'recall'; readonly device: number; readonly level: 'certain' | 'possible' }
  | { readonly do: 'days pass'; readonly days: number };

const device = fc.integer({ min: 0, max: devices - 1 });
const mostly = <Value>(usual: Value, ...others: readonly Value[]) =>
  fc.oneof(
    { weight: 5, arbitrary: fc.constant(usual) },
    { weight: 1, arbitrary: fc.constantFrom(...others) },
  );
export const keys = procedure.checks.map(({ key }) => key);
const someCheck = mostly<string | undefined>(undefined, ...keys);
const signer = mostly<Name>('inspector', 'regular', 'undesignated', 'nadia');
const taker = mostly<Name>('nadia', 'mara', 'regular', 'leaver', 'inspector');
const said = mostly<Said>('no', 'yes', 'just yes', 'not known', 'left out', 'left out');

export const command: fc.Arbitrary<Command> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constant('inspect' as const),
      device,
      by: signer,
      bad: someCheck,
      prove: mostly(true, false),
    }),
  },
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant('check out' as const),
      device,
      user: taker,
      confirmed: mostly(true, false),
      days: mostly<number | undefined>(0, undefined, undefined, -1, 1, 370),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({
      do: fc.constant('check in' as const),
      device,
      answers: fc.tuple(said, said, said),
      found: mostly(false, true),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({
      do: fc.constant('hand over' as const),
      device,
      user: taker,
      confirmed: mostly(true, false),
      because: mostly(true, false),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constantFrom(
        'start' as const,
        'start' as const,
        'break off' as const,
        'remove' as const,
        'lose' as const,
      ),
      device,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('answer' as const),
      device,
      by: signer,
      bad: someCheck,
      skip: someCheck,
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('sign' as const), device, by: signer }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('prove' as const), device, back: mostly(0, 1) }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('read marking' as const), device, intact: fc.boolean() }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('recall' as const),
      device,
      level: fc.constantFrom('certain' as const, 'possible' as const),
    }),
  },
  {
    weight: 8,
    arbitrary: fc.record({
      do: fc.constant('bring back' as const),
      device,
      leaveOut: mostly<number | undefined>(undefined, 0, 1, 2),
      back: mostly(0, 1),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('scrap' as const),
      device,
      cut: mostly(true, false),
      witness: mostly<Name>('mara', 'inspector', 'leaver'),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('days pass' as const),
      days: fc.constantFrom(1, 30, 200, 364, 366),
    }),
  },
);

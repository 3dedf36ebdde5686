/** What is being entered of the bench's hours, as text, and what is wrong with it. */
import {
  type BenchCapacity,
  benchCapacitySchema,
  type Weekday,
  weekdays,
} from '../../../src/domain/bench-capacity.ts';

export interface ClosureDraft {
  /** Tells it from the others of the draft, whatever is entered or removed. */
  readonly id: number;
  readonly from: string;
  readonly until: string;
  readonly name: string;
}

export interface CapacityDraft {
  readonly hours: Readonly<Record<Weekday, string>>;
  readonly minutes: string;
  readonly daysEarly: string;
  readonly closures: readonly ClosureDraft[];
}

export const draftOfCapacity = ({
  hours,
  minutesPerInspection,
  mostDaysEarly,
  closures,
}: BenchCapacity): CapacityDraft => ({
  hours: Object.fromEntries(weekdays.map((weekday) => [weekday, String(hours[weekday])])) as Record<
    Weekday,
    string
  >,
  minutes: String(minutesPerInspection),
  daysEarly: String(mostDaysEarly),
  closures: closures.map(({ from, until, name = '' }, id) => ({ id, from, until, name })),
});

export const nextClosureId = ({ closures }: CapacityDraft): number =>
  Math.max(-1, ...closures.map(({ id }) => id)) + 1;

export type CapacityFault = Weekday | 'minutes' | 'daysEarly' | `closure ${number}`;

/** A comma counts as the decimal mark too. A closure needs both of its days. */
export const capacityOf = (
  draft: CapacityDraft,
): { readonly capacity?: BenchCapacity; readonly faults: ReadonlySet<CapacityFault> } => {
  const written = {
    hours: Object.fromEntries(weekdays.map((weekday) => [weekday, numberIn(draft.hours[weekday])])),
    minutesPerInspection: numberIn(draft.minutes),
    mostDaysEarly: numberIn(draft.daysEarly),
    closures: draft.closures.map(({ from, until, name }) => ({
      from,
      until,
      ...(name.trim() === '' ? {} : { name: name.trim() }),
    })),
  };
  const read = benchCapacitySchema.safeParse(written);
  if (read.success) return { capacity: read.data, faults: new Set() };
  return { faults: new Set(read.error.issues.map(({ path }) => faultAt(path))) };
};

const numberIn = (text: string): number =>
  /^\d+([.,]\d+)?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : Number.NaN;

const faultAt = ([part, detail]: readonly PropertyKey[]): CapacityFault => {
  if (part === 'minutesPerInspection') return 'minutes';
  if (part === 'mostDaysEarly') return 'daysEarly';
  if (part === 'closures') return `closure ${Number(detail)}`;
  return weekdays.find((weekday) => weekday === detail) ?? 'monday';
};

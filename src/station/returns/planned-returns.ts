/** A return plan that was made, and what it was made for. */
import type { CalendarDate } from '../../domain/brand.ts';
import type { LengthUnit } from '../../domain/length.ts';
import type { ReturnPlanInput } from '../../planning/returns/plan-input.ts';
import type { PlanAnswer } from '../../planning/returns/plan-thread-words.ts';
import type { RecordedInput } from './record-input.ts';

export interface PlannedReturns {
  readonly answer: PlanAnswer;
  readonly input: ReturnPlanInput;
  /** The first month of the plan. */
  readonly from: CalendarDate;
  readonly unit: LengthUnit;
  /** How many events were recorded when it was made from the record; absent where it was made for what was given. */
  readonly recordSize?: number | undefined;
  /** Where it was made from the record. */
  readonly recorded?: RecordedInput | undefined;
}

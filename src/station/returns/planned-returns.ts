/** A return plan that was made, and what it was made for. */
import type { ReturnPlanInput } from '../../planning/returns/plan-input.ts';
import type { PlanAnswer } from '../../planning/returns/plan-thread-words.ts';

export interface PlannedReturns {
  readonly answer: PlanAnswer;
  readonly input: ReturnPlanInput;
}

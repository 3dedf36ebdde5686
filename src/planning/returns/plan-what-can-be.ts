/** The cheapest plan of what can be: where the needs cannot be met, the most that can be there is planned, and said to be too few. */
import type { ReturnPlanInput } from './plan-input.ts';
import { type NoPlan, planReturns, type ReturnPlan } from './plan-returns.ts';
import type { Solver } from './solver.ts';

export interface WhatCanBe {
  readonly plan: ReturnPlan | NoPlan;
  /** What was planned for in the end. */
  readonly input: ReturnPlanInput;
}

export const planWhatCanBe = (input: ReturnPlanInput, solve: Solver): WhatCanBe => {
  const plan = planReturns(input, solve);
  if (plan.kind === 'plan' || plan.shortfalls.length === 0) return { plan, input };
  const { shortfalls } = plan;
  const possible: ReturnPlanInput = {
    ...input,
    needs: input.needs.map((need) => ({
      ...need,
      perMonth: need.perMonth.map(
        (needed, month) =>
          shortfalls.find((each) => each.lengthM === need.lengthM && each.month === month)?.most ?? needed,
      ),
    })),
  };
  const made = planReturns(possible, solve);
  return made.kind === 'plan' ? { plan: { ...made, shortfalls }, input: possible } : { plan, input };
};

/** What is said between the thread that makes a return plan and the one that asks for it. */
import type { ReturnPlanInput } from './plan-input.ts';
import type { NoPlan, ReturnPlan } from './plan-returns.ts';
import type { PriceLimit } from './price-limit.ts';

export interface PlanOrder {
  readonly input: ReturnPlanInput;
  /** Devices of which the price limit is wanted too. */
  readonly limitsOf: readonly string[];
  /** Where the needs cannot be met, the most that can be there is planned. */
  readonly whatCanBe: boolean;
}

export interface PlanAnswer {
  readonly plan: ReturnPlan | NoPlan;
  readonly limits: readonly { readonly id: string; readonly limit: PriceLimit | undefined }[];
}

export type FromPlanThread =
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly answer: PlanAnswer }
  | { readonly kind: 'failed'; readonly why: string };

/** The making of the plan: how far it is, that everybody waits for one, and that it can be canceled. */
import { expect, test } from 'vitest';
import { type BenchId, calendarDate } from '../../src/domain/brand.ts';
import { refusal } from '../../src/domain/refusal.ts';
import type { DeviceToPlan } from '../../src/ledger/ledger.ts';
import { benchPlan, benchPlanInSteps, benchPlanPauses } from '../../src/planning/bench-plan.ts';
import type { OperationContext } from '../../src/station/operation.ts';
import { BenchPlanner } from '../../src/station/schedule/bench-planner.ts';
import { noticesOf } from '../../src/station/schedule/field-notices.ts';
import { program } from '../support/shipped-rules.ts';

const today = calendarDate('2026-03-10');
const devices: readonly DeviceToPlan[] = [
  { benchId: 'D1' as BenchId, dueOn: calendarDate('2026-09-20'), holderId: 'p-lena' },
  { benchId: 'D2' as BenchId, dueOn: calendarDate('2026-03-02') },
  { benchId: 'D3' as BenchId },
];

/** A ledger that gives the devices when the gate is opened, and counts how often it was asked for them. */
const gatedContext = () => {
  let openGate = (): void => undefined;
  const gate = new Promise<void>((resolve) => {
    openGate = resolve;
  });
  const asked = { times: 0 };
  const reader = {
    station: async () => ({ timeZone: 'Europe/Madrid' }),
    people: async () => [],
    devicesToPlan: async () => {
      asked.times += 1;
      await gate;
      return devices;
    },
  };
  const context = {
    ledger: {
      read: (query: (from: typeof reader) => Promise<unknown>) => query(reader),
      head: async () => ({ size: 7, rootHash: 'aa' }),
    },
    rules: { shipped: program },
    occasion: () => ({ on: today, at: '2026-03-10T08:00:00.000Z', by: 'p-ines' }),
  } as unknown as OperationContext;
  return { context, openGate, asked };
};

const plannerOf = () =>
  new BenchPlanner(async (error) => {
    throw error;
  });

const underWay = async (planner: BenchPlanner): Promise<void> => {
  while (planner.underWay === undefined) await new Promise((resolve) => setTimeout(resolve, 1));
};

test('everybody who asks while the plan is made waits for the same one, and it says how far it is', async () => {
  const planner = plannerOf();
  const { context, openGate, asked } = gatedContext();
  expect(planner.underWay).toBeUndefined();
  const [first, second] = [planner.plan(context), planner.plan(context)];
  await underWay(planner);
  expect(planner.underWay).toEqual({ done: 0, of: benchPlanPauses + 2 });
  openGate();
  expect(await first).toBe(await second);
  expect(await first).toMatchObject({ today, out: new Set(['D1']) });
  expect(planner.underWay).toBeUndefined();
  expect(await planner.plan(context)).toBe(await first);
  expect(asked.times).toBe(1);
});

test('a plan that is canceled is refused to everybody who waits for it, and made when it is asked for again', async () => {
  const planner = plannerOf();
  const { context, openGate, asked } = gatedContext();
  const [first, second] = [planner.plan(context), planner.plan(context)];
  await underWay(planner);
  planner.cancel();
  openGate();
  expect([await first, await second]).toEqual([refusal('plan-canceled'), refusal('plan-canceled')]);
  expect(await planner.plan(context)).toMatchObject({ today });
  expect(asked.times).toBe(2);
});

test('the notices and the plan that they rest on read the devices once', async () => {
  const planner = plannerOf();
  const { context, openGate, asked } = gatedContext();
  openGate();
  expect(await noticesOf({ ...context, planner })).toEqual({ devices: [], training: [] });
  expect(asked.times).toBe(1);
});

test('the plan in steps pauses as often as it says, and is the same plan', () => {
  const days = Array.from({ length: 30 }, (_, index) => ({
    on: calendarDate(`2026-04-${String(index + 1).padStart(2, '0')}`),
    room: 1,
  }));
  const steps = benchPlanInSteps(devices, days, 60);
  let pauses = 0;
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) pauses += 1;
  expect(pauses).toBe(benchPlanPauses);
  expect(step.value).toEqual(benchPlan(devices, days, 60));
});

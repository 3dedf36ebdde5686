/** A bench plan over a year, for fleets that fit and for one that does not. */
import { levelPlan } from '../../src/planning/level-plan.ts';
import { randomFleet } from '../planning/random-fleet.ts';
import { type Benchmark, timed } from './measurement.ts';

const rounds = 5;
/** Six in ten of what a year's bench days take on average. */
const fits = { devices: 2000, calendarDays: 365, mostADay: 27, mostDaysEarly: 90 };

export const benchmark: Benchmark = async () => {
  const comfortable = await timed(rounds, (seed) => levelPlan(randomFleet(seed, fits)));
  const short = await timed(rounds, (seed) => levelPlan(randomFleet(seed, { ...fits, mostADay: 12 })));
  const name = `${fits.devices} devices over a year`;
  return [
    { name: `${name}: planned, median`, value: comfortable.medianMs / 1000, unit: 's', budget: 2 },
    {
      name: `${name}, more than the bench can take: planned, median`,
      value: short.medianMs / 1000,
      unit: 's',
      budget: 2,
    },
  ];
};

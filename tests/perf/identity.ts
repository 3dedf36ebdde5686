/** Who is this, over a register of 100,000 devices: learning how they look, and ranking them by what was seen. */
import { populationOf } from '../../src/domain/identity/population.ts';
import { rankCandidates } from '../../src/domain/identity/rank-candidates.ts';
import { generatedFleet } from '../support/generated-fleet.ts';
import { seededRandom } from '../support/seeded-random.ts';
import { depotFacts, markingFacts, visibleFacts, wornObservation } from '../support/worn-observation.ts';
import { type Benchmark, timed } from './measurement.ts';

const size = 100_000;
const rounds = 10;

export const peer = 'none: by the clock alone';

export const benchmark: Benchmark = async () => {
  const fleet = generatedFleet(size);
  const sheets = new Map(fleet.modelSheets.map((sheet) => [sheet.modelSheetId, sheet]));
  const random = seededRandom(1);
  const observations = Array.from({ length: rounds }, () => {
    const device = random.pick(fleet.devices);
    const sheet = sheets.get(device.modelSheetId)!;
    const facts = [...visibleFacts(sheet, random), ...markingFacts(device, sheet), ...depotFacts(device)];
    return wornObservation(device, facts, random);
  });
  const learning = await timed(rounds, () => populationOf(fleet.devices, fleet.modelSheets));
  const population = populationOf(fleet.devices, fleet.modelSheets);
  const ranking = await timed(rounds, (index) =>
    rankCandidates(observations[index]!, population, { closed: 0, none: 0 }, 5),
  );
  return [
    { name: '100,000 devices learned, median', value: learning.medianMs, unit: 'ms', noise: learning.noise },
    {
      name: '100,000 devices ranked, median',
      value: ranking.medianMs,
      unit: 'ms',
      budget: 1000,
      noise: ranking.noise,
    },
  ];
};

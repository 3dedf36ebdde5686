/** Who is this: candidates ranked by what can still be seen on a device. */
import { describe, expect, test } from 'vitest';
import { benchIdFrom } from '../../../src/domain/bench-id/bench-id.ts';
import { metres } from '../../../src/domain/brand.ts';
import type { Observation } from '../../../src/domain/identity/observation.ts';
import { populationOf } from '../../../src/domain/identity/population.ts';
import {
  type Candidate,
  priorOfNone,
  type Ranking,
  rankCandidates,
} from '../../../src/domain/identity/rank-candidates.ts';
import type { RegisteredDevice } from '../../../src/domain/identity/registered-device.ts';
import { generatedFleet } from '../../support/generated-fleet.ts';
import { type SeededRandom, seededRandom } from '../../support/seeded-random.ts';
import { depotFacts, markingFacts, visibleFacts, wornObservation } from '../../support/worn-observation.ts';

const noCases = { closed: 0, none: 0 };
const fleet = generatedFleet();
const population = populationOf(fleet.devices, fleet.modelSheets);
const sheetOf = (device: RegisteredDevice) =>
  fleet.modelSheets.find(({ modelSheetId }) => modelSheetId === device.modelSheetId)!;
const rank = (observation: Observation, limit = 3): Ranking =>
  rankCandidates(observation, population, noCases, limit);

/** The device is likelier than any other and than none of these; a tie is not first. */
const isFirst = ({ candidates, noneProbability }: Ranking, device: RegisteredDevice): boolean => {
  const [first, second] = candidates;
  return (
    first?.benchId === device.benchId &&
    first.probability > (second?.probability ?? 0) * 1.01 &&
    first.probability > noneProbability
  );
};
const noneIsFirst = ({ candidates, noneProbability }: Ranking): boolean =>
  noneProbability > (candidates[0]?.probability ?? 0);

const everyFact = (device: RegisteredDevice, random: SeededRandom): readonly Observation[] => [
  ...visibleFacts(sheetOf(device), random),
  ...markingFacts(device, sheetOf(device)),
];

const share = (cases: number, holds: () => boolean): number => {
  let count = 0;
  for (let index = 0; index < cases; index += 1) if (holds()) count += 1;
  return count / cases;
};

describe('with two unreadable characters of the serial number and two correct facts, among 2,000 devices', () => {
  test('the true device is first in at least 95 of 100 cases', () => {
    const random = seededRandom(1);
    const first = share(500, () => {
      const device = random.pick(fleet.devices);
      const facts = [...everyFact(device, random), ...depotFacts(device)];
      return isFirst(rank(wornObservation(device, facts, random)), device);
    });
    expect(first).toBeGreaterThanOrEqual(0.95);
  }, 240_000);

  test('none of these is first in at least 95 of 100 cases of a device that is not in the register', () => {
    const random = seededRandom(1);
    const none = share(500, () => {
      const device = random.pick(fleet.strangers);
      return noneIsFirst(rank(wornObservation(device, everyFact(device, random), random)));
    });
    expect(none).toBeGreaterThanOrEqual(0.95);
  }, 240_000);

  test('devices that the facts cannot tell apart, such as a batch with numbers in a row, are shown as alike and never as one', () => {
    const batches = generatedFleet(2000, 'off the line');
    const ofBatches = populationOf(batches.devices, batches.modelSheets);
    const random = seededRandom(3);
    for (let index = 0; index < 100; index += 1) {
      const device = random.pick(batches.devices);
      const observation = wornObservation(device, everyFact(device, random), random);
      const { candidates, noneProbability } = rankCandidates(observation, ofBatches, noCases, 50);
      const own = candidates.find(({ benchId }) => benchId === device.benchId);
      const top = candidates[0]?.probability ?? 0;
      expect((own?.probability ?? 0) / top).toBeGreaterThan(0.99);
      expect(top).toBeGreaterThan(noneProbability);
    }
  }, 120_000);
});

describe('what goes wrong when facts are entered', () => {
  const device = fleet.devices.find(({ serial }) => /^N2-\d\d-\d*8\d*$/.test(serial))!;

  test('a whole serial number outweighs one fact that was entered wrongly', () => {
    const ranking = rank({ serial: device.serial, housingColour: 'red', lengthM: metres(2) });
    expect(isFirst(ranking, device)).toBe(true);
    const colour = ranking.candidates[0]!.evidence.find(({ field }) => field === 'housingColour');
    expect(colour!.weight).toBeLessThan(0);
  });

  test('characters taken down as those they look like still lead to the device, at less weight', () => {
    const asSeen = device.serial.replace('8', 'B').replace('2', 'Z');
    const exact = rank({ serial: device.serial });
    const confused = rank({ serial: asSeen });
    expect(isFirst(confused, device)).toBe(true);
    expect(confused.candidates[0]!.weight).toBeLessThan(exact.candidates[0]!.weight);
  });

  test('a character too many or too few still leads to the device', () => {
    expect(isFirst(rank({ serial: device.serial.slice(0, -1) }), device)).toBe(true);
    expect(isFirst(rank({ serial: `${device.serial}4` }), device)).toBe(true);
  });

  test('a run of unknown length stands for what is worn off', () => {
    const ranking = rank({ serial: `*${device.serial.slice(-6)}`, model: 'Lode 2' });
    expect(isFirst(ranking, device)).toBe(true);
  });

  test('a serial number like no other, of a maker like no other, is none of these', () => {
    expect(noneIsFirst(rank({ serial: '4711XK09', manufacturer: 'Zeb*' }))).toBe(true);
  });

  test('facts of the model alone name no single device', () => {
    const { candidates } = rank({ manufacturer: 'Norvane', model: 'Lode 2', lengthM: metres(2) });
    expect(candidates[0]!.probability).toBeLessThan(0.01);
  });

  test('what the name of the model says already is not counted once more for its length', () => {
    const alone = rank({ lengthM: metres(2) }, 2000);
    const after = rank({ model: 'Lode 2', lengthM: metres(2) }, 2000);
    const weight = ({ candidates }: Ranking) =>
      candidates
        .find(({ benchId }) => benchId === device.benchId)!
        .evidence.find(({ field }) => field === 'lengthM')!.weight;
    expect(weight(alone)).toBeGreaterThan(1);
    expect(weight(after)).toBeLessThan(0.5);
  });

  test('a label of ours with four characters left names the device among 2,000', () => {
    const fragment = [...device.benchId].map((sign, place) => (place % 3 === 0 ? sign : '?')).join('');
    expect(isFirst(rank({ benchId: fragment, manufacturer: 'Norvane' }), device)).toBe(true);
  });
});

describe('one case worked by hand', () => {
  const [galvanised, stainless] = [fleet.modelSheets[0]!, fleet.modelSheets[7]!];
  const device = (first: number, modelSheetId: string, tagNumber: number): RegisteredDevice => ({
    benchId: benchIdFrom([first, 0, 0, 0, 0, 0]),
    modelSheetId,
    serial: '',
    dateOfManufacture: '2020',
    standing: 'in service',
    tagNumber,
  });
  const one = device(1, galvanised.modelSheetId, 2);
  const two = device(2, stainless.modelSheetId, 2);
  const three = device(3, stainless.modelSheetId, 4);
  const ranking = rankCandidates(
    { lifelineMaterial: 'stainless', tagNumber: 2 },
    populationOf([one, two, three], [galvanised, stainless]),
    noCases,
    3,
  );
  const of = ({ benchId }: RegisteredDevice): Candidate =>
    ranking.candidates.find((candidate) => candidate.benchId === benchId)!;
  const weights = (of: Candidate) => of.evidence.map(({ weight }) => weight);

  /*
   * Before any fact. None: 2 of 6 assumed cases, 1/3. Each of three devices: (2/3)/3 = 2/9.
   *   start = log2((2/9) / (1/3)) = log2(2/3) = −0.58496
   * Models, each with half a device more: galvanised 1.5/4 = 0.375, stainless 2.5/4 = 0.625.
   * Outside the register 1/4 is of a new model: galvanised 0.28125, stainless 0.46875, new 0.25.
   *
   * Stainless was seen. Anywhere, with one more of each of two: (0.625 · 3 + 1) / (3 + 2) = 0.575.
   *   of a galvanised device: 0.06 · 0.575                = 0.0345
   *   of a stainless one:     0.94 + 0.06 · 0.575         = 0.9745
   *   outside: 0.28125 · 0.0345 + 0.46875 · 0.9745 + 0.25 · 0.575 = 0.61025
   *   weights: log2(0.0345 / 0.61025) = −4.14472, log2(0.9745 / 0.61025) = 0.67526
   *
   * Tag number 2 was seen. Newest tag 2: 0.9. Newest tag 4: 0.1 / 3 = 0.03333.
   *   anywhere: (0.9 + 0.9 + 0.03333 + 2⁻²) / (3 + 1)     = 0.52083
   *   of newest tag 2: 0.97 · 0.9 + 0.03 · 0.52083         = 0.88863
   *   of newest tag 4: 0.97 · 0.03333 + 0.03 · 0.52083     = 0.04796
   *   weights: log2(0.88863 / 0.52083) = 0.77076, log2(0.04796 / 0.52083) = −3.44098
   *
   * Odds against none, as 2 to the sum: 0.06430, 1.81639, 0.09803; with 1 for none they make 2.97872.
   */
  test('each weight is log2 of P(seen | device) over P(seen | outside the register)', () => {
    expect(ranking.startWeight).toBeCloseTo(-0.58496, 4);
    expect(weights(of(one))).toEqual([expect.closeTo(-4.1447, 3), expect.closeTo(0.7708, 3)]);
    expect(weights(of(two))).toEqual([expect.closeTo(0.6753, 3), expect.closeTo(0.7708, 3)]);
    expect(weights(of(three))).toEqual([expect.closeTo(0.6753, 3), expect.closeTo(-3.441, 3)]);
  });

  test('the probabilities are those of the odds, and make one with that of none of these', () => {
    expect(of(one).probability).toBeCloseTo(0.0643 / 2.97872, 4);
    expect(of(two).probability).toBeCloseTo(1.81639 / 2.97872, 4);
    expect(of(three).probability).toBeCloseTo(0.09803 / 2.97872, 4);
    expect(ranking.noneProbability).toBeCloseTo(1 / 2.97872, 4);
  });

  test('a depot whose cases often ended with none of these is told so more readily', () => {
    expect(priorOfNone({ closed: 0, none: 0 })).toBeCloseTo(1 / 3, 9);
    // (2 + 8) / (6 + 10): the assumed cases and ten of its own, of which eight ended so.
    expect(priorOfNone({ closed: 10, none: 8 })).toBeCloseTo(10 / 16, 9);
  });
});

test('an empty register leaves none of these alone', () => {
  const ranking = rankCandidates({ serial: 'N2-18-1074' }, populationOf([], []), noCases, 5);
  expect(ranking).toMatchObject({ candidates: [], noneProbability: 1, weighed: 0 });
});

/** Ranks the devices of the register, and "none of these", by what can still be seen on a device. */
import type { BenchId } from '../brand.ts';
import { likelihoodsOf } from './likelihood.ts';
import { type Observation, type ObservedField, seenFields } from './observation.ts';
import type { Group, Member, Population } from './population.ts';

/** One fact and its weight: log2 P(seen | this device) − log2 P(seen | a device outside the register), in bits. */
export interface Evidence {
  readonly field: ObservedField;
  readonly weight: number;
}

export interface Candidate {
  readonly benchId: BenchId;
  /** The start weight and the weights of all facts: log2 of the odds of this device against none of these. */
  readonly weight: number;
  /** Over all devices of the register and none of these. */
  readonly probability: number;
  /** In the order in which the facts are counted; each is what it adds to those before it. */
  readonly evidence: readonly Evidence[];
}

export interface Ranking {
  /** The likeliest first, ties by bench ID. */
  readonly candidates: readonly Candidate[];
  /** The probability that the device is not in the register. */
  readonly noneProbability: number;
  /** What every candidate starts with before any fact: log2 of the odds of one device of the register against none. */
  readonly startWeight: number;
  /** How many devices were weighed. */
  readonly weighed: number;
}

/**
 * Where nothing is known of the depot, one in three of the devices whose code and label cannot be read is not in the
 * register (common practice, no source): a device of the register carries several codes, all of which must have gone, and
 * one that nobody registered never had any. It counts like six cases of which two ended with none of these.
 */
const assumedCases = { closed: 6, none: 2 } as const;

/** How the depot's earlier cases ended. */
export interface EarlierCases {
  readonly closed: number;
  readonly none: number;
}

/** The probability, before any fact, that the device is not in the register. */
export const priorOfNone = ({ closed, none }: EarlierCases): number =>
  (none + assumedCases.none) / (closed + assumedCases.closed);

export const rankCandidates = (
  observation: Observation,
  population: Population,
  earlierCases: EarlierCases,
  limit: number,
): Ranking => {
  const likelihoods = likelihoodsOf(observation, population);
  const facts = seenFields(observation).flatMap((field) => {
    const likelihood = likelihoods[field];
    return likelihood === undefined ? [] : [{ field, likelihood }];
  });
  const outside = probabilitiesOutside(
    population.groups,
    facts.map(({ likelihood }) => likelihood.ofGroup),
  );
  const weightOf = (index: number, member: Member): number =>
    Math.log2((facts[index]?.likelihood.ofDevice(member) ?? 1) / (outside[index] ?? 1));

  const { members } = population;
  const none = priorOfNone(earlierCases);
  const startWeight = members.length === 0 ? 0 : Math.log2((1 - none) / members.length / none);
  const weights = Float64Array.from(members, (member) => {
    let weight = startWeight;
    for (let index = 0; index < facts.length; index += 1) weight += weightOf(index, member);
    return weight;
  });
  const top = weights.reduce((highest, weight) => Math.max(highest, weight), 0);
  const sum = weights.reduce((total, weight) => total + 2 ** (weight - top), 2 ** -top);
  return {
    candidates: likeliest(members, weights, limit).map(({ member, weight }) => ({
      benchId: member.device.benchId,
      weight,
      probability: 2 ** (weight - top) / sum,
      evidence: facts.map(({ field }, index) => ({ field, weight: weightOf(index, member) })),
    })),
    noneProbability: 2 ** -top / sum,
    startWeight,
    weighed: members.length,
  };
};

const likeliest = (members: readonly Member[], weights: Float64Array, limit: number) => {
  const threshold = weights.toSorted().at(-limit) ?? Number.NEGATIVE_INFINITY;
  return members
    .flatMap((member, index) => {
      const weight = weights[index] ?? threshold;
      return weight >= threshold ? [{ member, weight }] : [];
    })
    .sort((a, b) => b.weight - a.weight || (a.member.device.benchId < b.member.device.benchId ? -1 : 1))
    .slice(0, limit);
};

/**
 * P(fact | the facts before it, not in the register) of each fact in turn: over the groups, each weighed by how well it
 * explains the facts so far.
 */
const probabilitiesOutside = (
  groups: readonly Group[],
  facts: readonly ((group: Group) => number)[],
): readonly number[] => {
  let beliefs = groups.map(({ share }) => share);
  return facts.map((ofGroup) => {
    const joint = groups.map((group, index) => (beliefs[index] ?? 0) * ofGroup(group));
    const probability = joint.reduce((sum, each) => sum + each, 0);
    beliefs = joint.map((each) => each / probability);
    return probability;
  });
};

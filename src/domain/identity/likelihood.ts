/** How probable each fact is for a device of the register, and for one that is not in it. */
import { benchIdAlphabet } from '../bench-id/bench-id.ts';
import type { Standing } from '../device.ts';
import { hookTypes, housingColours, lifelineMaterialSchema, type ModelSheet } from '../model-sheet.ts';
import { characters, seenAs } from './character.ts';
import { lengthSpread, longestLifelineM, missRates, newestTagShare } from './error-rates.ts';
import {
  comparable,
  knownText,
  likeText,
  parseFragment,
  probabilityOfFragment,
  probabilityOfWord,
} from './fragment.ts';
import type { Observation } from './observation.ts';
import type { Group, Member, Model, Population } from './population.ts';
import { manufacturedIn } from './registered-device.ts';
import { SerialHabit } from './serial-habit.ts';

/** Of one fact: P(seen | this device), and P(seen | a device of this group outside the register). */
export interface Likelihood {
  ofDevice(member: Member): number;
  ofGroup(group: Group): number;
}

/** The likelihood of each fact that was seen; a key is missing where its fact was not seen. */
export const likelihoodsOf = (
  observation: Observation,
  population: Population,
): { readonly [Field in keyof Observation]?: Likelihood } => {
  const { manufacturer, model, lengthM, lifelineMaterial, hookType, housingColour } = observation;
  const { dateOfManufacture, serial, benchId, tagNumber, lastUserId, found } = observation;
  return {
    ...(manufacturer !== undefined && { manufacturer: ofName(manufacturer, 'manufacturer', population) }),
    ...(model !== undefined && { model: ofName(model, 'model', population) }),
    ...(lengthM !== undefined && { lengthM: ofLength(lengthM, population) }),
    ...(lifelineMaterial !== undefined && {
      lifelineMaterial: ofTrait(
        lifelineMaterial,
        (sheet) => sheet.lifelineMaterial,
        lifelineMaterialSchema.options.length,
        missRates.lifelineMaterial,
        population,
      ),
    }),
    ...(hookType !== undefined && {
      hookType: ofTrait(
        hookType,
        (sheet) => sheet.hookType,
        hookTypes.length,
        missRates.hookType,
        population,
      ),
    }),
    ...(housingColour !== undefined && {
      housingColour: ofTrait(
        housingColour,
        (sheet) => sheet.housingColour,
        housingColours.length,
        missRates.housingColour,
        population,
      ),
    }),
    ...(dateOfManufacture !== undefined && { dateOfManufacture: ofDate(dateOfManufacture) }),
    ...(serial !== undefined && { serial: ofSerial(serial) }),
    ...(benchId !== undefined && { benchId: ofBenchId(benchId) }),
    ...(tagNumber !== undefined && { tagNumber: ofTagNumber(tagNumber, population) }),
    ...(lastUserId !== undefined && { lastUserId: ofLastUser(lastUserId, population) }),
    ...(found !== undefined && { found: ofPlace(found, population) }),
  };
};

/** Where the fact hangs on the model alone. A model that is not in the register is like any of it, or like none. */
const ofModel = (
  population: Population,
  ofKnown: (sheet: ModelSheet) => number,
  ofUnlike: number,
  unlikeShare: number,
): Likelihood => {
  const known = new Map<Model, number>(population.models.map((model) => [model, ofKnown(model.sheet)]));
  const likeOthers = population.models.reduce((sum, model) => sum + model.share * (known.get(model) ?? 0), 0);
  const part = population.models.length === 0 ? 1 : unlikeShare;
  const ofNew = (1 - part) * likeOthers + part * ofUnlike;
  const ofGroup = ({ model }: Group) => (model === undefined ? ofNew : (known.get(model) ?? ofNew));
  return { ofDevice: ({ group }) => ofGroup(group), ofGroup };
};

const hitOrMiss = (hit: number, miss: number, missRate: number): number =>
  (1 - missRate) * hit + missRate * miss;

/** Of devices whose model is not in the register, how many have another maker too: common practice, no source. */
const newMakerShare = 0.5;

const ofName = (seen: string, field: 'manufacturer' | 'model', population: Population): Likelihood => {
  const fragment = parseFragment(seen);
  const anyWord = probabilityOfWord(fragment);
  return ofModel(
    population,
    (sheet) =>
      hitOrMiss(
        probabilityOfFragment(fragment, knownText(comparable(sheet[field]))),
        anyWord,
        missRates[field],
      ),
    anyWord,
    field === 'model' ? 1 : newMakerShare,
  );
};

/** Densities, per metre. */
const ofLength = (measuredM: number, population: Population): Likelihood => {
  const anyLength = 1 / longestLifelineM;
  return ofModel(
    population,
    ({ ratedLengthM }) => {
      const spreadM = lengthSpread.fixedM + lengthSpread.ofLength * ratedLengthM;
      const off = (measuredM - ratedLengthM) / spreadM;
      const hit = Math.exp(-(off * off) / 2) / (spreadM * Math.sqrt(2 * Math.PI));
      return hitOrMiss(hit, anyLength, missRates.lengthM);
    },
    anyLength,
    0.5,
  );
};

/** One of a few values; a sheet that does not say has them as the other sheets have. */
const ofTrait = <Value>(
  seen: Value,
  traitOf: (sheet: ModelSheet) => Value | undefined,
  values: number,
  missRate: number,
  population: Population,
): Likelihood => {
  const count = population.members.length;
  let saying = 0;
  let same = 0;
  for (const { sheet, share } of population.models) {
    const trait = traitOf(sheet);
    if (trait !== undefined) saying += share * count;
    if (trait === seen) same += share * count;
  }
  const anywhere = (same + 1) / (saying + values);
  return ofModel(
    population,
    (sheet) => {
      const trait = traitOf(sheet);
      return trait === undefined ? anywhere : hitOrMiss(trait === seen ? 1 : 0, anywhere, missRate);
    },
    anywhere,
    1,
  );
};

/** Devices of unknown date were made in one of the last forty years, in any month. */
const unknownYear = 1 / 40;
const unknownMonth = 1 / 12;

const ofDate = (seen: string): Likelihood => {
  const [seenYear = '', seenMonth] = seen.split('-');
  const digits = (there: string, taken: string) =>
    [...taken].reduce(
      (product, digit, place) => product * (digit === '?' ? 1 : seenAs(there[place] ?? '', digit)),
      1,
    );
  const months = Array.from({ length: 12 }, (_, index) => String(index + 1).padStart(2, '0'));
  const someMonth =
    seenMonth === undefined
      ? 1
      : months.reduce((sum, month) => sum + unknownMonth * digits(month, seenMonth), 0);
  const anyYear = Math.min(1, unknownYear * 10 ** [...seenYear].filter((digit) => digit === '?').length);
  const anyDate = anyYear * someMonth;
  const ofYear = (year: string | undefined, month: string | undefined) => {
    if (year === undefined) return anyDate;
    const ofMonth = seenMonth === undefined || month === undefined ? someMonth : digits(month, seenMonth);
    return hitOrMiss(digits(year, seenYear) * ofMonth, anyDate, missRates.dateOfManufacture);
  };
  const known = new Map<string, number>();
  return {
    ofDevice: ({ device: { dateOfManufacture } }) => {
      const made = manufacturedIn(dateOfManufacture);
      const probability = known.get(dateOfManufacture) ?? ofYear(made?.year, made?.month);
      known.set(dateOfManufacture, probability);
      return probability;
    },
    ofGroup: ({ year }) => ofYear(year, undefined),
  };
};

const ofSerial = (seen: string): Likelihood => {
  const fragment = parseFragment(seen);
  const ofHabit = SerialHabit.probabilityOf(fragment);
  const ofGroup = ({ serials }: Group): number => ofHabit(serials);
  return {
    ofDevice: ({ serial, group }) =>
      serial === ''
        ? ofGroup(group)
        : hitOrMiss(probabilityOfFragment(fragment, knownText(serial)), ofGroup(group), missRates.serial),
    ofGroup,
  };
};

/** Bench IDs have ten characters of 32, of which six are random: no more than 32⁶ of them exist. */
const benchIdLength = 10;
const fewestShare = benchIdAlphabet.length ** -6;

const ofBenchId = (seen: string): Likelihood => {
  const fragment = parseFragment(seen.toUpperCase().replace(/[IL]/g, '1').replace(/O/g, '0'));
  const anyCharacter = new Float64Array(characters.length + 1).fill(1 / benchIdAlphabet.length);
  const anyId = probabilityOfFragment(fragment, likeText(benchIdLength, anyCharacter));
  const outside = Math.max(anyId, fewestShare);
  return {
    ofDevice: ({ device: { benchId } }) =>
      hitOrMiss(probabilityOfFragment(fragment, knownText(benchId)), outside, missRates.benchId),
    ofGroup: () => outside,
  };
};

const ofTagNumber = (seen: number, { members }: Population): Likelihood => {
  const hit = (newest: number): number => {
    if (newest === 0 || seen > newest) return 0;
    if (newest === 1) return 1;
    return seen === newest ? newestTagShare : (1 - newestTagShare) / (newest - 1);
  };
  const met = members.reduce((sum, { device: { tagNumber } }) => sum + hit(tagNumber), 0);
  const anywhere = (met + 2 ** -seen) / (members.length + 1);
  return {
    ofDevice: ({ device: { tagNumber } }) => hitOrMiss(hit(tagNumber), anywhere, missRates.tagNumber),
    ofGroup: () => anywhere,
  };
};

const ofLastUser = (seen: string, { members }: Population): Likelihood => {
  const users = members.flatMap(({ device: { regularUserId } }) => regularUserId ?? []);
  const same = users.filter((user) => user === seen).length;
  const anywhere = (same + 1) / (users.length + new Set(users).size + 1);
  return {
    ofDevice: ({ device: { regularUserId } }) =>
      regularUserId === undefined
        ? anywhere
        : hitOrMiss(regularUserId === seen ? 1 : 0, anywhere, missRates.lastUserId),
    ofGroup: () => anywhere,
  };
};

const ofPlace = (seen: NonNullable<Observation['found']>, { members }: Population): Likelihood => {
  const isHeld = (standing: Standing) => standing === 'quarantined' || standing === 'at manufacturer';
  const hit = (standing: Standing): number => {
    const held = isHeld(standing) ? 1 - missRates.found : missRates.found;
    return seen === 'held place' ? held : 1 - held;
  };
  const anywhere =
    (members.reduce((sum, { device: { standing } }) => sum + hit(standing), 0) + 1) / (members.length + 2);
  return { ofDevice: ({ device: { standing } }) => hit(standing), ofGroup: () => anywhere };
};

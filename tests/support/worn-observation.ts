/** What an inspector could still see on a device, made from what it is, the same in every run. */
import { metres } from '../../src/domain/brand.ts';
import type { Observation } from '../../src/domain/identity/observation.ts';
import type { RegisteredDevice } from '../../src/domain/identity/registered-device.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import type { SeededRandom } from './seeded-random.ts';

/** The serial number with `count` of its letters and digits not readable, anywhere in it. */
export const wornSerial = (serial: string, count: number, random: SeededRandom): string => {
  const readable = [...serial].flatMap((character, place) => (/[A-Z0-9]/.test(character) ? place : []));
  const worn = new Set(random.sample(readable, count));
  return [...serial].map((character, place) => (worn.has(place) ? '?' : character)).join('');
};

/** What anybody can see on the device itself, whatever the label says. A length is measured to within 1 %. */
export const visibleFacts = (sheet: ModelSheet, random: SeededRandom): readonly Observation[] => [
  { lengthM: metres(Math.round(sheet.ratedLengthM * (0.99 + 0.02 * random.next()) * 100) / 100) },
  { lifelineMaterial: sheet.lifelineMaterial },
  { hookType: sheet.hookType! },
  { housingColour: sheet.housingColour! },
];

/** What may be left of the manufacturer's marking besides the serial number. */
export const markingFacts = (device: RegisteredDevice, sheet: ModelSheet): readonly Observation[] => [
  { manufacturer: sheet.manufacturer },
  { model: sheet.model },
  { dateOfManufacture: device.dateOfManufacture },
];

/** What the depot's own tag or people may tell; of a device that nobody registered, nothing. */
export const depotFacts = ({ tagNumber, regularUserId }: RegisteredDevice): readonly Observation[] => [
  { tagNumber },
  ...(regularUserId === undefined ? [] : [{ lastUserId: regularUserId }]),
];

/** A serial number of which two characters cannot be read, and two of these facts. */
export const wornObservation = (
  device: RegisteredDevice,
  facts: readonly Observation[],
  random: SeededRandom,
): Observation => Object.assign({ serial: wornSerial(device.serial, 2, random) }, ...random.sample(facts, 2));

/**
 * A large invented fleet, the same in every run: makers, models, serial numbers by the maker's own pattern, devices bought
 * a few at a time over ten years.
 *
 * How serial numbers run is common practice, no source: a prefix for the model, the year, and a number that counts what
 * the maker made of that model in the year. What is bought together was made in the same month; out of a dealer's stock its
 * numbers lie anywhere in that month, and straight off the line they follow one another.
 */
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { metres, millimetres } from '../../src/domain/brand.ts';
import type { RegisteredDevice } from '../../src/domain/identity/registered-device.ts';
import type { HookType, HousingColour, LifelineMaterial, ModelSheet } from '../../src/domain/model-sheet.ts';
import { type SeededRandom, seededRandom } from './seeded-random.ts';

export interface GeneratedFleet {
  readonly modelSheets: readonly ModelSheet[];
  readonly devices: readonly RegisteredDevice[];
  /** Further devices of the same makers that nobody registered, as a contractor would bring them. */
  readonly strangers: readonly RegisteredDevice[];
}

interface Line {
  readonly manufacturer: string;
  readonly model: string;
  readonly lengthM: number;
  readonly material: LifelineMaterial;
  readonly hook: HookType;
  readonly colour: HousingColour;
  /** How many the maker makes of it in a year. */
  readonly madeInAYear: number;
  serial(year: number, count: number): string;
}

const digits = (count: number, width: number): string => String(count).padStart(width, '0');

const norvane = (model: string, prefix: string, lengthM: number, hook: HookType): Line => ({
  manufacturer: 'Norvane',
  model,
  lengthM,
  material: 'galvanised',
  hook,
  colour: 'grey',
  madeInAYear: 24_000,
  serial: (year, count) => `${prefix}-${digits(year % 100, 2)}-${digits(count, 5)}`,
});

const quillmoor = (model: string, letter: string, lengthM: number, material: LifelineMaterial): Line => ({
  manufacturer: 'Quillmoor',
  model,
  lengthM,
  material,
  hook: material === 'stainless' ? 'swivel carabiner' : 'swivel snap hook',
  colour: 'orange',
  madeInAYear: 60_000,
  serial: (year, count) => `Q${digits(year % 100, 2)}${letter}${digits(count, 5)}`,
});

const tessaline = (model: string, prefix: string, lengthM: number, colour: HousingColour): Line => ({
  manufacturer: 'Tessaline',
  model,
  lengthM,
  material: 'stainless',
  hook: 'large hook',
  colour,
  madeInAYear: 8_000,
  serial: (year, count) => `${prefix}-${year}-${digits(count, 4)}`,
});

const lines: readonly Line[] = [
  norvane('Lode 2', 'N2', 2, 'snap hook'),
  norvane('Lode 3', 'N3', 3, 'snap hook'),
  norvane('Lode 6', 'N6', 6, 'swivel snap hook'),
  norvane('Lode 10', 'N10', 10, 'swivel snap hook'),
  quillmoor('Stayline 10', 'A', 10, 'galvanised'),
  quillmoor('Stayline 15', 'B', 15.24, 'galvanised'),
  quillmoor('Stayline 50 ft', 'C', 15.24, 'stainless'),
  tessaline('Mastrun 20', 'TMS', 20, 'blue'),
  tessaline('Mastrun 30', 'TMR', 30, 'blue'),
  tessaline('Mastrun 30 X', 'TMX', 30, 'yellow'),
];

const sheetOf = (line: Line, index: number): ModelSheet => ({
  modelSheetId: `M${digits(index + 1, 3)}`,
  manufacturer: line.manufacturer,
  model: line.model,
  ratedLengthM: metres(line.lengthM),
  lifelineMaterial: line.material,
  lifelineDiameterMm: millimetres(4.8),
  capacityKg: { from: 59, to: 140 },
  standard: 'EN 360:2002',
  loadIndicatorFitted: true,
  hookType: line.hook,
  housingColour: line.colour,
});

const users = Array.from({ length: 40 }, (_, index) => `U${digits(index + 1, 3)}`);

/** How the serial numbers of one purchase lie to each other. */
export type Purchases = 'out of stock' | 'off the line';

/** One purchase: up to eight devices of one model, made in one month. */
const purchase = (random: SeededRandom, purchases: Purchases): RegisteredDevice[] => {
  const lineIndex = random.whole(0, lines.length - 1);
  const line = lines[lineIndex]!;
  const year = random.whole(2016, 2025);
  const month = random.whole(1, 12);
  const perMonth = Math.floor(line.madeInAYear / 12);
  const anywhere = () => (month - 1) * perMonth + random.whole(1, perMonth);
  const first = anywhere();
  return Array.from({ length: random.whole(1, 8) }, (_, index) => {
    const count = purchases === 'off the line' ? first + index : anywhere();
    return {
      benchId: benchIdFrom(Array.from({ length: 6 }, () => random.whole(0, 31))),
      modelSheetId: `M${digits(lineIndex + 1, 3)}`,
      serial: line.serial(year, count),
      dateOfManufacture: `${year}-${digits(month, 2)}`,
      standing: random.next() < 0.9 ? ('in service' as const) : ('quarantined' as const),
      ...(random.next() < 0.4 ? { regularUserId: random.pick(users) } : {}),
      tagNumber: random.whole(1, 2 * (2026 - year)),
    };
  });
};

const bought = (random: SeededRandom, size: number, purchases: Purchases): RegisteredDevice[] => {
  const devices = new Map<string, RegisteredDevice>();
  while (devices.size < size) {
    for (const device of purchase(random, purchases)) {
      if (devices.size < size) devices.set(`${device.modelSheetId} ${device.serial}`, device);
    }
  }
  return [...devices.values()];
};

export const generatedFleet = (
  size = 2000,
  purchases: Purchases = 'out of stock',
  seed = 20260310,
): GeneratedFleet => {
  const random = seededRandom(seed);
  const devices = bought(random, size, purchases);
  const registered = new Set(devices.map(({ serial }) => serial));
  const strangers = bought(random, size, purchases).filter(({ serial }) => !registered.has(serial));
  return { modelSheets: lines.map(sheetOf), devices, strangers };
};

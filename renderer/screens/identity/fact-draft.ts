/** What was seen on a device, while it is being entered: every fact as it stands in its field. */
import type { Observation } from '../../../src/domain/identity/observation.ts';
import { dateFragmentSchema, fragmentSchema } from '../../../src/domain/identity/observation.ts';
import { type LengthUnit, parseLength } from '../../../src/domain/length.ts';
import type { HookType, HousingColour, LifelineMaterial } from '../../../src/domain/model-sheet.ts';

export interface FactDraft {
  readonly serial: string;
  readonly manufacturer: string;
  readonly model: string;
  readonly dateOfManufacture: string;
  readonly lengthM: string;
  readonly lifelineMaterial: LifelineMaterial | '';
  readonly hookType: HookType | '';
  readonly housingColour: HousingColour | '';
  readonly benchId: string;
  readonly tagNumber: string;
  readonly lastUserId: string;
  readonly found: NonNullable<Observation['found']> | '';
}
export type FactField = keyof FactDraft;

export const emptyFacts: FactDraft = {
  serial: '',
  manufacturer: '',
  model: '',
  dateOfManufacture: '',
  lengthM: '',
  lifelineMaterial: '',
  hookType: '',
  housingColour: '',
  benchId: '',
  tagNumber: '',
  lastUserId: '',
  found: '',
};

/** The facts of the menu, by number; the ninth is the page with what is left. */
export const menuFields = [
  'serial',
  'manufacturer',
  'model',
  'dateOfManufacture',
  'lengthM',
  'lifelineMaterial',
  'hookType',
  'housingColour',
] as const satisfies readonly FactField[];
export type MenuField = (typeof menuFields)[number];
export const otherFields = [
  'benchId',
  'tagNumber',
  'lastUserId',
  'found',
] as const satisfies readonly FactField[];

export type FactFault = 'badFragment' | 'badDate' | 'badLength' | 'badNumber';

/** What is wrong with a fact as it stands in its field; an empty one is not wrong. */
export const faultOf = (draft: FactDraft, field: FactField, unit: LengthUnit): FactFault | undefined => {
  const text = draft[field].trim();
  if (text === '') return undefined;
  switch (field) {
    case 'serial':
    case 'manufacturer':
    case 'model':
    case 'benchId':
      return fragmentSchema.safeParse(text).success ? undefined : 'badFragment';
    case 'dateOfManufacture':
      return dateFragmentSchema.safeParse(text).success ? undefined : 'badDate';
    case 'lengthM': {
      const lengthM = parseLength(text, unit);
      return lengthM !== undefined && lengthM > 0 && lengthM <= 200 ? undefined : 'badLength';
    }
    case 'tagNumber':
      return /^[1-9]\d{0,3}$/.test(text) ? undefined : 'badNumber';
    default:
      return undefined;
  }
};

export const isEmpty = (draft: FactDraft): boolean =>
  Object.values(draft).every((text) => text.trim() === '');

/** The facts that were entered; one that is at fault is left out. */
export const observationOf = (draft: FactDraft, unit: LengthUnit): Observation => {
  const good = (field: FactField): string =>
    faultOf(draft, field, unit) === undefined ? draft[field].trim() : '';
  const text = <
    Field extends 'serial' | 'manufacturer' | 'model' | 'benchId' | 'dateOfManufacture' | 'lastUserId',
  >(
    field: Field,
  ) => {
    const value = good(field);
    return value === '' ? {} : { [field]: value };
  };
  const lengthM = good('lengthM') === '' ? undefined : parseLength(good('lengthM'), unit);
  const { lifelineMaterial, hookType, housingColour, found } = draft;
  return {
    ...text('serial'),
    ...text('manufacturer'),
    ...text('model'),
    ...text('dateOfManufacture'),
    ...text('benchId'),
    ...text('lastUserId'),
    ...(lengthM === undefined ? {} : { lengthM }),
    ...(lifelineMaterial === '' ? {} : { lifelineMaterial }),
    ...(hookType === '' ? {} : { hookType }),
    ...(housingColour === '' ? {} : { housingColour }),
    ...(good('tagNumber') === '' ? {} : { tagNumber: Number(good('tagNumber')) }),
    ...(found === '' ? {} : { found }),
  };
};

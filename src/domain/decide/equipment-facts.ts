/** The rules of what the record of a device says of its purchase and its first use. */
import type { CalendarDate } from '../brand.ts';
import { isCompetentOn } from '../competence.ts';
import type { Device } from '../device.ts';
import { firstUseDay } from '../due/counted-from.ts';
import { type EquipmentFacts, isCertainlyBefore, knownDateSchema } from '../equipment-facts.ts';
import { isAdministrator, type Person } from '../person.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** A fact that is absent stays as it is; `null` says that it is not known. */
export interface FactsChange {
  readonly purchasedOn?: string | null | undefined;
  readonly firstUsedOn?: string | null | undefined;
}

/**
 * A device is made before it is bought and bought before it is used, and nothing of it is still to come. Once it was
 * inspected, a later first use would let it be revalidated later, so that is for an administrator or a competent person.
 */
export const decideRecordFacts = (
  device: Device,
  change: FactsChange,
  person: Person,
  on: CalendarDate,
): Decision => {
  const facts = {
    ...known('purchasedOn', change.purchasedOn, device.purchasedOn),
    ...known('firstUsedOn', change.firstUsedOn, device.firstUsedOn),
  };
  const fault = factsFault(facts, device.dateOfManufacture, on);
  if (fault !== undefined) return fault;
  if (facts.purchasedOn === device.purchasedOn && facts.firstUsedOn === device.firstUsedOn) return [];
  const { purchasedOn: _bought, firstUsedOn: _used, ...rest } = device;
  const isLater = firstUseDay({ ...rest, ...facts }) > firstUseDay(device);
  if (isLater && device.standing !== 'new' && !isAdministrator(person) && !isCompetentOn(person, on))
    return refusal('first-use-later-not-entitled', { name: person.name }, 'firstUsedOn');
  return [{ type: 'device.facts-recorded', benchId: device.benchId, ...facts }];
};

const known = (
  fact: keyof EquipmentFacts,
  said: string | null | undefined,
  before: string | undefined,
): EquipmentFacts => {
  const now = said === undefined ? before : (said ?? undefined);
  return now === undefined ? {} : { [fact]: now };
};

/** What speaks against the facts, at the fact that it speaks against. */
export const factsFault = (
  { purchasedOn, firstUsedOn }: EquipmentFacts,
  dateOfManufacture: string,
  on: CalendarDate,
): Refusal | undefined => {
  const made = knownDateSchema.safeParse(dateOfManufacture).data;
  for (const [field, text] of Object.entries({ purchasedOn, firstUsedOn })) {
    if (text === undefined) continue;
    if (isCertainlyBefore(on, text)) return refusal('fact-to-come', { text }, field);
    if (made !== undefined && isCertainlyBefore(text, made))
      return refusal('fact-before-made', { text, made }, field);
  }
  return purchasedOn !== undefined && firstUsedOn !== undefined && isCertainlyBefore(firstUsedOn, purchasedOn)
    ? refusal('used-before-bought', { used: firstUsedOn, bought: purchasedOn }, 'firstUsedOn')
    : undefined;
};

/** What was seen on a device, while it is being entered. */
import { describe, expect, it } from 'vitest';
import {
  emptyFacts,
  type FactDraft,
  type FactField,
  faultOf,
  isEmpty,
  observationOf,
} from '../../renderer/screens/identity/fact-draft.ts';

const draft = (facts: Partial<FactDraft>): FactDraft => ({ ...emptyFacts, ...facts });

describe('the facts of a device that cannot be read', () => {
  it('are none at first, and spaces are nothing', () => {
    expect(isEmpty(emptyFacts)).toBe(true);
    expect(isEmpty(draft({ serial: '  ' }))).toBe(true);
    expect(observationOf(emptyFacts, 'm')).toEqual({});
  });

  it.each<readonly [FactField, string, string | undefined]>([
    ['serial', '???', 'badFragment'],
    ['serial', 'N2-1?*', undefined],
    ['dateOfManufacture', '06/2018', 'badDate'],
    ['dateOfManufacture', '20?8-0?', undefined],
    ['lengthM', 'ten', 'badLength'],
    ['lengthM', '0', 'badLength'],
    ['lengthM', '10,05', undefined],
    ['tagNumber', '0', 'badNumber'],
    ['tagNumber', '12', undefined],
  ])('%s “%s” has the fault %s', (field, text, fault) => {
    expect(faultOf(draft({ [field]: text }), field, 'm')).toBe(fault);
  });

  it('become an observation in metres, without what is at fault', () => {
    // 50 ft is 15.24 m: NIST Special Publication 811, appendix B.8.
    expect(
      observationOf(draft({ serial: ' Q2?A ', lengthM: '50', tagNumber: 'x', hookType: 'carabiner' }), 'ft'),
    ).toEqual({ serial: 'Q2?A', lengthM: expect.closeTo(15.24, 9), hookType: 'carabiner' });
  });
});

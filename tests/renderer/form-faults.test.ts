/** Where the station's refusal of a form is shown. */
import { describe, expect, it } from 'vitest';
import { faultsOf, hasFaults } from '../../renderer/components/form-faults.ts';
import { positiveNumber } from '../../renderer/components/typed-number.ts';

describe('a refusal of a form', () => {
  it('stands at the field at fault, and then nowhere else', () => {
    const faults = faultsOf({ code: 'badge-taken', sentence: 'Taken.', field: 'badge' });
    expect(faults.at('name')).toBeUndefined();
    expect(faults.at('administrator.badge', 'badge')).toBe('Taken.');
    expect(faults.rest()).toBeUndefined();
  });

  it('stands at the end of the form where no field claims it', () => {
    const faults = faultsOf({ code: 'disk-full', sentence: 'Full.' });
    expect(faults.at('badge')).toBeUndefined();
    expect(faults.rest()).toBe('Full.');
    expect(faultsOf(undefined).rest()).toBeUndefined();
  });

  it('is told from a form without faults', () => {
    expect(hasFaults({ name: undefined, badge: undefined })).toBe(false);
    expect(hasFaults({ name: undefined, badge: 'Scan it.' })).toBe(true);
  });
});

describe('a number that a person types', () => {
  it.each([
    ['4.8', 4.8],
    ['4,8', 4.8],
    [' 140 ', 140],
  ])('%j is %d', (text, value) => {
    expect(positiveNumber(text)).toBe(value);
  });

  it.each(['', '0', '-3', '1.2.3', '4 8', 'five', '1e3'])('%j is none above zero', (text) => {
    expect(positiveNumber(text)).toBeUndefined();
  });
});

import { describe, expect, it } from 'vitest';
import { signingFault } from '../../../renderer/screens/bench/signing-fault.ts';
import { calendarDate } from '../../../src/domain/brand.ts';
import type { PersonView } from '../../../src/station/person-view.ts';
import { inspectionWith } from './checks.ts';

const inspection = inspectionWith(['housing.body'], { 'housing.body': { kind: 'good' } }, { kind: 'pass' });
const today = '2026-11-24';

const inspector: PersonView = {
  personId: 'P003',
  name: 'Wren Castellan',
  badge: 'HP10031',
  roles: ['inspector'],
  designation: {
    designatedBy: 'Ilse Marrowby',
    designatedOn: calendarDate('2025-02-01'),
    trainingValidUntil: calendarDate('2027-02-28'),
  },
  maySign: true,
  pinSet: true,
};

describe('what is in the way of a signature', () => {
  it('is nothing for a competent person who gave every answer', () => {
    expect(signingFault(inspection, inspector, today)).toBeUndefined();
  });

  it('is that nobody is signed in', () => {
    expect(signingFault(inspection, undefined, today)).toEqual({ kind: 'not signed in' });
  });

  it('is a missing designation', () => {
    const { designation: _none, ...rest } = inspector;
    expect(signingFault(inspection, { ...rest, maySign: false }, today)).toEqual({
      kind: 'not designated',
      name: 'Wren Castellan',
    });
  });

  it('is training that has run out, with its date', () => {
    const designation = { ...inspector.designation!, trainingValidUntil: calendarDate('2026-11-05') };
    expect(signingFault(inspection, { ...inspector, designation, maySign: false }, today)).toEqual({
      kind: 'training expired',
      name: 'Wren Castellan',
      date: '2026-11-05',
    });
  });

  it('is a designation that has not begun, with its date', () => {
    const designation = { ...inspector.designation!, designatedOn: calendarDate('2026-12-01') };
    expect(signingFault(inspection, { ...inspector, designation, maySign: false }, today)).toEqual({
      kind: 'not yet designated',
      name: 'Wren Castellan',
      date: '2026-12-01',
    });
  });

  it('is a PIN that was never set', () => {
    expect(signingFault(inspection, { ...inspector, pinSet: false }, today)?.kind).toBe('no PIN');
  });

  it('is an answer that somebody else gave, with the number of them', () => {
    expect(signingFault(inspection, { ...inspector, personId: 'P002', name: 'Teo Arandal' }, today)).toEqual({
      kind: 'answers by others',
      name: 'Teo Arandal',
      count: 1,
    });
  });
});

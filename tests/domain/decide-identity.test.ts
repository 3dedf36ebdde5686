/** Who is this, at the rules themselves: what the standings and the days of the demo do not reach. */
import { describe, expect, test } from 'vitest';
import { type BenchId, calendarDate, instant } from '../../src/domain/brand.ts';
import { decideProposeIdentity, decideTakeIdentity } from '../../src/domain/decide/identity.ts';
import { decideSign } from '../../src/domain/decide/inspection.ts';
import type { Device } from '../../src/domain/device.ts';
import { evolveDevice } from '../../src/domain/evolve.ts';
import type { IdentityCase } from '../../src/domain/identity/identity-case.ts';
import type { Inspection } from '../../src/domain/inspection.ts';
import type { Person } from '../../src/domain/person.ts';
import { generatedFleet } from '../support/generated-fleet.ts';
import { goodAnswer, procedure, program, releaseRules } from '../support/shipped-rules.ts';

const on = calendarDate('2026-03-10');
const at = instant('2026-03-10T08:00:00.000Z');
const occasion = { at, on, by: 'P002' };
const person = (personId: string): Person => ({
  personId,
  name: personId,
  badge: personId,
  roles: ['inspector'],
  designation: {
    designatedBy: 'Head of depot',
    designatedOn: calendarDate('2025-01-01'),
    trainingValidUntil: calendarDate('2027-01-01'),
  },
});
const benchId = 'K7M3X4Q9TD' as BenchId;
const device: Device = {
  benchId,
  modelSheetId: 'M001',
  serial: 'N2-18-1074',
  dateOfManufacture: '2018',
  marking: [{ element: 'serialNumber', state: 'legible', text: 'N2-18-1074' }],
  otherCodes: [],
  registeredOn: on,
  standing: 'in service',
  reasons: [],
  pastTags: [],
  lastTagNumber: 3,
};
const identity: IdentityCase = {
  identityCase: 4,
  openedBy: 'P002',
  openedOn: on,
  observation: { serial: 'N2-18-1?7?' },
  ranking: {
    candidates: [{ benchId, weight: 9, probability: 0.99, evidence: [{ field: 'serial', weight: 12 }] }],
    noneProbability: 0.01,
    startWeight: -3,
    weighed: 1,
  },
  keptAt: 'Cage',
  state: 'open',
  disagreements: [],
};
const proposedCase: IdentityCase = {
  ...identity,
  state: 'proposed',
  proposal: { benchId, by: 'P002', on },
};
const scrapped: Device = { ...device, standing: 'scrapped' };

test('a scrapped device is neither proposed nor taken', () => {
  expect(decideProposeIdentity(identity, scrapped, person('P002'), occasion)).toMatchObject({
    code: 'identity-scrapped',
  });
  expect(decideTakeIdentity(proposedCase, scrapped, [], person('P003'), occasion)).toMatchObject({
    code: 'identity-scrapped',
  });
});

test('taking an identity breaks an open inspection off and keeps what it had found', () => {
  const found = [
    {
      key: 'housing.body.crack',
      zone: 'housing',
      effect: 'remove',
      sentence: { en: 'Housing cracked.', es: 'Carcasa agrietada.' },
    },
  ] as const;
  const events = decideTakeIdentity(
    proposedCase,
    { ...device, openInspection: 12 },
    found,
    person('P003'),
    occasion,
  );
  expect(events).toMatchObject([
    { type: 'identity.taken', benchId, proposedBy: 'P002' },
    { type: 'inspection.abandoned', inspection: 12 },
    { type: 'device.removed', tagNumber: 4, reasons: [{ key: 'identity.presumed' }, found[0]] },
  ]);
});

describe('a presumed identity', () => {
  const presumed: Device = {
    ...device,
    presumedIdentity: { identityCase: 4, proposedBy: 'P002', confirmedBy: 'P003', on },
  };
  const modelSheet = generatedFleet(1).modelSheets[0]!;
  const inspection: Inspection = {
    inspection: 1,
    benchId,
    procedure: { key: procedure.key, version: procedure.version, sha256: '' },
    startedBy: 'P002',
    startedOn: on,
    state: 'open',
    answers: Object.fromEntries(
      procedure.checks.map((check) => [
        check.key,
        { answer: goodAnswer(check, modelSheet.ratedLengthM), by: 'P002', at },
      ]),
    ),
  };
  const sign = (of: Device) =>
    decideSign(
      inspection,
      { device: of, modelSheet, procedure, lengthUnit: 'm', inForce: { program }, releaseRules },
      person('P002'),
      occasion,
    );

  test('never passes an inspection, whatever was answered', () => {
    expect(sign(device)).toMatchObject([{ type: 'inspection.signed', verdict: { kind: 'pass' } }]);
    expect(sign(presumed)).toMatchObject({ code: 'identity-presumed' });
  });

  const read = (state: 'legible' | 'illegible') =>
    evolveDevice(presumed, {
      seq: 1,
      at,
      on,
      by: 'P002',
      event: { type: 'device.marking-read', benchId, marking: [{ element: 'serialNumber', state }] },
    });

  test('ends where the whole marking was read, and not before', () => {
    expect(read('illegible')?.presumedIdentity).toBeDefined();
    expect(read('legible')?.presumedIdentity).toBeUndefined();
  });

  test('keeps the words of the marking that were known before', () => {
    expect(read('illegible')?.marking).toEqual([
      { element: 'serialNumber', state: 'illegible', text: 'N2-18-1074' },
    ]);
  });
});

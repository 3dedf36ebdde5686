/** The rules of corrections, line by line; what a whole station shows of them is in `tests/station/amend.test.ts`. */
import { describe, expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { instant } from '../../src/domain/brand.ts';
import {
  type AmendedDevice,
  type Amending,
  decideAmendDevice,
  decideAmendName,
  mayAmend,
} from '../../src/domain/decide/amend.ts';
import type { Decision } from '../../src/domain/decide/decision.ts';
import type { Device } from '../../src/domain/device.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import { added, day, designated, personAfter } from '../support/sample-person.ts';
import { program } from '../support/shipped-rules.ts';

const today = day('2025-06-01');
const occasion = { on: today, at: instant('2025-06-01T08:00:00.000Z'), by: 'P002' };
const inspector = personAfter(['2025-01-10', added()], ['2025-01-10', designated()]);
const administrator = personAfter(['2025-01-10', added(['administrator'], 'P001')]);
const attendant = personAfter(['2025-01-10', added(['attendant'], 'P005')]);
const sheet = {
  modelSheetId: 'M001',
  ratedLengthM: 6,
  loadIndicatorFitted: true,
  manufacturerIntervalMonths: 12,
} as unknown as ModelSheet;
const benchId = 'K7M3X4Q9TD' as BenchId;
/** Passed on 1 March 2025 under the annual program, so due on 1 March 2026. */
const inService: Device = {
  benchId,
  modelSheetId: 'M001',
  serial: 'N6-18-1074',
  dateOfManufacture: '2018',
  marking: [],
  otherCodes: [],
  registeredOn: day('2025-01-10'),
  standing: 'in service',
  lastInspection: { inspection: 7, on: day('2025-03-01'), verdict: 'pass', by: 'P002' },
  dueOn: day('2026-03-01'),
  reasons: [],
  pastTags: [],
  lastTagNumber: 1,
};
const amending = (changes: Partial<Amending> = {}): Amending => ({
  amends: 3,
  person: inspector,
  because: 'Misread',
  markingReadNow: true,
  occasion,
  ...changes,
});
const amended = (changes: Partial<AmendedDevice> = {}): AmendedDevice => ({
  device: inService,
  modelSheet: sheet,
  program,
  signer: inspector,
  ...changes,
});
const codeOf = (decision: Decision): string => ('code' in decision ? decision.code : 'recorded');

test('a correction is made by an administrator or a competent person of the day', () => {
  expect(mayAmend(administrator, occasion)).toBeUndefined();
  expect(mayAmend(inspector, occasion)).toBeUndefined();
  expect(mayAmend(attendant, occasion)).toMatchObject({ code: 'amend-not-entitled' });
  const later = { ...occasion, on: day('2026-01-11') };
  expect(mayAmend(inspector, later)).toMatchObject({ code: 'amend-not-entitled' });
});

test('a correction says what was, takes it from the record, and names the device', () => {
  expect(decideAmendDevice({ field: 'serial', now: 'N6-18-1075' }, amended(), amending())).toEqual([
    {
      type: 'record.amended',
      amends: 3,
      benchId,
      correction: { field: 'serial', was: 'N6-18-1074', now: 'N6-18-1075' },
      because: 'Misread',
      markingReadNow: true,
    },
  ]);
});

describe('the marking is read on a device', () => {
  const unread = amending({ markingReadNow: false });

  test('in service before its serial number, date or model is corrected; its user is not on the marking', () => {
    expect(codeOf(decideAmendDevice({ field: 'serial', now: 'X' }, amended(), unread))).toBe(
      'amend-reading-needed',
    );
    expect(codeOf(decideAmendDevice({ field: 'dateOfManufacture', now: '2019' }, amended(), unread))).toBe(
      'amend-reading-needed',
    );
    const wantedSheet = { ...sheet, modelSheetId: 'M002' };
    const model = decideAmendDevice({ field: 'modelSheet', now: 'M002' }, amended({ wantedSheet }), unread);
    expect(codeOf(model)).toBe('amend-reading-needed');
    const user = amended({ wantedUser: attendant });
    expect(codeOf(decideAmendDevice({ field: 'regularUser', now: 'P005' }, user, unread))).toBe('recorded');
  });

  test('of no other standing', () => {
    for (const standing of ['new', 'quarantined', 'at manufacturer', 'scrapped'] as const) {
      const other = amended({ device: { ...inService, standing } });
      expect(codeOf(decideAmendDevice({ field: 'serial', now: 'X' }, other, unread))).toBe('recorded');
    }
  });
});

describe('another model on a device in service', () => {
  const into = (wanted: Partial<ModelSheet>, changes: Partial<AmendedDevice> = {}): string => {
    const wantedSheet = { ...sheet, modelSheetId: 'M002', ...wanted };
    const decision = decideAmendDevice(
      { field: 'modelSheet', now: 'M002' },
      amended({ wantedSheet, ...changes }),
      amending(),
    );
    return codeOf(decision);
  };

  test('is recorded where its latest inspection holds for it too', () => {
    expect(into({})).toBe('recorded');
    expect(into({ manufacturerIntervalMonths: 24 })).toBe('recorded');
  });

  test('is refused where its length, indicator, due date or signer would be another', () => {
    const refused = 'amend-inspection-does-not-hold';
    expect(into({ ratedLengthM: 10 as never })).toBe(refused);
    expect(into({ loadIndicatorFitted: false })).toBe(refused);
    expect(into({ manufacturerIntervalMonths: 6 })).toBe(refused);
    const narrow = personAfter(['2025-01-10', added()], ['2025-01-10', designated({ scope: ['M001'] })]);
    expect(into({}, { signer: narrow })).toBe(refused);
    expect(into({}, { signer: undefined })).toBe(refused);
  });

  test('is refused during an inspection, where it is unknown, and where it has that serial number already', () => {
    expect(into({}, { device: { ...inService, openInspection: 9 } })).toBe('inspection-already-open');
    expect(into({}, { wantedSheet: undefined })).toBe('model-sheet-unknown');
    expect(into({}, { sameSerial: '2JTJ77J0NM' as BenchId })).toBe('serial-taken');
  });

  test('does not depend on the inspection once it is out of service', () => {
    expect(into({ ratedLengthM: 10 as never }, { device: { ...inService, standing: 'quarantined' } })).toBe(
      'recorded',
    );
  });
});

test('a regular user is known, and did not sign the inspection on which the device is in service', () => {
  const into = (now: string, changes: Partial<AmendedDevice>): string =>
    codeOf(decideAmendDevice({ field: 'regularUser', now }, amended(changes), amending()));
  expect(into('P099', {})).toBe('person-unknown');
  expect(into('P002', { wantedUser: inspector })).toBe('amend-user-signed');
  const out = { ...inService, standing: 'quarantined' } as const;
  expect(into('P002', { wantedUser: inspector, device: out })).toBe('recorded');
});

test('what the record says already is no correction', () => {
  const same = decideAmendDevice({ field: 'serial', now: 'N6-18-1074' }, amended(), amending());
  expect(codeOf(same)).toBe('amend-nothing-changed');
  expect(codeOf(decideAmendDevice({ field: 'regularUser' }, amended(), amending()))).toBe(
    'amend-nothing-changed',
  );
});

test('a name is corrected by an administrator alone', () => {
  const wanted = { field: 'name', now: 'Ada Lorne' } as const;
  const byAdministrator = amending({ person: administrator, markingReadNow: false });
  expect(codeOf(decideAmendName(wanted, inspector, amending()))).toBe('role-needed');
  expect(decideAmendName(wanted, inspector, byAdministrator)).toEqual([
    {
      type: 'record.amended',
      amends: 3,
      personId: 'P002',
      correction: { field: 'name', was: 'Ada Lorn', now: 'Ada Lorne' },
      because: 'Misread',
    },
  ]);
  const same = { field: 'name', now: 'Ada Lorn' } as const;
  expect(codeOf(decideAmendName(same, inspector, byAdministrator))).toBe('amend-nothing-changed');
});

/** A device in service, its model sheet and a program, changed where a test of due dates needs it. */
import { type CalendarDate, calendarDate, metres, millimetres } from '../../src/domain/brand.ts';
import type { Device } from '../../src/domain/device.ts';
import { dueDatesOf } from '../../src/domain/due/due-dates.ts';
import type { TypeOfUse } from '../../src/domain/due/type-of-use.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import type { Program } from '../../src/domain/program.ts';
import { program } from './shipped-rules.ts';

export const inspectedOn = (on: string): Pick<Device, 'standing' | 'lastInspection'> => ({
  standing: 'in service',
  lastInspection: { inspection: 7, on: calendarDate(on), verdict: 'pass', by: 'P002' },
});

export const used = (typeOfUse: TypeOfUse, from = '2026-03-01'): NonNullable<Device['uses']>[number] => ({
  typeOfUse,
  from: calendarDate(from),
  on: calendarDate(from),
  by: 'P002',
});

/** Made, bought and first used in 2026 where nothing else is said; last inspected on 2026-03-10. */
export const dueDevice = (changed: Partial<Device> = {}): Device => ({
  benchId: 'K7M3X43SXJ' as Device['benchId'],
  modelSheetId: 'M001',
  serial: 'N-1',
  dateOfManufacture: '2026-01',
  firstUsedOn: '2026-03-01',
  marking: [],
  otherCodes: [],
  registeredOn: calendarDate('2026-02-20'),
  reasons: [],
  pastTags: [],
  lastTagNumber: 1,
  ...inspectedOn('2026-03-10'),
  ...changed,
});

export const dueSheet = (changed: Partial<ModelSheet> = {}): ModelSheet => ({
  modelSheetId: 'M001',
  manufacturer: 'Norvane',
  model: 'Lode 2',
  ratedLengthM: metres(2),
  lifelineMaterial: 'galvanised',
  lifelineDiameterMm: millimetres(4.8),
  capacityKg: { from: 59, to: 140 },
  standard: 'ANSI/ASSP Z359.14',
  loadIndicatorFitted: false,
  manual: 'Norvane manual LD-02, edition 3 (invented)',
  ...changed,
});

/** The annual one that the product ships, with nothing else in it. */
export const dueProgram = (changed: Partial<Program> = {}): Program => ({ ...program, ...changed });

export const twoAYear: Program['jurisdictions'][number] = {
  name: { en: 'Two a year', es: 'Dos al año' },
  inspectionMonths: 6,
  source: { mark: 'from memory', citation: 'Cal. Code Regs. title 8 §1670' },
};

/** What and when, the earliest first. */
export const datesOf = (
  device: Device,
  sheet = dueSheet(),
  rules = dueProgram(),
): readonly (readonly [what: string, on: CalendarDate, rule: string])[] =>
  dueDatesOf(device, sheet, rules).map(({ what, on, rule }) => [what, on, rule] as const);

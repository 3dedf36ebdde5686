/** Which devices a notice means, each case worked by hand: maker, model, date of manufacture, marking, presumed identity. */
import { expect, test } from 'vitest';
import type { Device } from '../../../src/domain/device.ts';
import type { Observation } from '../../../src/domain/identity/observation.ts';
import { markingElements } from '../../../src/domain/marking.ts';
import { matchMade } from '../../../src/domain/recall/match-made.ts';
import { matchName } from '../../../src/domain/recall/match-name.ts';
import { matchNotice } from '../../../src/domain/recall/match-notice.ts';
import { type Affected, noticeTextSchema } from '../../../src/domain/recall/notice.ts';
import { subjectOf } from '../../../src/domain/recall/recall-subject.ts';

type Level = 'certain' | 'possible' | 'no';

test.each<[string, string, Level, string]>([
  ['Lode 6', 'Lode 6', 'certain', 'the same'],
  ['Lode 6', 'LODE-6', 'certain', 'letters and digits are the same'],
  ['Lode 6', 'Lode', 'possible', 'the notice may mean all of that name'],
  ['Lode 6', 'Lode 6 SS', 'possible', 'the register may have left the ending out'],
  ['Lode 6', 'Lode 60', 'no', '6 and 60 are different numbers'],
  ['Lode 6', 'Lode 2', 'no', 'another number'],
  ['Lode6', 'Lode 6 SS', 'possible', 'the words are the same without the space'],
  ['Lode 10', 'Lode IO', 'possible', 'I and O may stand for 1 and 0'],
  ['Lode ?', 'Lode 6', 'possible', 'the character may be 6'],
  ['Lod?', 'Lode 6', 'possible', 'the rest may be worn off'],
  ['X*', 'Lode 6', 'no', 'it begins with another letter'],
  ['*', 'Lode 6', 'possible', 'nothing can be read'],
  ['Lode 6', 'Lode *', 'certain', 'the notice means all that begin so'],
  ['Stayline 10', 'Lode *', 'no', 'it begins otherwise'],
])('the name %s and the name %s in a notice: %s, for %s', (seen, named, level) => {
  expect(matchName(seen, named)).toBe(level);
});

test.each<[string, string | undefined, string | undefined, Level, string]>([
  ['2018-06-15', '2018-06', '2018-09', 'certain', 'a day inside'],
  ['2018-06', '2018-06', '2018-09', 'certain', 'the whole month is inside'],
  ['2018-05', '2018-06', '2018-09', 'no', 'the month before'],
  ['2018-09-30', '2018-06', '2018-09', 'certain', 'the last day'],
  ['2018-10-01', '2018-06', '2018-09', 'no', 'the day after'],
  ['2018', '2018-06', '2018-09', 'possible', 'some of the year is inside'],
  ['2018', '2017', '2019', 'certain', 'the whole year is inside'],
  ['2018', undefined, '2017-12', 'no', 'the year after'],
  ['2019', '2018-06', undefined, 'certain', 'all after the beginning'],
  ['20?8', '2018', '2018', 'possible', '2018 fits'],
  ['200?', '2010', '2018', 'no', '2000 to 2009'],
  ['2018-0?', '2018-06', '2018-09', 'possible', 'June fits'],
  ['2018-1?', '2018-06', '2018-09', 'no', 'October to December'],
  ['', '2018-06', '2018-09', 'possible', 'nothing can be read'],
  ['06/2018', '2018-06', '2018-09', 'possible', 'the year alone is relied upon'],
  ['June 2017', '2018-06', '2018-09', 'no', 'another year'],
  ['lot 2017 of 2018', '2018', '2018', 'possible', 'two numbers that may be years'],
  ['18-06', '2018-06', '2018-09', 'possible', 'no year in four digits'],
  ['3018', '2018', '2018', 'possible', 'no year of this trade: something was misread'],
  ['2018-13', '2018-06', '2018-06', 'possible', 'there is no such month: any of the year'],
])('a date of manufacture %s against %s to %s: %s, for %s', (written, from, until, level) => {
  const range = { ...(from === undefined ? {} : { from }), ...(until === undefined ? {} : { until }) };
  expect(matchMade(written, range)).toBe(level);
});

const notice = (...affected: readonly Partial<Affected>[]) =>
  noticeTextSchema.parse({
    manufacturer: 'Norvane',
    reference: 'SN 2026-04',
    issuedOn: '2026-04-01',
    instruction: { en: 'Return to Norvane.' },
    affected,
  });
const ofLode6 = notice({ models: ['Lode 6'], serials: ['B-0991…B-1010'] });

const legible = markingElements.map((element) => ({ element, state: 'legible' as const }));
const withState = (element: string, state: Device['marking'][number]['state']): Device['marking'] =>
  legible.map((entry) => (entry.element === element ? { ...entry, state } : entry));

const matchOf = (
  device: Partial<Device>,
  sheet: { manufacturer?: string; model?: string; manufacturerReference?: string } = {},
  observation?: Observation,
  text = ofLode6,
) =>
  matchNotice(
    text,
    subjectOf(
      { serial: 'B-0995', dateOfManufacture: '2018-06', marking: legible, ...device },
      { manufacturer: 'Norvane', model: 'Lode 6', ...sheet },
      observation,
    ),
  );

test('maker, model and serial number legible and named: certain', () => {
  expect(matchOf({})).toEqual({ level: 'certain', grounds: ['named'] });
});

test('another maker, another model, another serial number: no, for that', () => {
  expect(matchOf({}, { manufacturer: 'Quillmoor' })).toEqual({ level: 'no', grounds: ['other-maker'] });
  expect(matchOf({}, { model: 'Lode 2' })).toEqual({ level: 'no', grounds: ['other-model'] });
  expect(matchOf({ serial: 'B-2000' })).toEqual({ level: 'no', grounds: ['serial-outside'] });
});

test('the maker’s own number of the model is as good as its name', () => {
  const byReference = notice({ models: ['9520000000028'] });
  const sheet = { manufacturerReference: '9520000000028' };
  expect(matchOf({}, sheet, undefined, byReference).level).toBe('certain');
  expect(matchOf({}, {}, undefined, byReference).level).toBe('no');
});

test('every condition of one group must hold, and one group is enough', () => {
  const made = { from: '2019-01' };
  const narrow = notice({ models: ['Lode 6'], serials: ['B-0991…B-1010'], made });
  expect(matchOf({}, {}, undefined, narrow)).toEqual({ level: 'no', grounds: ['made-outside'] });
  const wide = notice(
    { models: ['Lode 6'], serials: ['C-1…C-9'] },
    { models: ['Lode 2', 'Lode 6'], made: { until: '2018' } },
  );
  expect(matchOf({}, {}, undefined, wide).level).toBe('certain');
  expect(matchOf({ dateOfManufacture: '' }, {}, undefined, wide)).toEqual({
    level: 'possible',
    grounds: ['made-in-doubt'],
  });
});

test('an empty serial number is possible, as is one that is partly legible', () => {
  expect(matchOf({ serial: '' })).toEqual({ level: 'possible', grounds: ['serial-unreadable'] });
  expect(matchOf({ serial: 'B-1?0?' })).toEqual({ level: 'possible', grounds: ['serial-unreadable'] });
  expect(matchOf({ serial: 'B-2?0?' }).level).toBe('no');
});

test('where the marking is lost the word of the register alone is no no', () => {
  const marking = withState('serialNumber', 'illegible');
  expect(matchOf({ serial: 'B-2000', marking })).toEqual({
    level: 'possible',
    grounds: ['serial-unreadable'],
  });
  expect(matchOf({ marking: withState('model', 'missing') }, { model: 'Lode 2' })).toEqual({
    level: 'possible',
    grounds: ['model-in-doubt'],
  });
  expect(matchOf({ marking: withState('manufacturer', 'illegible') }, { manufacturer: 'Quillmoor' })).toEqual(
    {
      level: 'possible',
      grounds: ['maker-in-doubt'],
    },
  );
  expect(matchOf({ serial: 'B-2??0', marking }).level).toBe('no');
});

test('what only a list says is possible until an inspection has passed, and another serial number is no', () => {
  const marking = withState('serialNumber', 'not read');
  expect(matchOf({ marking })).toEqual({ level: 'possible', grounds: ['serial-not-read'] });
  const lastInspection = {
    inspection: 1,
    on: '2026-01-10',
    verdict: 'pass',
    by: 'P1',
  } as Device['lastInspection'];
  expect(matchOf({ marking, lastInspection } as Partial<Device>).level).toBe('certain');
  expect(matchOf({ marking, serial: 'B-2000' }).level).toBe('no');
});

const presumedIdentity = {
  identityCase: 4,
  proposedBy: 'a',
  confirmedBy: 'b',
  on: '2026-01-10',
} as Device['presumedIdentity'];
const presumed = { presumedIdentity, marking: withState('serialNumber', 'illegible') } as Partial<Device>;

test('a presumed device is possible for what it is taken for, and for what was seen on it', () => {
  expect(matchOf({ ...presumed, marking: legible })).toEqual({
    level: 'possible',
    grounds: ['presumed'],
  });
  const seen = { manufacturer: 'Norvane', model: 'Lode 6', serial: 'B-10?0' } as Observation;
  expect(matchOf({ ...presumed, marking: legible, serial: 'B-2000' }, {}, seen).level).toBe('possible');
});

test('a presumed device is no only where neither the register nor anything seen on it fits', () => {
  const seen = { manufacturer: 'Norvane', model: 'Lode 6', serial: 'B-2?00' } as Observation;
  const device = { ...presumed, marking: legible, serial: 'B-2000' };
  expect(matchOf(device, {}, seen)).toEqual({ level: 'no', grounds: ['serial-outside'] });
  expect(matchOf(device, {}, { serial: 'B-2?00' } as Observation).level).toBe('no');
  expect(matchOf(device, {}, { manufacturer: 'Norvane' } as Observation).level).toBe('possible');
});

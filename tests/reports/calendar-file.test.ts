/** The calendar file as an independent reader of iCalendar finds it (ical.js, https://github.com/kewisch/ical.js). */
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../src/domain/brand.ts';
import { addDays } from '../../src/domain/calendar.ts';
import { type CalendarEvent, toCalendarFile } from '../../src/reports/calendar-file.ts';

const at = '2026-03-10T08:15:30.250Z';
const dayAfter = (on: string): string => addDays(calendarDate(on), 1);
const textOf = (events: readonly CalendarEvent[]): string =>
  Buffer.from(toCalendarFile({ at, events }, dayAfter)).toString('utf8');

const hostile = [
  'commas, semicolons; colons: and "quotes"',
  'a backslash \\ before n: \\n, and two \\\\',
  'BEGIN:VEVENT\r\nUID:stolen\r\nEND:VEVENT',
  'one\nline\rafter\r\nanother',
  'Ñandú, Ærø, 東京 工具室, 🪝🧰 and é as e\u0301',
  `${'ü'.repeat(200)} ${'🪝'.repeat(60)}`,
  ' spaces at both ends \t',
  '',
];

const event = (text: string, index: number): CalendarEvent => ({
  uid: `D${index}-2026-12-31@harrow-point.srl-bench`,
  on: '2026-12-31',
  summary: `Inspect ${text}`,
  description: [text, 'Next inspection due: 31 Dec 2026', text],
});

/** Line breaks are said as `\n`, and control characters have no place in text (RFC 5545 section 3.3.11). */
const asText = (text: string): string => text.replaceAll(/\r\n?/g, '\n');

describe('a calendar file', () => {
  test('is read by an independent reader with every field as it was given, whatever the names hold', () => {
    const events = hostile.map(event);
    const calendar = new ICAL.Component(ICAL.parse(textOf(events)));
    expect(calendar.name).toBe('vcalendar');
    const property = (name: string) => calendar.getFirstPropertyValue(name);
    expect([property('version'), property('calscale'), property('method')]).toEqual([
      '2.0',
      'GREGORIAN',
      'PUBLISH',
    ]);
    expect(property('prodid')).toBe('-//SRL Bench//Bench plan//EN');
    const found = calendar.getAllSubcomponents('vevent');
    expect(found).toHaveLength(events.length);
    for (const [index, component] of found.entries()) {
      const read = new ICAL.Event(component);
      const given = events[index]!;
      expect(read.uid).toBe(given.uid);
      expect(read.summary).toBe(asText(given.summary));
      expect(read.description).toBe(asText(given.description.join('\n')));
      expect([read.startDate.isDate, read.startDate.toString()]).toEqual([true, '2026-12-31']);
      expect([read.endDate.isDate, read.endDate.toString()]).toEqual([true, '2027-01-01']);
      expect(component.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-03-10T08:15:30Z');
      expect(component.getFirstPropertyValue('transp')).toBe('TRANSPARENT');
      expect(component.getAllProperties().map(({ name }) => name)).toEqual([
        'uid',
        'dtstamp',
        'dtstart',
        'dtend',
        'summary',
        'description',
        'transp',
      ]);
    }
  });

  test('has lines of 75 octets at most, each ended by CR and LF, and tears no character (RFC 5545 section 3.1)', () => {
    const bytes = toCalendarFile({ at, events: hostile.map(event) }, dayAfter);
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const lines = text.split('\r\n');
    expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBe(75);
    for (const line of lines) expect(() => encodeURIComponent(line)).not.toThrow();
  });

  test('leaves out control characters, which have no place in text', () => {
    const read = new ICAL.Component(ICAL.parse(textOf([event('a\u0007b\u0000c\u001b[31m', 1)])));
    const found = new ICAL.Event(read.getFirstSubcomponent('vevent')!);
    expect(found.summary).toBe('Inspect abc[31m');
  });

  test('without any event is a calendar all the same', () => {
    expect(new ICAL.Component(ICAL.parse(textOf([]))).getAllSubcomponents('vevent')).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import en from '../../assets/messages/en/tags.json' with { type: 'json' };
import es from '../../assets/messages/es/tags.json' with { type: 'json' };
import { calendarDate } from '../../src/domain/brand.ts';
import { dateText, monthText } from '../../src/tags/tag-date.ts';
import { shape } from '../../src/typesetting/typeface.ts';

describe('the words of tags', () => {
  test('are the same keys in English and Spanish', () => {
    expect(Object.keys(es)).toEqual(Object.keys(en));
  });

  test('can all be drawn in the typeface', () => {
    const words = [...Object.values(en), ...Object.values(es)].join('');
    const drawn = (weight: 'regular' | 'bold') =>
      shape(words, weight)
        .segments.map(({ text }) => text)
        .join('');
    expect(words).not.toContain('?');
    expect([drawn('regular'), drawn('bold')]).toEqual([words, words]);
  });
});

describe('a date on a tag', () => {
  test('has its month in letters', () => {
    expect(dateText(calendarDate('2026-11-24'), ['en'])).toBe('24 NOV 2026');
    expect(dateText(calendarDate('2026-01-05'), ['es'])).toBe('5 ENE 2026');
  });

  test('has its month in each language of the tag where the two differ', () => {
    expect(monthText(calendarDate('2027-11-24'), ['en', 'es'])).toBe('NOV 2027');
    expect(monthText(calendarDate('2027-12-03'), ['es', 'en'])).toBe('DIC/DEC 2027');
  });

  test('has the three-letter month that each language uses', () => {
    // Unicode CLDR, through the runtime's own Intl; September is four letters in both there and three on a tag.
    for (const [language, locale] of [
      ['en', 'en-US'],
      ['es', 'es-ES'],
    ] as const) {
      for (let month = 1; month <= 12; month += 1) {
        const iso = `2026-${String(month).padStart(2, '0')}-15`;
        const short = new Date(`${iso}T12:00:00Z`).toLocaleDateString(locale, {
          month: 'short',
          timeZone: 'UTC',
        });
        expect(monthText(calendarDate(iso), [language])).toBe(`${short.slice(0, 3).toUpperCase()} 2026`);
      }
    }
  });
});

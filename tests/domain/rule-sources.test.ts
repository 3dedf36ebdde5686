/** What the rules rest on, gathered from the rules and held against the text of their files. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sourcesOfRules } from '../../src/domain/rule-sources.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`../../assets/${name}`, import.meta.url), 'utf8');

test('every source of the shipped files is named, as often as it stands there, what is quoted from memory first', () => {
  const texts = ['procedures/cable-srl.v2.json', 'desk/desk.v2.json', 'programs/release/release.v1.json'].map(
    textOf,
  );
  const sources = sourcesOfRules(texts.map((text) => JSON.parse(text)));
  const marks = [...texts.join('').matchAll(/"mark": "([^"]+)"/g)].map(([, mark]) => mark);
  const counted = (mark: string): number =>
    sources.filter((source) => source.mark === mark).reduce((sum, { rules }) => sum + rules, 0);
  for (const mark of new Set(marks))
    expect({ mark, rules: counted(mark!) }).toEqual({
      mark,
      rules: marks.filter((each) => each === mark).length,
    });
  expect(sources[0]?.mark).toBe('from memory');
  expect(sources.length).toBeLessThan(marks.length);
});

test('a rule says what it is for by its own title, once, and a rule without one is only counted', () => {
  const source = { mark: 'published', citation: 'A leaflet' };
  const title = { en: 'Housing', es: 'Carcasa' };
  expect(sourcesOfRules([{ checks: [{ title, source }, { title, source }, { source }] }])).toEqual([
    { ...source, of: [title], rules: 3 },
  ]);
});

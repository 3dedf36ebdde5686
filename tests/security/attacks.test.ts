/** The list of attacks is true: each names tests that are there. */
import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { attacks } from './attack-list.ts';

/** Names of tests and of their groups, as they stand in the source. */
const namesIn = (source: string): readonly string[] =>
  [...source.matchAll(/(['`])((?:(?!\1)[^\n])*)\1,\s*(?:async\b|\()/g)].map(([, , name]) => name ?? '');

test.each(attacks)('$attack: is run in $file', async ({ file, tests }) => {
  const names = namesIn(await readFile(new URL(`../${file}`, import.meta.url), 'utf8'));
  for (const words of tests)
    expect(
      names.some((name) => name.includes(words)),
      `${file}: ${words}`,
    ).toBe(true);
});

/** The message catalogues: the same messages in every language, with the same values to fill in. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { languages } from '../../src/domain/message.ts';

const folder = fileURLToPath(new URL('../../assets/messages', import.meta.url));
const filesOf = (language: string): string[] => readdirSync(`${folder}/${language}`).sort();

/** Every message of a catalogue by its dotted key. */
const messagesOf = (language: string, file: string): Map<string, string> => {
  const found = new Map<string, string>();
  const collect = (tree: unknown, prefix: string): void => {
    if (typeof tree === 'string') found.set(prefix, tree);
    else
      for (const [key, part] of Object.entries(tree ?? {}))
        collect(part, prefix === '' ? key : `${prefix}.${key}`);
  };
  collect(JSON.parse(readFileSync(`${folder}/${language}/${file}`, 'utf8')), '');
  return found;
};

const placeholders = (message: string): string[] =>
  [...new Set(message.match(/\{\{?\s*\w+\s*\}?\}/g))].sort();

describe('the message catalogues', () => {
  it('have the same files in every language', () => {
    for (const language of languages) expect(filesOf(language)).toEqual(filesOf('en'));
    expect(filesOf('en').length).toBeGreaterThan(0);
  });

  for (const file of filesOf('en')) {
    const english = messagesOf('en', file);
    for (const language of languages.filter((each) => each !== 'en')) {
      const other = messagesOf(language, file);
      it(`have the same keys in ${file}, en and ${language}`, () => {
        expect([...other.keys()].sort()).toEqual([...english.keys()].sort());
      });

      it(`fill in the same values in ${file}, en and ${language}`, () => {
        const differing = [...english].filter(
          ([key, message]) => placeholders(other.get(key) ?? '').join() !== placeholders(message).join(),
        );
        expect(differing.map(([key]) => key)).toEqual([]);
      });

      it(`leave a message empty in all languages or in none in ${file}, en and ${language}`, () => {
        const differing = [...english].filter(
          ([key, message]) => (message.trim() === '') !== (other.get(key)?.trim() === ''),
        );
        expect(differing.map(([key]) => key)).toEqual([]);
      });
    }
  }
});

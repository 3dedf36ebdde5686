import { expect, test } from 'vitest';
import english from '../../assets/messages/en/cli.json' with { type: 'json' };
import spanish from '../../assets/messages/es/cli.json' with { type: 'json' };
import { languageOfEnvironment, wordsIn } from '../../src/host/words.ts';

const placeholders = (text: string): readonly string[] =>
  [...text.matchAll(/\{\{(\w+)\}\}/g)].map(([, name]) => name ?? '').sort();

test('both languages say the same things, with the same values in them', () => {
  expect(Object.keys(spanish)).toEqual(Object.keys(english));
  const differing = Object.entries(english).filter(
    ([key, text]) => placeholders(text).join() !== placeholders(spanish[key as keyof typeof spanish]).join(),
  );
  expect(differing).toEqual([]);
});

test('a value stands in a sentence as it is, whatever characters it has', () => {
  const text = '<b>$1 & {{what}}</b>';
  expect(wordsIn('en')('usage-unknown-option', { what: text })).toContain(`“${text}”`);
});

/** Source of the order: The Open Group Base Specifications, chapter 8.2, “Internationalization Variables”. */
test('the language is that of the environment, in the order of its variables', () => {
  expect(languageOfEnvironment({ LC_ALL: 'es_MX.UTF-8', LANG: 'en_US.UTF-8' })).toBe('es');
  expect(languageOfEnvironment({ LC_ALL: '', LC_MESSAGES: 'es_ES', LANG: 'en_US.UTF-8' })).toBe('es');
  expect(languageOfEnvironment({ LANG: 'pt_BR.UTF-8' })).toBe('en');
});

import { describe, expect, test } from 'vitest';
import { refusal } from '../../src/domain/refusal.ts';
import { sentenceOf } from '../../src/station/sentence.ts';
import { demo, demoStation } from '../support/station-fixture.ts';

describe('the sentence of a refusal', () => {
  test('says the domain’s own words in the language of the person', () => {
    const refused = refusal('role-needed', { roles: 'attendant, inspector' });
    expect(sentenceOf(refused, 'en')).toContain('the role attendant, inspector.');
    expect(sentenceOf(refused, 'es')).toContain('la función encargado, inspector.');
  });

  test('leaves a person’s own words as they are', () => {
    expect(sentenceOf(refusal('code-unknown', { code: '<b>{{x}}</b>' }), 'es')).toContain('«<b>{{x}}</b>»');
  });

  test('of an input that is not as it should be says why in the language of the person', async () => {
    const { station, expectOutput } = await demoStation();
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const call = (operation: string, input: object, language: 'en' | 'es') =>
      station.call({ session: 'window', operation, input, language });
    const told = async (operation: string, input: object, language: 'en' | 'es' = 'en') => {
      const result = await call(operation, input, language);
      return result.ok ? '' : result.error.sentence;
    };
    expect(await call('device.list', { limit: 'many' }, 'en')).toMatchObject({
      ok: false,
      error: { code: 'input-invalid', field: 'limit' },
    });
    expect(await told('device.list', { limit: 'many' })).toMatch(/expected number, received string/);
    expect(await told('device.list', { limit: 'many' }, 'es')).toMatch(/se esperaba número/);
    expect(await told('device.list', { limit: null })).toMatch(/received null/);
    expect(await told('person.show', {})).toBe('“personId” is not as it should be: it is missing.');
    expect(await told('person.show', {}, 'es')).toBe('«personId» no es correcto: falta.');
  });

  test('of half a character, which has no canonical JSON, says so and records nothing', async () => {
    const { station } = await demoStation();
    const result = await station.call({
      session: 'window',
      operation: 'device.list',
      input: { search: '\ud800' },
      language: 'en',
    });
    expect(result).toMatchObject({ ok: false, error: { code: 'input-invalid' } });
  });
});

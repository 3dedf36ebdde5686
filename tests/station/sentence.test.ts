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
    const call = (language: 'en' | 'es') =>
      station.call({ session: 'window', operation: 'device.list', input: { limit: 'many' }, language });
    const [english, spanish] = await Promise.all([call('en'), call('es')]);
    expect(english).toMatchObject({ ok: false, error: { code: 'input-invalid', field: 'limit' } });
    expect(english.ok ? '' : english.error.sentence).toMatch(/expected number/);
    expect(spanish.ok ? '' : spanish.error.sentence).toMatch(/se esperaba número/);
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

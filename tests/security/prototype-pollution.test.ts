/** `__proto__`, `constructor` and `prototype` as keys at every level of the input of every operation, as JSON brings them. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contract } from '../../src/station/contract.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { randomInputs } from './random-input.ts';

const seed = 20261130;
const inputsOfEach = 4;

const poison =
  '"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}},"prototype":{"polluted":true}';

/** The value as JSON in which every object has the poison before its own keys. */
const poisoned = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(poisoned).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const own = Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}:${poisoned(each)}`);
  return `{${[poison, ...own].join(',')}}`;
};

/** What would be found on every object, had any of it come through. */
const found = (): readonly unknown[] => [
  ({} as Record<string, unknown>).polluted,
  ([] as unknown as Record<string, unknown>).polluted,
  (Object as unknown as Record<string, unknown>).polluted,
  Reflect.get(() => undefined, 'polluted'),
];

test('every input of every operation changes no prototype, at whatever level the keys stand', async () => {
  const faults: string[] = [];
  const { station, callAs } = await demoStation({
    onFault: (error, operation) => void faults.push(`${operation}: ${String(error)}`),
  });
  const keys = Reflect.ownKeys(Object.prototype);
  const known = ['P001', 'GJQ81T5WX2', '2026-03-10', 'en', demo.pin, ...Object.values(demo)];
  let calls = 0;
  for (const [index, { name, input }] of [...contract.values()].entries()) {
    await callAs('window')('session.sign-in', { badge: demo.administrator });
    const samples = fc.sample(randomInputs(input, known), { numRuns: inputsOfEach, seed: seed + index });
    for (const sample of [{}, ...samples]) {
      calls += 1;
      const json = poisoned(sample);
      const result = await station.call({
        session: 'window',
        operation: name,
        input: JSON.parse(json),
        language: 'en',
      });
      if (!result.ok && result.error.code === 'internal-error') faults.push(`${name} ${json}`);
      if (JSON.stringify(result).includes('"polluted":true')) faults.push(`${name} gave it back: ${json}`);
      expect(found(), `${name} ${json}`).toEqual([undefined, undefined, undefined, undefined]);
    }
  }
  expect(faults).toEqual([]);
  expect(Reflect.ownKeys(Object.prototype)).toEqual(keys);
  expect(calls).toBeGreaterThan(5 * 150);
}, 300_000);

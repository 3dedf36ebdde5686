/** Every operation of the contract, called by nobody and by each role, against the table that was decided by hand. */
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { type Role, roles } from '../../src/domain/person.ts';
import { contract } from '../../src/station/contract.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { privileges, signedWithPin } from './privileges.ts';

const expected = new Map(
  privileges.flatMap(({ operations, roles }) => operations.map((name) => [name, roles])),
);

/** No operation takes a text for its input, so that none gets further than to be asked who calls. */
const noInput = 'no input';

test('the table names every operation of the contract, and each of them once', () => {
  const named = privileges.flatMap(({ operations }) => operations);
  expect(named.toSorted()).toEqual([...contract.keys()].toSorted());
});

describe('whoever is signed in with one role alone', () => {
  const badgeOf = (role: Role): string => `ONLY-${role}`;

  test('is let through where the table says so, and refused with the sentence about roles everywhere else', async () => {
    const { callAs, station, expectOutput } = await demoStation();
    await expectOutput('session.sign-in', { badge: demo.administrator });
    for (const role of roles)
      await expectOutput('person.add', { name: `Only ${role}`, badge: badgeOf(role), roles: [role] });
    const observed: string[] = [];
    const wanted: string[] = [];
    for (const caller of ['nobody', ...roles] as const) {
      if (caller !== 'nobody')
        expect(await callAs(caller)('session.sign-in', { badge: badgeOf(caller) })).toMatchObject({
          ok: true,
        });
      for (const name of contract.keys()) {
        const result = await station.call({
          session: caller,
          operation: name,
          input: noInput,
          language: 'en',
        });
        observed.push(`${caller} ${name}: ${result.ok ? 'done' : result.error.code}`);
        wanted.push(`${caller} ${name}: ${outcomeFor(caller, expected.get(name) ?? [])}`);
      }
    }
    expect(observed).toEqual(wanted);
  });

  const outcomeFor = (caller: Role | 'nobody', allowed: readonly Role[]): string => {
    if (allowed.length === 0) return 'input-invalid';
    if (caller === 'nobody') return 'sign-in-needed';
    return allowed.includes(caller) ? 'input-invalid' : 'role-needed';
  };
});

test('whatever is signed takes a PIN that cannot be left out', () => {
  const takesPin = [...contract.values()]
    .filter(({ input }) => input instanceof z.ZodObject && isNeeded(input, 'pin'))
    .map(({ name }) => name);
  expect(takesPin.toSorted()).toEqual(signedWithPin.toSorted());
});

const isNeeded = (schema: z.ZodObject, field: string): boolean => {
  const shape: Readonly<Record<string, z.ZodType>> = schema.shape;
  return shape[field]?.safeParse(undefined).success === false;
};

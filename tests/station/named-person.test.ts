/** A person who is named in a record and whom nobody knows: refused before anything is recorded. */
import { expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { sampleDevice } from './sample-device.ts';

const nobody = 'P999';
const benchId = 'MM68GV91MM' as BenchId;

test('names nobody in a fall, on a new device or as the last user of a worn one', async () => {
  const { expectOutput, expectError } = await demoStation();
  await expectOutput('session.sign-in', { badge: demo.inspector });
  await expectOutput('device.remove', { benchId, ground: 'fall' });
  const before = (await expectOutput('ledger.verify', {})).head.size;
  const unknown = (field: string) => ({ code: 'person-unknown', field });
  const facts = { userId: nobody };
  expect(await expectError('fall-case.open', { benchId, facts })).toMatchObject(unknown('facts.userId'));
  expect(
    await expectError('device.register', { ...sampleDevice('Q26C49301'), regularUserId: nobody }),
  ).toMatchObject(unknown('regularUserId'));
  expect(
    await expectError('identity.open', { observation: { serial: 'Q2?', lastUserId: nobody } }),
  ).toMatchObject(unknown('observation.lastUserId'));
  expect((await expectOutput('ledger.verify', {})).head.size).toBe(before);

  const { fallCase } = await expectOutput('fall-case.open', { benchId, facts: { userId: 'P006' } });
  expect(await expectError('fall-case.note', { fallCase: fallCase.number, facts })).toMatchObject(
    unknown('facts.userId'),
  );
});

/** The programs that the product ships: their versions, and the grounds on which they take a device out of service. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { productFolder } from '../../src/host/product-folder.ts';
import { loadRules } from '../../src/station/rules.ts';
import { asset } from '../support/shipped-rules.ts';
import { demo, demoStation } from '../support/station-fixture.ts';

const assets = join(productFolder, 'assets');

test('each program that is shipped is offered once, in its newest version, and stands on a base that is shipped', async () => {
  const { presets, shipped } = await loadRules(assets);
  const files = readdirSync(join(assets, 'programs'))
    .filter((name) => name.endsWith('.json'))
    .map((name) => /^(.*)\.v(\d+)\.json$/.exec(name)!)
    .map(([, key, version]) => ({ key: key!, version: Number(version) }));
  const newest = new Map<string, number>();
  for (const { key, version } of files) newest.set(key, Math.max(version, newest.get(key) ?? 0));
  expect(new Map(presets.map(({ key, version }) => [key, version]))).toEqual(newest);
  expect(presets).toHaveLength(newest.size);
  expect(shipped).toMatchObject({ key: 'annual', version: newest.get('annual') });
});

test('a newer version of the shipped program loses no ground for taking a device out of service', async () => {
  const { presets } = await loadRules(assets);
  const first = (asset('programs/annual.v1.json') as { removalGrounds: { key: string }[] }).removalGrounds;
  expect(first.map(({ key }) => key)).toEqual(['fall', 'impact', 'marking', 'damage', 'pre-use', 'other']);
  for (const { key, removalGrounds } of presets) {
    const keys = removalGrounds.map((ground) => ground.key);
    expect(keys, key).toEqual(expect.arrayContaining([...first.map((ground) => ground.key), 'recall']));
  }
});

test('a device that its manufacturer recalls is taken out of service in both languages, and the desk keeps it as recalled', async () => {
  const { expectOutput } = await demoStation();
  await expectOutput('session.sign-in', { badge: demo.administrator });
  const { devices } = await expectOutput('device.list', { standing: ['in service'], limit: 100 });
  const { benchId } = devices.find(({ dueState }) => dueState === 'current')!;
  await expectOutput('device.remove', { benchId, ground: 'recall' });
  const { device } = await expectOutput('device.show', { benchId });
  expect(device.standing).toBe('quarantined');
  expect(device.reasons.map(({ sentence }) => sentence)).toEqual([
    { en: 'Recalled by the manufacturer.', es: 'Retirado por el fabricante.' },
  ]);
  const { people } = await expectOutput('person.list', {});
  const userId = people.find(({ badge }) => badge === demo.user)!.personId;
  const preUse = { language: 'en' as const };
  const { refused } = await expectOutput('custody.check-out', { userId, benchIds: [benchId], preUse });
  expect(refused.map(({ code }) => code)).toEqual(['checkout-recalled']);
});

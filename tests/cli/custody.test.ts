/** The desk on the command line. */
import { expect, onTestFinished, test } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { DemoBench, expectRefused } from './demo-bench.ts';

const [ready, overdue] = ['MM68G-V91MM', 'KY9RC-DP2ES'];

test('a device goes out and comes back, a refusal names its reason, and kits and places are worked', async () => {
  const bench = await DemoBench.open();
  onTestFinished(() => bench.close());
  const run = (...args: string[]) => bench.run([...args, '--badge', demo.attendant]);
  const out = ['checkout', ready, '--user', demo.user];
  expectRefused(await run(...out), 'checkout-pre-use-needed');
  expect((await run(...out, '--confirmed')).json().checkedOut).toHaveLength(1);
  expectRefused(await run(...out, '--confirmed'), 'checkout-already-out');
  expectRefused(await run('checkout', overdue, '--user', demo.user, '--confirmed'), 'checkout-overdue');
  expect((await run('custody', 'list', '--user', demo.user)).json().total).toBe(1);
  expectRefused(await run('checkin', ready, '--no', 'fall'), 'check-in-question-open');
  const answered = ['--no', 'fall', 'questionable', '--yes', 'exposure=drop', '--note', 'From the platform.'];
  const back = (await run('checkin', ready, ...answered, '--answered-by', demo.user)).json();
  expect(back).toMatchObject({ held: true });
  expect(back.reasons[0].sentence.en).toBe('Was dropped. From the platform.');
  expect((await run('custody', 'history', '--device', ready)).json().spells[0].ended.how).toBe('checked in');
  expect((await run('custody', 'history')).code).toBe(2);
  const kit = await run('kit', 'save', overdue, '--name', 'Tower', '--code', 'T1');
  const { kits } = (await run('kit', 'list')).json();
  expect(kits.map(({ kitId }: { kitId: string }) => kitId)).toContain(kit.json().kitId);
  const counted = await run('count', 'place', 'A1', overdue, 'NOT-KNOWN-1');
  expect(counted.json().result).toMatchObject({ found: ['KY9RCDP2ES'], unknown: ['NOT-KNOWN-1'] });
  const { places } = (await run('count', 'places')).json();
  expect(places).toContainEqual(expect.objectContaining({ place: 'A1', devices: 1 }));
}, 120_000);

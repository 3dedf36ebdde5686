/** People and designations on the command line. */
import { expect, onTestFinished, test } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { DemoBench, expectRefused } from './demo-bench.ts';

test('a person is added, designated, changed, leaves and returns, and who was competent is answered with its grounds', async () => {
  const bench = await DemoBench.open();
  onTestFinished(() => bench.close());
  const run = (...args: string[]) =>
    bench.run(['person', ...args, '--badge', demo.administrator], { SRL_BENCH_PIN: '602214' });

  const added = await run('add', '--name', 'Mara Quill', '--code', 'HP20010', '--role', 'inspector');
  const { personId } = added.json().person;
  const until = '2199-01-01';
  const designated = await run(
    ...['designate', personId, '--by', 'Ilse Marrowby', '--on', '2026-01-05', '--until', until],
    ...['--document', 'HP-DES-20', '--course', 'Three days', '--trained', '2026-01-02', '--scope', 'M001'],
  );
  expect(designated.json().designations[0].designation).toMatchObject({
    document: 'HP-DES-20',
    trainedOn: '2026-01-02',
    scope: ['M001'],
  });
  expectRefused(
    await run('designate', personId, '--by', 'I', '--on', 'soon', '--until', until),
    'input-invalid',
  );
  expect((await run('pin', personId)).code).toBe(0);
  expectRefused(await run('pin', personId), 'pin-reset-reason-needed');

  const asked = await run('competence', personId, '--on', '2026-01-06');
  expect(asked.json()).toMatchObject({ competent: true, competence: { ground: 'designated' } });
  const { devices } = (await bench.run(['device', 'list', '--badge', demo.inspector])).json();
  const other = devices.find((device: { modelSheetId: string }) => device.modelSheetId === 'M004');
  const outside = await run('competence', personId, '--on', '2026-01-06', '--device', other.benchId);
  expect(outside.json().competence.ground).toBe('out of scope');

  const change = ['change', personId, '--code', 'HP20011'];
  expect((await run(...change)).code).toBe(2);
  expect((await run(...change, '--because', 'Lost')).json().person.badge).toBe('HP20011');
  expectRefused(await bench.run(['person', 'list', '--badge', 'HP20010']), 'badge-replaced');
  expect((await run('leave', personId, '--because', 'Moved')).json().person.left.because).toBe('Moved');
  expect((await run('return', personId, '--because', 'Back')).json().person.left).toBeUndefined();
  const listed = (await run('list')).json().people;
  expect(listed.find((each: { personId: string }) => each.personId === personId).maySign).toBe(false);
}, 120_000);

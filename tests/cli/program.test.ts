/** The employer's program, types of use and due dates on the command line. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { DemoBench, expectRefused } from './demo-bench.ts';

test('a program is adopted from a file that says what differs from a preset, and is shown with the earlier ones', async () => {
  const bench = await DemoBench.open();
  onTestFinished(() => bench.close());
  const run = (...args: string[]) =>
    bench.run(['program', ...args, '--badge', demo.administrator], { SRL_BENCH_PIN: demo.pin });
  const file = async (content: object): Promise<string> => {
    const path = join(bench.folder, 'program.json');
    await writeFile(path, JSON.stringify(content));
    return path;
  };

  const { presets } = (await run('presets')).json();
  expect(presets.map(({ key }: { key: string }) => key)).toEqual(['annual', 'by-type-of-use', 'two-a-year']);
  const before = (await run('show')).json();
  const release = [{ for: 'doubt', needs: [['doubt-settled']], persons: 3 }];
  const wanted = { basedOn: 'two-a-year', key: 'harrow-point', monthEnd: true, release };
  expectRefused(await run('adopt', await file({ ...wanted, basedOn: 'weekly' })), 'program-preset-unknown');
  expectRefused(await run('adopt', await file({ key: 'harrow-point' })), 'input-invalid');
  const weaker = { ...wanted, release: [{ for: 'fall', needs: [['investigation']] }] };
  expectRefused(await run('adopt', await file(weaker)), 'program-release-weaker');
  const adopted = (await run('adopt', await file(wanted), '--from', '2026-01-01')).json();
  expect(adopted).toMatchObject({ program: { key: 'harrow-point' }, effectiveFrom: '2026-01-01' });
  const after = (await run('show')).json();
  expect(after.program).toMatchObject({
    key: 'harrow-point',
    monthEnd: true,
    release,
    version: adopted.program.version,
  });
  expect(after.earlier).toHaveLength(before.adoption === undefined ? 0 : before.earlier.length + 1);
  expectRefused(await run('adopt', await file(wanted), '--from', '2026-01-01'), 'program-unchanged');
}, 120_000);

test('a type of use and a revalidation are recorded, and the due list says whose rule gave each date', async () => {
  const bench = await DemoBench.open();
  onTestFinished(() => bench.close());
  const run = (...args: string[]) => bench.run([...args, '--badge', demo.inspector], {});
  const { devices } = (await run('device', 'list', '--standing', 'in service', '--limit', '2')).json();
  const [one, two] = devices.map(({ benchId }: { benchId: string }) => benchId);

  const use = ['device', 'use', one, two, '--type'];
  expect((await run(...use, 'sometimes')).code).toBe(2);
  expect((await run(...use, 'severe to continuous')).json()).toMatchObject({ benchIds: [one, two] });
  const certificate = ['--by', 'Norvane Service', '--certificate', 'NS-77'];
  const last = (await run('device', 'show', one)).json().device.lastInspectedOn;
  const done = await run('device', 'revalidated', one, '--on', last, ...certificate);
  expect(done.json()).toMatchObject({ changed: true, certificate: 'NS-77' });
  const { device } = (await run('device', 'show', one)).json();
  expect(device).toMatchObject({ typeOfUse: 'severe to continuous', revalidation: { certificate: 'NS-77' } });

  const listed = (await run('due', '--on', '2199-12-31')).json();
  const found = listed.devices.find((each: { device: { benchId: string } }) => each.device.benchId === one);
  expect(found.due[0]).toMatchObject({ what: 'documented inspection', rule: 'standard', months: 3 });
  expectRefused(await run('due', '--on', 'soon'), 'input-invalid');
  expect((await run('device', 'maker-intervals', one, '--service-life', '9')).json()).toMatchObject({
    changed: true,
  });
  const after = (await run('device', 'show', one)).json().device.dueByEveryRule;
  expect(after.map(({ what }: { what: string }) => what)).toContain('service life');
  expect((await run('device', 'maker-intervals', one, '--service-life', 'none')).json().changed).toBe(true);
}, 120_000);

/** `inspect`: a documented inspection from an answers file, all of it or nothing. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DemoBench, example, expectRefused, inspector, pin } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open();
}, 60_000);
afterAll(() => bench.close());

describe('inspect', () => {
  test('a clean device passes, with the next due date and the status tag in the folder', async () => {
    const benchId = await bench.addDevice('T-2001', 'CLI-CODE-2001');
    const tags = join(bench.folder, 'tags');
    const file = await bench.write('pass.json', { ...(await example('pass.json')), code: 'CLI-CODE-2001' });
    const run = await bench.run(['inspect', file, '--tags', tags], {
      SRL_BENCH_PIN: pin,
    });
    expect(run.code, run.stderr).toBe(0);
    const { signedOn, dueOn } = run.json();
    expect(run.json()).toMatchObject({ benchId, verdict: 'pass', reasons: [], signed: true, tagNumber: 1 });
    // A documented inspection at least once a year (common practice, no source): the same day of the next year.
    expect(dueOn).toBe(`${Number(signedOn.slice(0, 4)) + 1}${signedOn.slice(4)}`);
    expect((await readdir(tags)).sort()).toEqual([
      `${benchId}-tag-1-status.pdf`,
      `${benchId}-tag-1-status.png`,
    ]);
    const read = await runCli(['read', join(tags, `${benchId}-tag-1-status.png`), '--json']);
    const ids = read.json().pictures[0].symbols.map((symbol: { benchId?: string }) => symbol.benchId);
    expect(ids).toContain(benchId);
  });

  test('three findings remove a device, all three reasons kept, in the language that was asked for', async () => {
    await bench.addDevice('T-2002', 'CLI-CODE-2002');
    const file = await bench.write('three.json', {
      ...(await example('three-findings.json')),
      code: 'CLI-CODE-2002',
    });
    const pinFile = await bench.write('pin.txt', `${pin}\n`);
    const run = await runCli([
      'inspect',
      file,
      '--pin-file',
      pinFile,
      '--data',
      bench.station,
      '--language',
      'es',
    ]);
    expect(run.code, run.stderr).toBe(0);
    expect(run.stdout).toContain('RETIRAR DEL SERVICIO');
    expect(run.stdout.match(/^ {2}- /gm)).toHaveLength(3);
    expect(run.stdout).toContain('3,2 m');
  });

  const refusals: readonly (readonly [string, string, (answers: Record<string, unknown>) => void])[] = [
    ['an unknown check', 'check-unknown', (answers) => Object.assign(answers, { 'housing.colour': 'good' })],
    [
      'an answer that the check does not take',
      'answer-not-allowed',
      (answers) => Object.assign(answers, { 'housing.body': 'legible' }),
    ],
    [
      'an unknown defect',
      'defect-unknown',
      (answers) => Object.assign(answers, { 'brake.midway': { defects: [{ defect: 'haunted' }] } }),
    ],
    [
      'a position beyond the lifeline',
      'position-beyond-lifeline',
      (answers) =>
        Object.assign(answers, { 'lifeline.shape': { defects: [{ defect: 'kink', position: '50.1 ft' }] } }),
    ],
    [
      'a position that is no length',
      'answers-file-invalid',
      (answers) =>
        Object.assign(answers, {
          'lifeline.shape': { defects: [{ defect: 'kink', position: 'near the hook' }] },
        }),
    ],
    [
      'a word that is no answer',
      'answers-file-invalid',
      (answers) => Object.assign(answers, { 'housing.body': 'fine' }),
    ],
    ['a check that is left out', 'inspection-incomplete', (answers) => delete answers['overall.doubt']],
    [
      'a check that waits for a second look',
      'inspection-incomplete',
      (answers) => Object.assign(answers, { 'housing.body': { defects: [{ defect: 'dirt' }] } }),
    ],
  ];
  test('one bad answer is refused, and nothing of the inspection is recorded', async () => {
    await bench.addDevice('T-2003', 'CLI-CODE-2003');
    const before = await bench.eventCount();
    for (const [what, code, spoil] of refusals) {
      const written = { ...(await example('pass.json')), code: 'CLI-CODE-2003' };
      spoil(written.answers);
      const file = await bench.write('spoilt.json', written);
      const run = await bench.run(['inspect', file], { SRL_BENCH_PIN: pin });
      expectRefused(run, code);
      expect(run.json().error.sentence.length, what).toBeGreaterThan(20);
    }
    expect(await bench.eventCount()).toBe(before);
  });

  test('a wrong PIN, a person who may not sign and a missing PIN leave no answer in the record', async () => {
    const benchId = await bench.addDevice('T-2004', 'CLI-CODE-2004');
    const file = await bench.write('pass-2004.json', {
      ...(await example('pass.json')),
      code: 'CLI-CODE-2004',
    });
    const args = ['inspect', file];
    expectRefused(await bench.run(args), 'pin-needed');
    expectRefused(
      await bench.run([...args, '--badge', 'HP10048'], { SRL_BENCH_PIN: pin }),
      'signer-training-expired',
    );
    expectRefused(await bench.run(args, { SRL_BENCH_PIN: '918273' }), 'pin-wrong');
    const shown = await bench.run(['device', 'show', benchId, '--badge', inspector]);
    expect(shown.json().device).toMatchObject({ standing: 'new' });
    expect(shown.json().device.openInspection).toBeUndefined();
    const { path } = (await bench.run(['ledger', 'export', '--badge', inspector])).json();
    const mine = (await readFile(path, 'utf8')).split('\n').filter((line) => line.includes(benchId));
    expect(mine.some((line) => line.includes('inspection.answered'))).toBe(false);
  });

  test('a file that is no JSON, or has fields that nobody knows, is named with what is wrong', async () => {
    expectRefused(
      await bench.run(['inspect', await bench.write('bad.json', '{"answers": ')]),
      'file-not-json',
    );
    const misspelt = { ...(await example('pass.json')), sing: true };
    const run = await bench.run(['inspect', await bench.write('misspelt.json', misspelt)]);
    expectRefused(run, 'answers-file-invalid');
    expect(run.json().error.field).toContain('sing');
    expectRefused(await bench.run(['inspect', join(bench.folder, 'nowhere.json')]), 'file-unreadable');
  });
});

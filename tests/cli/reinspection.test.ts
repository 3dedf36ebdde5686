/** Blind second inspections from the command line. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { factsOf } from '../../src/domain/decide/inspection.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import { applicableChecks, type Check } from '../../src/domain/procedure.ts';
import { procedure } from '../support/shipped-rules.ts';
import { DemoBench, expectRefused, inspector, pin } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open();
}, 120_000);
afterAll(() => bench.close());

/** Wren Castellan, a competent person too. */
const other = 'HP10031';

/** An answers file with nothing found. */
const goodFile = (benchId: string, modelSheet: ModelSheet): object => {
  const { ratedLengthM, lifelineDiameterMm } = modelSheet;
  const answerOf = ({ kind }: Check): unknown => {
    switch (kind) {
      case 'condition':
        return 'good';
      case 'marking':
        return 'legible';
      case 'payout-length':
        return { length: `${ratedLengthM} m` };
      case 'lifeline-diameter':
        return {
          diameters: [1, 3, 5].map((sixths) => ({
            position: `${((ratedLengthM * sixths) / 6).toFixed(2)} m`,
            diameter: `${lifelineDiameterMm} mm`,
          })),
        };
    }
  };
  const checks = applicableChecks(procedure, factsOf(modelSheet));
  return {
    benchId,
    sign: true,
    answers: Object.fromEntries(checks.map((check) => [check.key, answerOf(check)])),
  };
};

test('devices are drawn, inspected blind by another inspector, and stand as a pair then', async () => {
  const drawing = await bench.run(['reinspection', 'draw', '--count', '50', '--badge', 'HP10017']);
  expect(drawing.code).toBe(0);
  const { drawn } = drawing.json() as { drawn: string[] };
  expect(drawn.length).toBeGreaterThan(0);
  const { waiting } = (await bench.run(['reinspection', 'list', '--badge', other])).json();
  const mine = waiting.find(({ isForYou }: { isForYou: boolean }) => isForYou);
  const { device } = (await bench.run(['device', 'show', mine.benchId, '--badge', other])).json();
  expect(device).toMatchObject({ isBlind: true, reasons: [] });
  const file = await bench.write('blind.json', goodFile(mine.benchId, device.modelSheet));
  const environment = { SRL_BENCH_PIN: pin };
  const signed = await bench.run(['inspect', file, '--blind', '--badge', other], environment);
  expect([signed.code, signed.json()]).toMatchObject([0, { verdict: 'pass', isTagged: false, files: [] }]);
  expectRefused(
    await bench.run(['inspect', file, '--blind', '--badge', other], environment),
    'reinspection-not-drawn',
  );
  const after = (await bench.run(['device', 'show', mine.benchId, '--badge', other])).json().device;
  expect([after.standing, after.dueOn]).toEqual([device.standing, device.dueOn]);
  const { signed: pairs } = (await bench.run(['reinspection', 'list', '--badge', inspector])).json();
  expect(pairs).toMatchObject([{ benchId: mine.benchId, second: { by: 'Wren Castellan' } }]);
  const agreement = (await bench.run(['reinspection', 'agreement', '--badge', inspector])).json();
  expect(agreement).toMatchObject({ devices: 1, isFew: true, verdict: { pairs: 1 } });
}, 120_000);

test('the draw is for a whole number of devices, and is said in both languages', async () => {
  expect((await bench.run(['reinspection', 'draw', '--count', 'some', '--badge', inspector])).code).toBe(2);
  const said = async (language: string, what: string): Promise<string> => {
    const args = [
      'reinspection',
      what,
      '--data',
      bench.station,
      '--badge',
      inspector,
      '--language',
      language,
    ];
    return (await runCli(args)).stdout;
  };
  expect(await said('en', 'list')).toContain('Pairs signed: 1');
  expect(await said('es', 'list')).toContain('Pares firmados: 1');
  expect(await said('en', 'agreement')).toContain('Fewer than 20 pairs are too few');
  expect(await said('es', 'agreement')).toContain('Menos de 20 pares');
}, 60_000);

/**
 * 100,000 random calls of every operation, by nobody and by each role: none breaks the station, none is answered with anything
 * of how it looks inside, and none that is refused changes what is recorded. `RANDOM_CALLS` sets how many.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { roles } from '../../src/domain/person.ts';
import { contract } from '../../src/station/contract.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { hostileTexts, randomInputs } from './random-input.ts';

const calls = Number(process.env.RANDOM_CALLS ?? 100_000);
const seed = 20261130;

/** Each of these reads, draws or packs a great deal; so many calls of each are enough. */
const costly = new Set([
  'backup.make',
  'bench-card.show',
  'command-sheet.show',
  'device.list',
  'evidence.summary',
  'health.start',
  'import.preview',
  'insight.show',
  'ledger.export',
  'ledger.rebuild',
  'ledger.verify',
  'ledger.verify-start',
  'picture.read',
  'record.export',
  'report.make',
  'scanner.symbol',
  'schedule.plan',
  'schedule.planning',
  'station.load-demo',
  'tag.issue',
  'tag.preview',
  'tag.print',
]);
const costlyCalls = 15;

/** A place in our code, a file of it, or a value that was never meant for a sentence. */
const insides = /\bat \S+ \(|\.(?:ts|js|mjs):\d|node_modules|\[object |\bundefined\b|SQLITE_|ZodError/;

test(`no call of ${calls} breaks the station, shows its inside, or changes anything where it is refused`, async () => {
  const faults: string[] = [];
  const { station, callAs, expectOutput } = await demoStation({
    onFault: (error, operation) => void faults.push(`${operation}: ${String(error)}`),
  });
  await expectOutput('session.sign-in', { badge: demo.administrator });
  for (const role of roles)
    await expectOutput('person.add', { name: `Only ${role}`, badge: `ONLY-${role}`, roles: [role] });
  const { devices } = await expectOutput('device.list', { limit: 30 });
  const known = [
    ...devices.map(({ benchId }) => benchId),
    ...['P001', 'P003', 'P006', 'TS15', '2026-03-10', '2026-12-01', 'en', demo.pin, ...Object.values(demo)],
  ];
  const sessions = ['nobody', 'window', ...roles];
  const signIn = async (): Promise<void> => {
    await callAs('window')('session.sign-in', { badge: demo.administrator });
    for (const role of roles) await callAs(role)('session.sign-in', { badge: `ONLY-${role}` });
  };

  const cheap = [...contract.values()].filter(({ name }) => !costly.has(name));
  const each = Math.ceil((calls - costlyCalls * costly.size) / cheap.length);
  const inputs = [...contract.values()].flatMap(({ name, input }, index) =>
    fc
      .sample(randomInputs(input, known), {
        numRuns: costly.has(name) ? costlyCalls : each,
        seed: seed + index,
      })
      .map((sample) => ({ operation: name, input: sample })),
  );
  const order = fc.sample(fc.shuffledSubarray(inputs, { minLength: inputs.length }), {
    numRuns: 1,
    seed,
  })[0]!;

  const recorded = async (): Promise<number> => {
    const size = await station.call({
      session: 'nobody',
      operation: 'record.size',
      input: {},
      language: 'en',
    });
    return size.ok ? (size.output as { events: number }).events : -1;
  };
  let before = await recorded();
  let refusals = 0;
  for (const [index, { operation, input }] of order.entries()) {
    if (index % 500 === 0) await signIn();
    const session = sessions[index % sessions.length]!;
    const result = await station.call({ session, operation, input, language: index % 2 === 0 ? 'en' : 'es' });
    const after = await recorded();
    if (result.ok) {
      const isQuery = contract.get(operation)?.kind === 'query';
      if (isQuery && after !== before)
        faults.push(`${operation} ${JSON.stringify(input)} asked and recorded`);
    } else {
      refusals += 1;
      const { code, sentence } = result.error;
      const told = sentenceWithout(sentence, input);
      if (code === 'internal-error' || sentence === '' || insides.test(told))
        faults.push(`${operation} ${JSON.stringify(input)}: ${code}: ${sentence}`);
      // A wrong PIN is part of the record; what it was to sign is not.
      const mayBeRecorded = code.startsWith('pin-') ? 1 : 0;
      if (after < before || after > before + mayBeRecorded)
        faults.push(`${operation} ${JSON.stringify(input)} was refused and recorded`);
    }
    before = after;
  }
  expect(faults).toEqual([]);
  expect(order.length).toBeGreaterThanOrEqual(calls);
  expect(refusals).toBeGreaterThan(calls / 4);
  expect(refusals).toBeLessThan(order.length);
  expect(await expectOutput('ledger.verify', {})).toMatchObject({ sound: true });
}, 600_000);

/** A sentence may say again what it was given, whatever that looks like. */
const sentenceWithout = (sentence: string, input: unknown): string =>
  [...hostileTexts, JSON.stringify(input)]
    .filter((text) => text.length > 3)
    .reduce((rest, text) => rest.replaceAll(text, ''), sentence);

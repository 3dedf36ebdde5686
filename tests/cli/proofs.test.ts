/** What the command line hands out to be kept and checked outside the record. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DemoBench, expectRefused, inspector } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

describe('at the station of the demo', () => {
  let bench: DemoBench;
  beforeAll(async () => {
    bench = await DemoBench.open();
  });
  afterAll(() => bench.close());

  const file = (name: string) => join(bench.folder, name);
  const signedIn = ['--badge', inspector];

  test('a checkpoint is kept in a folder, and the record is verified with it', async () => {
    const written = (await bench.run(['ledger', 'checkpoint', '--out', bench.folder, ...signedIn])).json();
    const verified = await bench.run(['ledger', 'verify', '--checkpoint', written.path]);
    expect(verified.json()).toMatchObject({
      sound: true,
      keptSize: written.size,
      head: { size: written.size },
    });
    const lines = await runCli(['ledger', 'verify', '--checkpoint', written.path, '--data', bench.station]);
    expect(lines.stdout).toContain(`kept checkpoint covers (${written.size} events)`);
    expect((await bench.run(['ledger', 'verify', '--events-only'])).json()).toEqual({
      ...verified.json(),
      extent: 'events',
      keptSize: undefined,
    });
    expectRefused(
      await bench.run(['ledger', 'verify', '--checkpoint', await bench.write('note.txt', 'Bring bolts.')]),
      'checkpoint-malformed',
    );
  });

  test('an inspection is proved, and the proof is checked without the record', async () => {
    const proof = file('inspection.tlog-proof');
    const proved = await bench.run(['ledger', 'prove', '--inspection', '2', '--out', proof, ...signedIn]);
    const { seq } = proved.json();
    expect(JSON.parse(await readFile(`${proof}.json`, 'utf8'))).toMatchObject({
      seq,
      event: { inspection: 2 },
    });
    const here = (await bench.run(['ledger', 'check-proof', proof])).json();
    expect(here).toMatchObject({ seq, isKept: false });
    const elsewhere = await runCli(['ledger', 'check-proof', proof, '--key', here.key, '--json']);
    expect(elsewhere.json()).toEqual(here);
    const sentence = await runCli(['ledger', 'check-proof', proof, '--key', here.key]);
    expect(sentence.stdout).toContain(`The proof holds: this is event ${seq} of ${here.origin}`);
  });

  test('an event is proved against a checkpoint that was kept, and another record beside the proof is found out', async () => {
    const kept = file('kept.checkpoint');
    await bench.run(['ledger', 'checkpoint', '--out', kept, ...signedIn]);
    const proof = file('event.tlog-proof');
    await bench.run(['ledger', 'prove', '7', '--checkpoint', kept, '--out', proof, ...signedIn]);
    expect((await bench.run(['ledger', 'check-proof', proof, '--checkpoint', kept])).json()).toMatchObject({
      seq: 7,
      isKept: true,
    });
    const record = await bench.write(
      'other.json',
      (await readFile(`${proof}.json`, 'utf8')).replace('a', 'b'),
    );
    expectRefused(
      await bench.run(['ledger', 'check-proof', proof, '--record', record]),
      'proof-of-other-record',
    );
  });

  test('what is to be proved is named once, by event or by inspection', async () => {
    const out = ['--out', file('none'), ...signedIn];
    expectRefused(await bench.run(['ledger', 'prove', ...out]), 'ledger-prove-which');
    expectRefused(
      await bench.run(['ledger', 'prove', '3', '--inspection', '2', ...out]),
      'ledger-prove-which',
    );
    expectRefused(await bench.run(['ledger', 'prove', 'three', ...out]), 'ledger-prove-which');
    expectRefused(await bench.run(['ledger', 'prove', '99999', ...out]), 'event-unknown');
    expectRefused(await bench.run(['ledger', 'prove', '3', '--out', file('none')]), 'sign-in-needed');
  });
});

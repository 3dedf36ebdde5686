/** Held devices on the command line: the way back piece by piece, and scrap, after which no command brings anything back. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';
import { expect, onTestFinished, test } from 'vitest';
import { demo } from '../support/station-fixture.ts';
import { DemoBench, example, expectRefused } from './demo-bench.ts';

const opened = async () => {
  const bench = await DemoBench.open();
  onTestFinished(() => bench.close());
  const as =
    (badge: string) =>
    (...args: string[]) =>
      bench.run([...args, '--badge', badge], { SRL_BENCH_PIN: demo.pin });
  const pdf = join(bench.folder, 'certificate.pdf');
  const made = await PDFDocument.create();
  made.addPage();
  await writeFile(pdf, await made.save());
  const photo = join(bench.folder, 'cut.jpg');
  await sharp({ create: { width: 40, height: 30, channels: 3, background: '#777' } })
    .jpeg()
    .toFile(photo);
  return { bench, as, pdf, photo };
};

test('evidence, case, batch and tag lead a device back to its inspection, and a piece that is missing is named', async () => {
  const { bench, as, pdf, photo } = await opened();
  const [attendant, inspector, administrator] = [
    as(demo.attendant),
    as(demo.inspector),
    as(demo.administrator),
  ];
  const benchId = await bench.addDevice('T-2101', 'CLI-CODE-2101');
  await attendant(
    'checkin',
    benchId,
    '--without-checkout',
    '--yes',
    'fall=fall',
    '--no',
    'exposure',
    'questionable',
  );
  const shown = (await attendant('held', 'show', benchId)).json().held;
  expect(shown).toMatchObject({ reasons: [{ number: 1, missing: [{}, {}] }] });
  const tag = String(shown.currentTag.tagNumber);
  const today = shown.since;
  const missing = await attendant('release', benchId, '--tag', tag);
  expectRefused(missing, 'release-evidence-missing');
  expect(missing.json().error.sentence).toContain('investigation');
  const facts = ['--on', today, '--user', demo.user, '--job', 'Gantry 4', '--indicator', 'deployed'];
  await attendant('case', 'open', benchId, ...facts);
  expectRefused(
    await administrator('case', 'close', '1', '--findings', 'A slip.'),
    'fall-case-facts-missing',
  );
  const noted = ['--informed', 'Head of depot', '--bag', 'B-17', '--photo', photo];
  expect((await attendant('case', 'note', '1', ...noted)).json().fallCase.photos).toHaveLength(1);
  expect((await administrator('case', 'close', '1', '--findings', 'A slip.')).json().fallCase.phase).toBe(
    'closed',
  );
  expect((await attendant('return', 'add', benchId)).json().batch.number).toBe(1);
  const shipment = ['--carrier', 'Harrow Freight', '--follow-up', today, '--condition', 'Fell.'];
  await attendant('return', 'ship', '1', ...shipment, '--contamination', 'none known');
  expectRefused(await attendant('release', benchId, '--tag', tag), 'release-at-manufacturer');
  const certificate = ['--number', 'R-88', '--on', today, '--issuer', 'Norvane'];
  await attendant('return', 'receive', '1', benchId, '--outcome', 'repaired', ...certificate);
  expect((await attendant('return', 'list')).json().turnarounds).toMatchObject([
    { devices: 1, medianDays: 0 },
  ]);
  const evidence = [
    'held',
    'evidence',
    benchId,
    '--kind',
    'repair-certificate',
    '--reason',
    '1',
    ...certificate,
  ];
  expectRefused(await attendant(...evidence), 'evidence-document-needed');
  expect((await attendant(...evidence, '--document', pdf)).json().held.reasons[0].missing).toEqual([]);
  expectRefused(await attendant('release', benchId, '--tag', '999'), 'release-other-tag');
  expect((await attendant('release', benchId, '--tag', tag)).code).toBe(0);
  const file = await bench.write('pass.json', { ...(await example('pass.json')), code: 'CLI-CODE-2101' });
  expect((await inspector('inspect', file)).json()).toMatchObject({ benchId, verdict: 'pass' });
  expect((await attendant('held', 'list')).json().held).not.toContainEqual(
    expect.objectContaining({ device: expect.objectContaining({ benchId }) }),
  );
  expect((await bench.run(['ledger', 'verify'])).json().sound).toBe(true);
}, 240_000);

test('no command brings a scrapped device back', async () => {
  const { bench, as, pdf, photo } = await opened();
  const attendant = as(demo.attendant);
  const benchId = await bench.addDevice('T-2102', 'CLI-CODE-2102');
  const answers = ['--yes', 'exposure=drop', '--no', 'fall', 'questionable'];
  await attendant('checkin', benchId, '--without-checkout', ...answers);
  const scrap = ['scrap', benchId, '--lifeline-cut', '--marking-defaced', '--photo', photo];
  expectRefused(await attendant(...scrap, '--witness', demo.attendant), 'scrap-witness-needed');
  expect((await attendant(...scrap, '--witness', demo.user)).code).toBe(0);
  const certificate = ['--number', 'R-88', '--on', '2026-01-01', '--issuer', 'Norvane', '--document', pdf];
  const file = await bench.write('pass.json', { ...(await example('pass.json')), code: 'CLI-CODE-2102' });
  for (const again of [
    ['release', benchId, '--tag', '1'],
    ['held', 'evidence', benchId, '--kind', 'repair-certificate', '--reason', '1', ...certificate],
    ['return', 'add', benchId],
    ['case', 'open', benchId],
    [...scrap, '--witness', demo.user],
  ])
    expectRefused(await attendant(...again), 'device-scrapped');
  expectRefused(await as(demo.inspector)('inspect', file), 'device-scrapped');
  expectRefused(
    await attendant('checkout', benchId, '--user', demo.user, '--confirmed'),
    'checkout-scrapped',
  );
  expect((await attendant('device', 'show', benchId)).json().device.standing).toBe('scrapped');
}, 240_000);

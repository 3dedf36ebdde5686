/** Held devices on the command line: the way back piece by piece, and scrap, after which no command brings anything back. */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from 'commander';
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';
import { expect, onTestFinished, test } from 'vitest';
import { programFor } from '../../src/cli/program.ts';
import { wordsIn } from '../../src/host/words.ts';
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
  const list = join(bench.folder, 'batches.csv');
  const asked = ['report', 'held', '--list', 'return batches', '--format', 'csv', '--out', list];
  expect((await attendant(...asked)).code).toBe(0);
  expect(await readFile(list, 'utf8')).toMatch(/All back,.*,Repaired,R-88/);
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

type Arguments = readonly string[];

/** Every command that names a device, as it would be given for the scrapped one; `device` is its bench ID. */
const attemptsFor = (
  device: string,
  { pdf, photo, answers, list, today }: Record<'pdf' | 'photo' | 'answers' | 'list' | 'today', string>,
): Readonly<Record<string, readonly Arguments[]>> => {
  const certificate = ['--number', 'R-88', '--on', today, '--issuer', 'Norvane'];
  const noAnswers = ['--no', 'fall', 'exposure', 'questionable'];
  return {
    checkout: [[device, '--user', demo.user, '--confirmed']],
    checkin: [[device, '--without-checkout', ...noAnswers]],
    'custody transfer': [[device, '--to', demo.user, '--because', 'Found.', '--confirmed']],
    'custody lost': [[device, '--because', 'Never came back.']],
    'device show': [[device]],
    'device picture': [[device, photo]],
    'device facts': [[device, '--first-used', '2026']],
    'device minimum-diameter': [[device, '4.3 mm']],
    'device correct': [
      [device, '--field', 'serial', '--now', 'T-2999', '--because', 'Misread', '--marking-read-now'],
    ],
    'device use': [[device, '--type', 'infrequent to light']],
    'device revalidated': [[device, '--on', today, '--by', 'Norvane', '--certificate', 'R-89']],
    'device maker-intervals': [[device, '--inspection', '6']],
    inspect: [[answers], [answers, '--device', device, '--resume']],
    evidence: [[device]],
    lifeline: [[device]],
    tag: [[device, '--kind', 'status', '--out', pdf.replace('certificate', 'status')]],
    'identity propose': [['1', device]],
    'identity confirm': [['1', device, '--looked-at-device']],
    'kit save': [[device, '--name', 'Gantry', '--code', 'KIT9']],
    'count place': [['A1', device, '--keep-here', device]],
    'held show': [[device]],
    'held evidence': [
      [device, '--kind', 'repair-certificate', '--reason', '1', ...certificate, '--document', pdf],
    ],
    'held agree': [[device, '--evidence', '1']],
    'held withdraw': [[device, '--evidence', '1', '--because', 'Mistaken.']],
    release: [[device, '--tag', '1']],
    scrap: [[device, '--lifeline-cut', '--marking-defaced', '--photo', photo, '--witness', demo.user]],
    'case open': [[device, '--on', today]],
    'return add': [[device]],
    'return quote': [[device, '--price', '240']],
    'return take-out': [['1', device]],
    'return receive': [['1', device, '--outcome', 'repaired', ...certificate]],
    'report device': [[device, '--out', pdf.replace('certificate', 'device')]],
    'report return': [[device, '--out', pdf.replace('certificate', 'request')]],
    import: [[list]],
  };
};

/** The names of the commands whose help says that they take a device. */
const commandsOfDevices = (): readonly string[] => {
  const english = wordsIn('en');
  const named = ['help-device-id', 'help-identity-candidate', 'help-count-codes'] as const;
  const descriptions = named.map((key) => english(key));
  const walk = (command: Command, path: Arguments): readonly string[] => [
    ...(command.registeredArguments.some(({ description }) => descriptions.includes(description))
      ? [path.join(' ')]
      : []),
    ...command.commands.flatMap((each) => walk(each, [...path, each.name()])),
  ];
  const terminal = { environment: {}, out: () => undefined, err: () => undefined };
  return walk(programFor({ words: english, terminal }), []);
};

test('no command brings a scrapped device back', async () => {
  const { bench, as, pdf, photo } = await opened();
  const attendant = as(demo.attendant);
  const benchId = await bench.addDevice('T-2102', 'CLI-CODE-2102');
  const check = ['--yes', 'exposure=drop', '--no', 'fall', 'questionable'];
  await attendant('checkin', benchId, '--without-checkout', ...check);
  const today = (await attendant('held', 'show', benchId)).json().held.since;
  const scrap = ['scrap', benchId, '--lifeline-cut', '--marking-defaced', '--photo', photo];
  expectRefused(await attendant(...scrap, '--witness', demo.attendant), 'scrap-witness-needed');
  expect((await attendant(...scrap, '--witness', demo.user)).code).toBe(0);
  const standing = async () => (await attendant('device', 'show', benchId)).json().device.standing;
  expect(await standing()).toBe('scrapped');
  const answers = await bench.write('pass.json', {
    ...(await example('pass.json')),
    code: 'CLI-CODE-2102',
  });
  const list = await bench.write(
    'fleet.csv',
    `Bench ID,Manufacturer,Model,Serial number,Status\n${benchId},Quillmoor,Stayline 50 ft,T-2102,in service\n`,
  );
  const attempts = attemptsFor(benchId, { pdf, photo, answers, list, today });
  expect(commandsOfDevices().length).toBeGreaterThan(20);
  expect(commandsOfDevices().filter((name) => !(name in attempts))).toEqual([]);
  for (const [name, code] of [
    ['release', 'device-scrapped'],
    ['held evidence', 'device-scrapped'],
    ['return add', 'device-scrapped'],
    ['case open', 'device-scrapped'],
    ['scrap', 'device-scrapped'],
    ['checkout', 'checkout-scrapped'],
  ] as const)
    expectRefused(await attendant(...name.split(' '), ...attempts[name]![0]!), code);
  expectRefused(await as(demo.inspector)('inspect', answers), 'device-scrapped');
  for (const [name, ways] of Object.entries(attempts))
    for (const way of ways) {
      // Inspector and attendant in one.
      const run = await as(demo.regularUser)(...name.split(' '), ...way);
      expect(run.code, `${name}: ${run.stdout}${run.stderr}`).not.toBe(2);
      if (run.code === 1) expect(run.json().error.code).not.toBe('internal-error');
      expect(await standing(), name).toBe('scrapped');
    }
}, 240_000);

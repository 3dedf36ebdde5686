/** The command line over one demo station, from registering a device to the tag in the hand. */
import { execFile, spawn } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { productFolder, type Run, runCli, spawnCli } from './run-cli.ts';

const inspector = 'HP10024';
const pin = '271828';

let folder: string;
let station: string;
let demo: Run;
let demoMs: number;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'srl-bench-cli-'));
  station = join(folder, 'demo', 'station');
  const started = Date.now();
  demo = await spawnCli(['demo', '--out', join(folder, 'demo'), '--json']);
  demoMs = Date.now() - started;
}, 60_000);

afterAll(() => rm(folder, { recursive: true }));

const eventCount = async (): Promise<number> =>
  (await runCli(['ledger', 'verify', '--data', station, '--json'])).json().head.size;

/** Exit 1 with an error of this code, a sentence, and nothing of the inside of the program. */
const expectRefused = (run: Run, code: string): void => {
  expect({ exit: run.code, code: run.json().error?.code }, run.stdout + run.stderr).toEqual({
    exit: 1,
    code,
  });
  expect(run.json().error.sentence).toMatch(/\S/);
  expect(run.stdout + run.stderr).not.toMatch(/\n\s+at |node_modules/);
};

const write = async (name: string, content: unknown): Promise<string> => {
  const path = join(folder, name);
  await writeFile(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
};

const example = async (name: string) =>
  JSON.parse(await readFile(join(productFolder, 'demo-data', 'answers', name), 'utf8'));

const modelSheet = {
  manufacturer: 'Quillmoor',
  model: 'Stayline 50 ft',
  ratedLengthM: 15.24,
  lifelineMaterial: 'stainless',
  lifelineDiameterMm: 4.8,
  capacityKg: { from: 59, to: 140 },
  standard: 'ANSI/ASSP Z359.14',
  loadIndicatorFitted: true,
};
const elements = [
  'manufacturer',
  'model',
  'serialNumber',
  'dateOfManufacture',
  'lifelineMaterialAndSize',
  'ratedLength',
  'capacityRange',
  'standard',
  'warnings',
];
const registration = (serial: string, code: string) => ({
  modelSheet,
  serial,
  dateOfManufacture: '2026-02',
  marking: elements.map((element) => ({ element, state: 'legible' })),
  otherCodes: [{ code, kind: 'maker' }],
});

const addDevice = async (serial: string, code: string): Promise<string> => {
  const file = await write(`${serial}.json`, registration(serial, code));
  const added = await runCli(['device', 'add', file, '--badge', inspector, '--data', station, '--json']);
  return added.json().benchId;
};

describe('demo', () => {
  test('ends in under 20 s and lists the tags of both verdicts, the record and its proof, all of them there', async () => {
    expect(demo.code).toBe(0);
    expect(demoMs).toBeLessThan(20_000);
    const { inspections, files, verification } = demo.json();
    expect(inspections.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'pass',
      'remove from service',
    ]);
    expect(inspections[1].reasons).toHaveLength(3);
    expect(files.filter((file: string) => /status\.(pdf|png)$/.test(file))).toHaveLength(2);
    expect(files.filter((file: string) => /quarantine\.(pdf|png)$/.test(file))).toHaveLength(2);
    for (const file of files) expect((await stat(file)).size).toBeGreaterThan(100);
    const lines = (await readFile(join(folder, 'demo', 'record.jsonl'), 'utf8')).trimEnd().split('\n');
    expect(lines).toHaveLength(verification.head.size);
    expect(verification.sound).toBe(true);
  });

  test('refuses a folder with a station, and one with anything in it', async () => {
    expectRefused(await runCli(['demo', '--out', join(folder, 'demo'), '--json']), 'demo-folder-in-use');
    expectRefused(await runCli(['demo', '--out', station, '--json']), 'demo-folder-in-use');
    expectRefused(
      await runCli(['demo', '--out', join(productFolder, 'assets'), '--json']),
      'folder-not-empty',
    );
  });
});

describe('device', () => {
  test('add registers a device, which show then finds by its bench ID and by its code', async () => {
    const benchId = await addDevice('T-1001', 'CLI-CODE-1001');
    expect(benchId).toMatch(/^[0-9A-HJKMNP-TV-Z]{10}$/);
    const shown = await runCli([
      'device',
      'show',
      `${benchId.slice(0, 5)}-${benchId.slice(5)}`.toLowerCase(),
      '--badge',
      inspector,
      '--data',
      station,
      '--json',
    ]);
    expect(shown.json().device).toMatchObject({
      benchId,
      serial: 'T-1001',
      standing: 'new',
      manufacturer: 'Quillmoor',
    });
    const byCode = await runCli(['--data', station, '--badge', inspector, 'device', 'show', 'CLI-CODE-1001']);
    expect(byCode.stdout).toContain('T-1001');
    expect(byCode.stdout).toContain('never inspected');
  });

  test('add uses a model sheet that is there already, and refuses the same serial number twice', async () => {
    const file = await write('twin.json', registration('T-1001', 'CLI-CODE-1002'));
    const before = await eventCount();
    expectRefused(
      await runCli(['device', 'add', file, '--badge', inspector, '--data', station, '--json']),
      'serial-taken',
    );
    expect(await eventCount()).toBe(before);
  });

  test('nobody who is not signed in sees the register', async () => {
    expectRefused(await runCli(['device', 'list', '--data', station, '--json']), 'sign-in-needed');
    expectRefused(
      await runCli(['device', 'list', '--badge', 'XX99', '--data', station, '--json']),
      'badge-unknown',
    );
  });

  test('list searches and filters', async () => {
    const args = [
      'device',
      'list',
      '--standing',
      'quarantined',
      '--badge',
      inspector,
      '--data',
      station,
      '--json',
    ];
    const { devices, total } = (await runCli(args)).json();
    expect(total).toBeGreaterThan(0);
    expect(new Set(devices.map(({ standing }: { standing: string }) => standing))).toEqual(
      new Set(['quarantined']),
    );
  });
});

test('procedure lists every check of the shipped procedure with its answers and defects', async () => {
  const shipped = JSON.parse(
    await readFile(join(productFolder, 'assets', 'procedures', 'cable-srl.v1.json'), 'utf8'),
  );
  const { checks } = (await spawnCli(['procedure', '--json'])).json();
  expect(checks.map(({ key }: { key: string }) => key)).toEqual(
    shipped.checks.map(({ key }: { key: string }) => key),
  );
  const shape = checks.find(({ key }: { key: string }) => key === 'lifeline.shape');
  expect(shape).toMatchObject({ answers: ['good', 'defects'], positioned: true });
  expect(shape.defects.map(({ key }: { key: string }) => key)).toContain('crushing');
});

describe('inspect', () => {
  test('a clean device passes, with the next due date and the status tag in the folder', async () => {
    const benchId = await addDevice('T-2001', 'CLI-CODE-2001');
    const tags = join(folder, 'tags');
    const file = await write('pass.json', { ...(await example('pass.json')), code: 'CLI-CODE-2001' });
    const run = await runCli(['inspect', file, '--tags', tags, '--data', station, '--json'], {
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
    await addDevice('T-2002', 'CLI-CODE-2002');
    const file = await write('three.json', {
      ...(await example('three-findings.json')),
      code: 'CLI-CODE-2002',
    });
    const pinFile = await write('pin.txt', `${pin}\n`);
    const run = await runCli(['inspect', file, '--pin-file', pinFile, '--data', station, '--language', 'es']);
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
    await addDevice('T-2003', 'CLI-CODE-2003');
    const before = await eventCount();
    for (const [what, code, spoil] of refusals) {
      const written = { ...(await example('pass.json')), code: 'CLI-CODE-2003' };
      spoil(written.answers);
      const file = await write('spoilt.json', written);
      const run = await runCli(['inspect', file, '--data', station, '--json'], { SRL_BENCH_PIN: pin });
      expectRefused(run, code);
      expect(run.json().error.sentence.length, what).toBeGreaterThan(20);
    }
    expect(await eventCount()).toBe(before);
  });

  test('a wrong PIN, a person who may not sign and a missing PIN leave no answer in the record', async () => {
    const benchId = await addDevice('T-2004', 'CLI-CODE-2004');
    const file = await write('pass-2004.json', { ...(await example('pass.json')), code: 'CLI-CODE-2004' });
    const args = ['inspect', file, '--data', station, '--json'];
    expectRefused(await runCli(args), 'pin-needed');
    expectRefused(
      await runCli([...args, '--badge', 'HP10048'], { SRL_BENCH_PIN: pin }),
      'signer-training-expired',
    );
    expectRefused(await runCli(args, { SRL_BENCH_PIN: '918273' }), 'pin-wrong');
    const shown = await runCli([
      'device',
      'show',
      benchId,
      '--badge',
      inspector,
      '--data',
      station,
      '--json',
    ]);
    expect(shown.json().device).toMatchObject({ standing: 'new' });
    expect(shown.json().device.openInspection).toBeUndefined();
    const { path } = (
      await runCli(['ledger', 'export', '--badge', inspector, '--data', station, '--json'])
    ).json();
    const mine = (await readFile(path, 'utf8')).split('\n').filter((line) => line.includes(benchId));
    expect(mine.some((line) => line.includes('inspection.answered'))).toBe(false);
  });

  test('a file that is no JSON, or has fields that nobody knows, is named with what is wrong', async () => {
    expectRefused(
      await runCli(['inspect', await write('bad.json', '{"answers": '), '--data', station, '--json']),
      'file-not-json',
    );
    const misspelt = { ...(await example('pass.json')), sing: true };
    const run = await runCli([
      'inspect',
      await write('misspelt.json', misspelt),
      '--data',
      station,
      '--json',
    ]);
    expectRefused(run, 'answers-file-invalid');
    expect(run.json().error.field).toContain('sing');
    expectRefused(
      await runCli(['inspect', join(folder, 'nowhere.json'), '--data', station, '--json']),
      'file-unreadable',
    );
  });
});

describe('tag', () => {
  test('writes the file that was asked for, on the stock that was asked for', async () => {
    const passed = demo.json().inspections[0].benchId;
    const out = join(folder, 'status.png');
    const args = [
      'tag',
      passed,
      '--kind',
      'status',
      '--format',
      'png',
      '--dpi',
      '203',
      '--stock',
      '100x60',
      '--out',
      out,
    ];
    const run = await runCli([...args, '--badge', inspector, '--data', station, '--json']);
    expect(run.code, run.stdout).toBe(0);
    const png = await readFile(out);
    // Portable Network Graphics, W3C, §5.2 and §11.2.1: signature, then width and height of IHDR at bytes 16 and 20.
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect(png.readUInt32BE(16)).toBeCloseTo((100 / 25.4) * 203, -1);
    expect(png.readUInt32BE(20)).toBeCloseTo((60 / 25.4) * 203, -1);
  });

  test('of the wrong kind is refused, and so is a file that cannot be written, before anything is recorded', async () => {
    const removed = demo.json().inspections[1].benchId;
    const before = await eventCount();
    const args = ['tag', removed, '--badge', inspector, '--data', station, '--json'];
    expectRefused(await runCli([...args, '--kind', 'status']), 'tag-kind-refused');
    const out = join(productFolder, 'package.json', 'tag.pdf');
    expectRefused(await runCli([...args, '--kind', 'quarantine', '--out', out]), 'file-unwritable');
    expect(await eventCount()).toBe(before);
  });
});

describe('id', () => {
  test('a new one is exact, and is restored from four unreadable characters as a guess', async () => {
    const { benchId } = (await runCli(['id', 'new', '--json'])).json();
    expect((await runCli(['id', 'check', benchId, '--json'])).json()).toMatchObject({
      kind: 'exact',
      registered: false,
    });
    const worn = `?${benchId.slice(1, 3)}??${benchId.slice(5, 9)}?`;
    expect((await runCli(['id', 'repair', worn, '--json'])).json()).toMatchObject({
      kind: 'suggestion',
      benchId,
    });
    expectRefused(await runCli(['id', 'check', worn, '--json']), 'bench-id-not-exact');
    expectRefused(await runCli(['id', 'repair', 'K7M', '--json']), 'bench-id-malformed');
  });
});

describe('what every command keeps to', () => {
  test('a second program on the same data folder is told so', async () => {
    const holder = spawn(process.execPath, ['--import', 'tsx', 'tests/cli/hold-station.ts', station], {
      cwd: productFolder,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    try {
      await new Promise((resolve) => holder.stdout.once('data', resolve));
      expectRefused(await runCli(['ledger', 'verify', '--data', station, '--json']), 'station-already-open');
    } finally {
      holder.kill();
    }
  });

  test.runIf(process.platform === 'linux')(
    'a folder or a disk that takes nothing is named, and nothing is recorded',
    async () => {
      expectRefused(
        await runCli(['ledger', 'verify', '--data', '/sys/srl-bench', '--json']),
        'folder-not-writable',
      );
      const before = await eventCount();
      const args = [
        'ledger',
        'export',
        '--out',
        '/dev/full',
        '--badge',
        inspector,
        '--data',
        station,
        '--json',
      ];
      const full = await runCli(args);
      expectRefused(full, 'file-unwritable');
      expect(full.json().error.sentence).toContain('the disk is full');
      expect(await eventCount()).toBe(before);
    },
  );

  test('wrong usage ends with 2 and a sentence in the language that was asked for', async () => {
    const unknown = await spawnCli(['inspct', '--language', 'es']);
    expect(unknown.code).toBe(2);
    expect(unknown.stderr).toBe('No existe la orden «inspct». --help muestra las órdenes.\n');
    const wrong = [
      ['tag', 'X'],
      ['tag', 'X', '--kind', 'gift'],
      ['device', 'list', '--limit', '-1'],
      ['id'],
      ['procedure', '--nonsense'],
    ];
    for (const args of wrong) expect((await runCli(args)).code, args.join(' ')).toBe(2);
  });

  test('a reader that stops reading is no error', async () => {
    const { stderr } = await promisify(execFile)(
      '/bin/sh',
      ['-c', `"${process.execPath}" --import tsx src/cli/main.ts procedure --json | head -c 10`],
      { cwd: productFolder },
    );
    expect(stderr).toBe('');
  });

  test('the record is proved, and one changed byte is found out', async () => {
    const copy = join(folder, 'tampered');
    await runCli(['demo', '--out', copy, '--json']);
    const file = join(copy, 'station', 'ledger.sqlite');
    const bytes = await readFile(file);
    const at = bytes.lastIndexOf('inspection.signed');
    expect(at).toBeGreaterThan(0);
    bytes.write('X', at);
    await writeFile(file, bytes);
    const run = await runCli(['ledger', 'verify', '--data', join(copy, 'station'), '--json']);
    expect(run.code).toBe(1);
    expect(run.json().error.code).toBe('ledger-not-sound');
    expect(run.json().faults.length).toBeGreaterThan(0);
  }, 60_000);
});

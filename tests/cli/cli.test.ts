/** The command line over one demo station: the register, tags, bench IDs, the record, and what all commands keep to. */
import { execFile, spawn } from 'node:child_process';
import { mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DemoBench, expectRefused, inspector, registration } from './demo-bench.ts';
import { productFolder, runCli, spawnCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open(spawnCli);
}, 60_000);
afterAll(() => bench.close());

describe('demo', () => {
  test('lists the tags of both verdicts, the record and its proof, all of them there', async () => {
    expect(bench.demo.code).toBe(0);
    const { inspections, files, verification } = bench.demo.json();
    expect(inspections.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'pass',
      'remove from service',
    ]);
    expect(inspections[1].reasons).toHaveLength(3);
    expect(files.filter((file: string) => /status\.(pdf|png)$/.test(file))).toHaveLength(2);
    expect(files.filter((file: string) => /quarantine\.(pdf|png)$/.test(file))).toHaveLength(2);
    for (const file of files) expect((await stat(file)).size).toBeGreaterThan(100);
    const lines = (await readFile(join(bench.folder, 'demo', 'record.jsonl'), 'utf8')).trimEnd().split('\n');
    expect(lines).toHaveLength(verification.head.size);
    expect(verification.sound).toBe(true);
  });

  test('refuses a folder with a station, and one with anything in it', async () => {
    expectRefused(
      await runCli(['demo', '--out', join(bench.folder, 'demo'), '--json']),
      'demo-folder-in-use',
    );
    expectRefused(await runCli(['demo', '--out', bench.station, '--json']), 'demo-folder-in-use');
    expectRefused(
      await runCli(['demo', '--out', join(productFolder, 'assets'), '--json']),
      'folder-not-empty',
    );
  });
});

describe('device', () => {
  test('picture keeps a picture of the marking, which show names, and verify misses when it is gone', async () => {
    const benchId = await bench.addDevice('T-1009', 'CLI-CODE-1009');
    const picture = join(bench.folder, 'marking.png');
    await sharp({ create: { width: 30, height: 20, channels: 3, background: '#888' } }).toFile(picture);
    const kept = await bench.run(['device', 'picture', benchId, picture, '--badge', inspector]);
    expect(kept.json().picture).toMatchObject({ of: 'marking', width: 30, height: 20 });
    const shown = await bench.run(['device', 'show', benchId, '--badge', inspector]);
    const { sha256 } = kept.json().picture;
    expect(shown.json().pictures).toMatchObject([{ of: 'marking', state: 'kept', sha256 }]);
    const file = join(bench.station, 'evidence', `${sha256}.jpg`);
    const bytes = await readFile(file);
    await rm(file);
    const verified = await bench.run(['ledger', 'verify']);
    expectRefused(verified, 'ledger-not-sound');
    await writeFile(file, bytes);
    expect((await bench.run(['ledger', 'verify'])).json().sound).toBe(true);
    expectRefused(
      await bench.run(['device', 'picture', benchId, join(bench.folder, 'none.png'), '--badge', inspector]),
      'file-unreadable',
    );
  });

  test('add registers a device, which show then finds by its bench ID and by its code', async () => {
    const benchId = await bench.addDevice('T-1001', 'CLI-CODE-1001');
    expect(benchId).toMatch(/^[0-9A-HJKMNP-TV-Z]{10}$/);
    const shown = await bench.run([
      'device',
      'show',
      `${benchId.slice(0, 5)}-${benchId.slice(5)}`.toLowerCase(),
      '--badge',
      inspector,
    ]);
    expect(shown.json().device).toMatchObject({
      benchId,
      serial: 'T-1001',
      standing: 'new',
      manufacturer: 'Quillmoor',
    });
    const byCode = await runCli([
      '--data',
      bench.station,
      '--badge',
      inspector,
      'device',
      'show',
      'CLI-CODE-1001',
    ]);
    expect(byCode.stdout).toContain('T-1001');
    expect(byCode.stdout).toContain('never inspected');
  });

  test('add uses a model sheet that is there already, and refuses the same serial number twice', async () => {
    const file = await bench.write('twin.json', registration('T-1001', 'CLI-CODE-1002'));
    const before = await bench.eventCount();
    expectRefused(await bench.run(['device', 'add', file, '--badge', inspector]), 'serial-taken');
    expect(await bench.eventCount()).toBe(before);
  });

  test('nobody who is not signed in sees the register', async () => {
    expectRefused(await bench.run(['device', 'list']), 'sign-in-needed');
    expectRefused(await bench.run(['device', 'list', '--badge', 'XX99']), 'badge-unknown');
  });

  test('list searches and filters', async () => {
    const args = ['device', 'list', '--standing', 'quarantined', '--badge', inspector];
    const { devices, total } = (await bench.run(args)).json();
    expect(total).toBeGreaterThan(0);
    expect(new Set(devices.map(({ standing }: { standing: string }) => standing))).toEqual(
      new Set(['quarantined']),
    );
  });
});

test('procedure lists every check of the shipped procedure with its answers and defects', async () => {
  const shipped = JSON.parse(
    await readFile(join(productFolder, 'assets', 'procedures', 'cable-srl.v2.json'), 'utf8'),
  );
  const { checks } = (await spawnCli(['procedure', '--json'])).json();
  expect(checks.map(({ key }: { key: string }) => key)).toEqual(
    shipped.checks.map(({ key }: { key: string }) => key),
  );
  const shape = checks.find(({ key }: { key: string }) => key === 'lifeline.shape');
  expect(shape).toMatchObject({ answers: ['good', 'defects'], positioned: true });
  expect(shape.defects.map(({ key }: { key: string }) => key)).toContain('crushing');
});

describe('tag', () => {
  test('writes the file that was asked for, on the stock that was asked for', async () => {
    const passed = bench.demo.json().inspections[0].benchId;
    const out = join(bench.folder, 'status.png');
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
    expectRefused(await bench.run([...args, '--badge', inspector]), 'reprint-needs-reason');
    const run = await bench.run([...args, '--because', 'misprinted', '--badge', inspector]);
    expect(run.code, run.stdout).toBe(0);
    const png = await readFile(out);
    // Portable Network Graphics, W3C, §5.2 and §11.2.1: signature, then width and height of IHDR at bytes 16 and 20.
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect(png.readUInt32BE(16)).toBeCloseTo((100 / 25.4) * 203, -1);
    expect(png.readUInt32BE(20)).toBeCloseTo((60 / 25.4) * 203, -1);
  });

  test('of the wrong kind is refused, and so is a file that cannot be written, before anything is recorded', async () => {
    const removed = bench.demo.json().inspections[1].benchId;
    const before = await bench.eventCount();
    const args = ['tag', removed, '--badge', inspector];
    expectRefused(await bench.run([...args, '--kind', 'status']), 'tag-kind-refused');
    const out = join(productFolder, 'package.json', 'tag.pdf');
    expectRefused(await bench.run([...args, '--kind', 'quarantine', '--out', out]), 'file-unwritable');
    expect(await bench.eventCount()).toBe(before);
  });
});

test('label writes the label of a place, and refuses a code that no label can carry', async () => {
  const out = join(bench.folder, 'cage.pdf');
  const written = await bench.run(['label', 'CAGE2', '--out', out, '--badge', inspector]);
  expect(written.code, written.stdout).toBe(0);
  expect((await readFile(out)).subarray(0, 5).toString()).toBe('%PDF-');
  expectRefused(await bench.run(['label', 'cage 2!', '--out', out, '--badge', inspector]), 'input-invalid');
});

describe('printer', () => {
  test('a folder takes a tag; a printer that is not there is named in a sentence, and the tag is not given out', async () => {
    const passed = bench.demo.json().inspections[0].benchId;
    const save = async (settings: object) => {
      const file = join(bench.folder, 'printer.json');
      const stock = { widthMm: 100, heightMm: 50 };
      await writeFile(file, JSON.stringify({ settings: { stock, ...settings }, tagKinds: ['status'] }));
      return bench.run(['printer', 'save', file, '--badge', 'HP10017']);
    };
    const into = join(bench.folder, 'printed');
    await mkdir(into);
    expect((await save({ kind: 'folder', name: 'Tray', folder: into })).code).toBe(0);
    expectRefused(await save({ kind: 'folder', name: 'tray', folder: into }), 'printer-name-taken');
    expectRefused(await save({ kind: 'fax', name: 'Fax' }), 'input-invalid');
    expect((await save({ kind: 'ipp', name: 'Gone', address: 'ipp://127.0.0.1:9/ipp/print' })).code).toBe(0);
    const print = (printer: string) =>
      bench.run([
        'tag',
        passed,
        '--kind',
        'status',
        '--printer',
        printer,
        '--because',
        'lost',
        '--badge',
        inspector,
      ]);
    const before = await bench.eventCount();
    expectRefused(await print('Gone'), 'printer-unreachable');
    expect(await bench.eventCount()).toBe(before);
    const printed = await print('Tray');
    expect(printed.code, printed.stdout).toBe(0);
    expect(printed.json().files[0]).toContain(into);
    expect(await bench.eventCount()).toBe(before + 1);
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
    const holder = spawn(process.execPath, ['--import', 'tsx', 'tests/cli/hold-station.ts', bench.station], {
      cwd: productFolder,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    try {
      await new Promise((resolve) => holder.stdout.once('data', resolve));
      expectRefused(await bench.run(['ledger', 'verify']), 'station-already-open');
    } finally {
      holder.kill();
      await new Promise((resolve) => holder.once('exit', resolve));
    }
  });

  test.runIf(process.platform === 'linux')(
    'a folder or a disk that takes nothing is named, and nothing is recorded',
    async () => {
      expectRefused(
        await runCli(['ledger', 'verify', '--data', '/sys/srl-bench', '--json']),
        'folder-not-writable',
      );
      const before = await bench.eventCount();
      const args = ['ledger', 'export', '--out', '/dev/full', '--badge', inspector];
      const full = await bench.run(args);
      expectRefused(full, 'file-unwritable');
      expect(full.json().error.sentence).toContain('the disk is full');
      expect(await bench.eventCount()).toBe(before);
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
    const copy = join(bench.folder, 'tampered');
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

/** `scan TEXT` and `device add --code` in the terminal. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withControlCharacters } from '../../src/cli/control-notation.ts';
import { DemoBench, expectRefused, inspector, registration } from './demo-bench.ts';
import { runCli } from './run-cli.ts';

let bench: DemoBench;
beforeAll(async () => {
  bench = await DemoBench.open(runCli);
}, 60_000);
afterAll(() => bench.close());

describe('the notation of control characters', () => {
  test('writes what cannot be typed, and leaves everything else as it stands', () => {
    expect(withControlCharacters(']C110A<GS>21B')).toBe(']C110A\x1d21B');
    expect(withControlCharacters('[)><RS>06<GS>S1<RS><EOT>')).toBe('[)>\x1e06\x1dS1\x1e\x04');
    expect(withControlCharacters('A\\x1dB\\x00')).toBe('A\x1dB\0');
    expect(withControlCharacters('<XY> <gs> \\x1 \\(')).toBe('<XY> <gs> \\x1 \\(');
  });
});

describe('scan', () => {
  test('says what a maker’s code says, in words and as JSON', async () => {
    const text = ']C101095200000000591126030010L7<GS>21W-1';
    const found = await bench.run(['scan', text]);
    expect(found.json()).toMatchObject({
      meaning: 'unknown',
      text: '(01)09520000000059(10)L7(11)260300(21)W-1',
      data: { identification: { gtin: '09520000000059', serial: 'W-1', lot: 'L7' } },
    });
    const words = await runCli(['scan', text, '--data', bench.station]);
    expect(words.stdout).toContain('serial number W-1');
    expect(words.stdout).toContain('made 2026-03');
  });

  test('ends with 1 and the sentence where the code is damaged', async () => {
    expectRefused(await bench.run(['scan', ']C10109520000000043']), 'gs1-check-digit');
    const spanish = await runCli(['scan', 'A\\x00B', '--data', bench.station, '--language', 'es']);
    expect(spanish.code).toBe(1);
    expect(spanish.stderr).toContain('«A<NUL>B» contiene un carácter que no se ve: NUL (0x00)');
  });
});

describe('device add --code', () => {
  test('binds a code that agrees with the file, and refuses one of another serial number', async () => {
    const file = join(bench.folder, 'coded.json');
    await writeFile(file, JSON.stringify(registration('T-2001', 'CLI-CODE-2001')));
    const add = (code: string) => bench.run(['device', 'add', file, '--badge', inspector, '--code', code]);
    expectRefused(await add(']C1010952000000004221T-2002'), 'code-serial-differs');
    const { benchId } = (await add(']C1010952000000004221T-2001')).json();
    expect((await bench.run(['scan', '(21)T-2001(01)09520000000042'])).json()).toMatchObject({
      meaning: 'device',
      by: 'other code',
      device: { benchId },
    });
  });
});

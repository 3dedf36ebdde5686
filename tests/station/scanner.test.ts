/** The scanner of the station, taught and forgotten through the contract. */

import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { learningText } from '../../src/domain/scanner/learn-scanner.ts';
import { requireTool, runTool } from '../support/debian-tools.ts';
import { typedKeys } from '../support/keyboards.ts';
import { demoStation, temporaryFolder } from '../support/station-fixture.ts';

const hasReader = requireTool('zbarimg');

const scan = {
  end: 'Enter' as const,
  keys: typedKeys(`~${learningText}`, { scanner: 'us', computer: 'us' }).map(({ key, ...stroke }, index) => ({
    ...stroke,
    text: key,
    at: index * 8,
  })),
};

describe('the scanner of a station', () => {
  test('is learnt from three scans, known to every window, and forgotten again', async () => {
    const { expectOutput } = await demoStation();
    const learnt = await expectOutput('scanner.learn', { scans: [scan, scan, scan] });
    const scanner = { gapMs: 8, end: 'Enter', prefix: '~', suffix: '', usesUsPlaces: false };
    expect(learnt).toEqual({ scanner });
    expect(await expectOutput('station.status', {})).toMatchObject({ scanner });
    await expectOutput('scanner.forget', {});
    expect(await expectOutput('station.status', {})).not.toHaveProperty('scanner');
  });

  test('is not learnt from two, nor by nobody', async () => {
    const { expectOutput, expectError } = await demoStation();
    expect(await expectError('scanner.learn', { scans: [scan, scan] })).toMatchObject({
      code: 'scanner-more-scans',
    });
    await expectOutput('session.sign-out', {});
    expect(await expectError('scanner.learn', { scans: [scan, scan, scan] })).toMatchObject({
      code: 'sign-in-needed',
    });
    expect(await expectOutput('station.status', {})).not.toHaveProperty('scanner');
  });

  test.runIf(hasReader)('reads its symbol as zbar does', async () => {
    const { expectOutput } = await demoStation();
    const { pngBase64, text } = await expectOutput('scanner.symbol', {});
    const file = join(await temporaryFolder(), 'symbol.png');
    await writeFile(file, Buffer.from(pngBase64, 'base64'));
    expect(runTool('zbarimg', ['--raw', '-q', file]).trim()).toBe(text);
  });
});

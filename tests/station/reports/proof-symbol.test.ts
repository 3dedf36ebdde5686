/** The proof on a report: a picture of the page, as a scanner or a camera takes it, gives the proof back to zbar. */
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { InputOf } from '../../../src/station/contract.ts';
import { requireTool, runTool } from '../../support/debian-tools.ts';
import { canReadPdf, madeReport } from '../../support/report-text.ts';
import { demo, temporaryFolder } from '../../support/station-fixture.ts';
import { walk } from '../../support/walk.ts';
import { stationWithDevice } from '../sample-device.ts';

const canReadSymbols = ['pdftoppm', 'zbarimg'].map(requireTool).every((found) => found) && canReadPdf;

/** What office scanners are set to: common practice, no source. */
const dpi = '200';

const symbolsOn = async (path: string): Promise<readonly string[]> => {
  const folder = await temporaryFolder();
  runTool('pdftoppm', ['-r', dpi, '-gray', path, join(folder, 'page')]);
  const found: string[] = [];
  for (const page of await readdir(folder)) {
    try {
      found.push(runTool('zbarimg', ['--quiet', '--raw', join(folder, page)]));
    } catch {
      // zbarimg fails on a page without a symbol.
    }
  }
  return found;
};

describe.runIf(canReadSymbols)('the proof on paper', () => {
  test.each(['a4', 'letter'] as const)(
    'is read from a picture of the report of an inspection and of a device record, on %s, and holds',
    async (paper) => {
      const { expectOutput, benchId, ...station } = await stationWithDevice();
      const { inspection } = await walk({ ...station, expectOutput }, benchId);
      await expectOutput('inspection.sign', { inspection, pin: demo.pin });
      const subjects: readonly InputOf<'report.make'>['of'][] = [
        { kind: 'inspection', inspection },
        { kind: 'device', benchId },
      ];
      for (const of of subjects) {
        const { path } = await madeReport({ expectOutput }, { of, language: 'both', paper });
        const [proof, ...others] = await symbolsOn(path);
        expect(others).toEqual([]);
        const [, index] = /^c2sp\.org\/tlog-proof@v1\nindex (\d+)\n/.exec(proof ?? '') ?? [];
        const seq = Number(index) + 1;
        const { record } = await expectOutput('ledger.prove', { what: { kind: 'event', seq } });
        const checked = await expectOutput('ledger.check-proof', { proof: proof!, record });
        expect(checked.seq).toBe(seq);
        expect(record).toContain(of.kind === 'inspection' ? '"inspection.signed"' : benchId);
      }
    },
  );
});

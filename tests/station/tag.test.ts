/** Tags through the contract: what belongs on a device now, saved to the folder, read back, on stock that is large enough. */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/domain/answer.ts';
import { metres } from '../../src/domain/brand.ts';
import type { Check } from '../../src/domain/procedure.ts';
import { procedure } from '../support/shipped-rules.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { walk } from '../support/walk.ts';
import { sampleDevice } from './sample-device.ts';

const everythingWrong = (): Record<string, Answer> =>
  Object.fromEntries(procedure.checks.map((check) => [check.key, everyDefectOf(check)]));

const everyDefectOf = (check: Check): Answer => {
  switch (check.kind) {
    case 'marking':
      return { kind: 'marking', state: 'illegible' };
    case 'payout-length':
      return { kind: 'length', confirmedM: metres(14.9) };
    case 'lifeline-diameter':
      return { kind: 'diameters', readings: [] };
    case 'condition': {
      const defects = check.defects.filter(({ effect }) => effect !== 'clean-and-look-again');
      const place = check.positioned ? { positionM: metres(3.2) } : {};
      return { kind: 'defects', findings: defects.map(({ key }) => ({ defect: key, ...place })) };
    }
  }
};

const inspected = async (findings: Record<string, Answer> = {}) => {
  const station = await demoStation();
  const { benchId } = await station.expectOutput('device.register', sampleDevice('Q26C49001'));
  const walked = await walk(station, benchId, findings);
  await station.expectOutput('inspection.sign', { inspection: walked.inspection, pin: demo.pin });
  return { ...station, benchId };
};

describe('the tag of a device', () => {
  test('is saved as PDF and PNG, on record with the hash of the PDF, and its symbols say the bench ID', async () => {
    const { expectOutput, benchId } = await inspected();
    const issued = await expectOutput('tag.issue', { benchId, kind: 'status' });
    const pdf = await readFile(issued.pdfPath);
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.toString('base64')).toBe(issued.pdfBase64);
    expect((await readFile(issued.pngPath)).subarray(1, 4).toString()).toBe('PNG');
    expect(issued.symbols).toEqual([
      { symbology: 'Code 128', text: benchId },
      {
        symbology: 'QR Code',
        text: expect.stringMatching(`^SRL \\w{4} ${benchId} TAG1 PASS 20260310 DUE 20270310 \\w{8}$`),
      },
    ]);
    const { path } = await expectOutput('ledger.export', {});
    const last = (await readFile(path, 'utf8')).trim().split('\n').at(-1)!;
    expect(JSON.parse(last).event).toEqual({
      type: 'tag.issued',
      benchId,
      tagNumber: 1,
      kind: 'status',
      pdfSha256: createHash('sha256').update(pdf).digest('hex'),
    });
  });

  test('that was never inspected does not exist, but its ID label does', async () => {
    const { expectOutput, expectError } = await demoStation();
    const { benchId } = await expectOutput('device.register', sampleDevice('Q26C49002'));
    expect(await expectError('tag.issue', { benchId, kind: 'status' })).toMatchObject({ code: 'no-tag' });
    const label = await expectOutput('tag.issue', { benchId, kind: 'id' });
    expect(label.symbols).toEqual([{ symbology: 'Data Matrix', text: benchId }]);
  });

  test('with more reasons than any stock takes is refused, with what to do instead', async () => {
    const { expectOutput, expectError, benchId } = await inspected(everythingWrong());
    const { device } = await expectOutput('device.show', { benchId });
    expect(device.reasons.length).toBeGreaterThan(60);
    expect(await expectError('tag.preview', { benchId, kind: 'quarantine' })).toMatchObject({
      code: 'tag-too-long',
    });
  });

  test('with every element of the marking illegible and a broken housing is given on the smallest stock that takes them all', async () => {
    const marking = Object.entries(everythingWrong()).filter(
      ([key]) => key.startsWith('marking.') || key === 'housing.body',
    );
    const { expectOutput, expectError, benchId } = await inspected(Object.fromEntries(marking));
    const usual = { widthMm: 100, heightMm: 150 };
    expect(await expectError('tag.preview', { benchId, kind: 'quarantine', stock: usual })).toMatchObject({
      code: 'tag-does-not-fit',
    });
    const tag = await expectOutput('tag.preview', { benchId, kind: 'quarantine' });
    expect(tag.content.kind === 'quarantine' && tag.content.reasons.length).toBe(15);
    // By the release rules: the nine elements are the manufacturer's to restore, the six defects of the housing its to repair.
    expect(tag.content).toMatchObject({
      evidence: [
        { reasons: [1, 2, 3, 4, 5, 6, 7, 8, 9], anyOf: [{ en: 'Manufacturer’s re-marking' }] },
        {
          reasons: [10, 11, 12, 13, 14, 15],
          anyOf: [{ en: 'Manufacturer’s repair and recertification certificate' }],
        },
      ],
      beforeReturn: [{ en: 'A new documented inspection by a competent person' }],
    });
    expect(tag.widthMm * tag.heightMm).toBeGreaterThan(100 * 150);
  });
});

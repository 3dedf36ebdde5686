/** Corrections on paper, read by poppler: what was said, what is said now, by whom and why. */
import { describe, expect, test } from 'vitest';
import { metres } from '../../../src/domain/brand.ts';
import { canReadPdf, madeReport, textOf } from '../../support/report-text.ts';
import { demo } from '../../support/station-fixture.ts';
import { walk } from '../../support/walk.ts';
import { stationWithDevice } from '../sample-device.ts';

const correctedDevice = async () => {
  const station = await stationWithDevice('Q26C49400');
  const { expectOutput, benchId } = station;
  const crushed = { kind: 'defects' as const, findings: [{ defect: 'crushing', positionM: metres(3.2) }] };
  const { inspection } = await walk(station, benchId, { 'lifeline.shape': crushed });
  await expectOutput('inspection.sign', { inspection, pin: demo.pin });
  const { device, inspections } = await expectOutput('record.amendable', { benchId });
  const serial = device!.find(({ field }) => field === 'serial')!.amends;
  const answer = inspections![0]!.answers.find(({ check }) => check === 'lifeline.shape')!.amends;
  const moved = { kind: 'defects' as const, findings: [{ defect: 'crushing', positionM: metres(4.6) }] };
  for (const [amends, correction, because] of [
    [serial, { field: 'serial', now: 'Q26C49401' }, 'A one was taken for a nought'],
    [answer, { field: 'answer', now: moved }, 'Measured from the wrong hook'],
  ] as const)
    await expectOutput('record.amend', { amends, correction, because, pin: demo.pin });
  return { expectOutput, benchId, inspection };
};

describe.runIf(canReadPdf)('a correction', () => {
  test.each([
    ['en', 'Corrections', 'Serial number', 'Crushing 3.2 m from the hook', 'Crushing 4.6 m from the hook'],
    [
      'es',
      'Correcciones',
      'Número de serie',
      'Aplastamiento a 3,2 m del gancho',
      'Aplastamiento a 4,6 m del gancho',
    ],
  ] as const)(
    'stands in the record of its device with both values, in %s',
    async (language, title, field, was, now) => {
      const { expectOutput, benchId } = await correctedDevice();
      const { path } = await madeReport({ expectOutput }, { of: { kind: 'device', benchId }, language });
      const text = textOf(path);
      const section = text.slice(text.lastIndexOf(title));
      for (const words of [
        field,
        'Q26C49400',
        'Q26C49401',
        'A one was taken for a nought',
        'Measured from the wrong hook',
      ])
        expect(section.replaceAll(/\s+/g, ' ')).toContain(words);
      for (const word of [...was.split(' '), ...now.split(' ')]) expect(section).toContain(word);
      expect(section).toContain('Teo Arandal');
    },
  );

  test('stands in the report of an inspection that was made before, where the corrected value stands', async () => {
    const { expectOutput, inspection } = await correctedDevice();
    const of = { kind: 'inspection', inspection } as const;
    const { path } = await madeReport({ expectOutput }, { of, language: 'en' });
    const text = textOf(path);
    expect(text).toMatch(
      /Serial number Q26C49401 .* Serial number: corrected by event \d+, see Corrections\. Checks/,
    );
    expect(text).toMatch(
      /Crushing 4\.6 m from the hook Corrected by event \d+: see Corrections\. Teo Arandal/,
    );
    const section = text.slice(text.lastIndexOf('Corrections What was recorded first'));
    expect(section).toContain('wrong hook');
    expect(section).toContain('taken for a nought');
    expect(text.match(/[Cc]orrected by event/g)).toHaveLength(2);
  });

  test('of the device does not stand in the report of an inspection that began after it', async () => {
    const { expectOutput, benchId, ...station } = await stationWithDevice('Q26C49400');
    const { device } = await expectOutput('record.amendable', { benchId });
    const { amends } = device!.find(({ field }) => field === 'serial')!;
    const correction = { field: 'serial', now: 'Q26C49401' } as const;
    await expectOutput('record.amend', { amends, correction, because: 'Misread', pin: demo.pin });
    const { inspection } = await walk({ ...station, expectOutput }, benchId);
    await expectOutput('inspection.sign', { inspection, pin: demo.pin });
    const of = { kind: 'inspection', inspection } as const;
    const { path } = await madeReport({ expectOutput }, { of, language: 'en' });
    expect(textOf(path)).toContain('Serial number Q26C49401');
    expect(textOf(path)).not.toContain('Corrections');
  });
});

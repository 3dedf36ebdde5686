/** The map of a lifeline on paper, read by poppler: its words, and where they stand on its scale. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { calendarDate, metres, millimetres } from '../../src/domain/brand.ts';
import type { LengthUnit } from '../../src/domain/length.ts';
import type { LifelineFinding, LifelineInspection } from '../../src/domain/lifeline/lifeline-inspection.ts';
import type { Language } from '../../src/domain/message.ts';
import { modelSheetSchema } from '../../src/domain/model-sheet.ts';
import { lifelineStrips } from '../../src/reports/lifeline-strip.ts';
import { frameOf } from '../../src/reports/paper.ts';
import { renderReport } from '../../src/reports/render-report.ts';
import { ReportWords } from '../../src/reports/report-words.ts';
import { runTool } from '../support/debian-tools.ts';
import { canReadPdf, textOf } from '../support/report-text.ts';
import { temporaryFolder } from '../support/station-fixture.ts';

const modelSheet = modelSheetSchema.parse({
  modelSheetId: 'M900',
  manufacturer: 'Norvane',
  model: 'Lode 50 ft',
  ratedLengthM: 15.24,
  lifelineMaterial: 'galvanised',
  lifelineDiameterMm: 4.8,
  lifelineMinimumDiameterMm: 4.3,
  capacityKg: { from: 59, to: 140 },
  standard: 'EN 360:2002',
  loadIndicatorFitted: true,
  manufacturerContact: 'Norvane Service',
});

const finding = (positionM: number): LifelineFinding => ({
  check: 'lifeline.shape',
  defect: 'kink',
  label: { en: 'Kink', es: 'Coca' },
  effect: 'remove',
  positionM,
});

const seen = (
  number: number,
  on: string,
  findings: readonly number[],
  readings: readonly (readonly [number, number])[] = [],
): LifelineInspection => ({
  inspection: number,
  state: 'signed',
  on: calendarDate(on),
  verdict: findings.length === 0 ? 'pass' : 'remove from service',
  findings: findings.map(finding),
  readings: readings.map(([positionM, diameterMm]) => ({
    positionM: metres(positionM),
    diameterMm: millimetres(diameterMm),
  })),
});

const mapOnPaper = async (
  inspections: readonly LifelineInspection[],
  languages: readonly Language[],
  unit: LengthUnit,
): Promise<string> => {
  const words = new ReportWords(languages, unit);
  const strips = lifelineStrips(inspections, modelSheet, words, frameOf('a4').textWidthMm);
  const report = { title: 'Map', station: 'Harrow Point', of: 'K7M3X-43SXJ', at: new Date(0), strips };
  const path = join(await temporaryFolder(), 'map.pdf');
  await writeFile(path, (await renderReport(report, 'a4', words)).pdf);
  return path;
};

interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
}

/** Each word with its place over the page, in points. */
const wordsOn = (path: string): readonly Word[] =>
  [
    ...runTool('pdftotext', ['-bbox', path, '-']).matchAll(
      /xMin="([\d.]+)".*xMax="([\d.]+)".*>(.*)<\/word>/g,
    ),
  ].map(([, left, right, text]) => ({ text: text!, left: Number(left), right: Number(right) }));

describe.runIf(canReadPdf)('the map of a lifeline on paper', () => {
  test('has this inspection over the earlier ones, in feet where the station measures in feet', async () => {
    // 1 ft = 0.3048 m: 3.048 m is 10 ft, 7.62 m is 25 ft.
    const path = await mapOnPaper(
      [seen(8, '2025-03-10', [], [[3.048, 4.6]]), seen(12, '2026-03-10', [7.62], [[3.048, 4.2]])],
      ['en'],
      'ft',
    );
    const text = textOf(path);
    expect(text).toContain('10 Mar 2026, inspection 12: Remove from service');
    expect(text.indexOf('inspection 12')).toBeLessThan(text.indexOf('10 Mar 2025, inspection 8'));
    expect(text).toContain('Kink, 25 ft');
    // 4.2 mm / 25.4 = 0.16535 in, 4.6 mm / 25.4 = 0.18110 in (1 in = 25.4 mm exactly, NIST SP 811).
    expect(text).toContain('0.1654 in');
    expect(text.indexOf('0.1654 in')).toBeLessThan(text.indexOf('0.1811 in'));
    expect(text).toMatch(/0 ft 5 10 15 20 25 30 35 40 45 50 hook housing/);
  });

  test('stands to scale: a finding at 25 ft has its words over the 25 of the scale', async () => {
    const words = wordsOn(await mapOnPaper([seen(12, '2026-03-10', [7.62])], ['en'], 'ft'));
    const kink = words.findIndex(({ text }) => text === 'Kink,');
    const [first, last] = [words[kink]!, words[kink + 2]!];
    expect(last.text).toBe('ft');
    const tick = words.findLast(({ text }) => text === '25')!;
    // Half a millimetre, 1.4 points: what the eye tells apart on a scale.
    expect(Math.abs((first.left + last.right) / 2 - (tick.left + tick.right) / 2)).toBeLessThan(1.4);
  });

  test('says both languages, and goes on in a second line where one does not hold the words', async () => {
    const path = await mapOnPaper(
      [seen(12, '2026-12-10', []), seen(8, '2026-01-10', [3.2])],
      ['en', 'es'],
      'm',
    );
    const text = textOf(path);
    expect(text).toContain(
      'Pass: in service; nothing found or measured along the lifeline / 10 dic 2026, inspección 12: Apto: en servicio; nada hallado ni medido a lo largo del cable',
    );
    expect(text).toContain('Kink, 3.2 m / Coca, 3,2 m');
    const frame = frameOf('a4');
    const rightPt = (frame.rightMm / 25.4) * 72;
    for (const word of wordsOn(path)) expect(word.right, word.text).toBeLessThanOrEqual(rightPt + 0.01);
  });

  test('is left out where no inspection saw anything along the lifeline', () => {
    const words = new ReportWords(['en'], 'm');
    expect(lifelineStrips([seen(12, '2026-03-10', [])], modelSheet, words, 170)).toEqual([]);
  });
});

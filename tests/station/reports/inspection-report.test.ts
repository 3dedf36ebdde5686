/** The report of an inspection, read by poppler and held against the record, answer by answer. */
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import type { Answer } from '../../../src/domain/answer.ts';
import { metres } from '../../../src/domain/brand.ts';
import {
  canReadPdf,
  fontsOf,
  infoOf,
  linesOf,
  madeReport,
  reportEnd,
  textOf,
} from '../../support/report-text.ts';
import { goodAnswer, procedure } from '../../support/shipped-rules.ts';
import { demo } from '../../support/station-fixture.ts';
import { walk } from '../../support/walk.ts';
import { stationWithDevice } from '../sample-device.ts';

const findings: Readonly<Record<string, Answer>> = {
  'marking.dateOfManufacture': { kind: 'marking', state: 'illegible' },
  'lifeline.shape': {
    kind: 'defects',
    findings: [
      { defect: 'crushing', positionM: metres(3.2), note: 'Bright flats over two strands, Ñandú №1' },
      { defect: 'crushing', positionM: metres(7.85) },
    ],
  },
  'brake.near-full-payout': { kind: 'defects', findings: [{ defect: 'slow' }] },
};

const removedDevice = async () => {
  const station = await stationWithDevice();
  const walked = await walk(station, station.benchId, findings);
  const { inspection } = await station.expectOutput('inspection.sign', {
    inspection: walked.inspection,
    pin: demo.pin,
  });
  return { ...station, inspection };
};

/** What the report must say of an answer, in the words of the procedure and of the trade. */
const answerWords = (key: string, language: 'en' | 'es'): string => {
  const check = procedure.checks.find((each) => each.key === key)!;
  const given = findings[key];
  if (given === undefined) {
    if (check.kind === 'marking') return 'Legible';
    if (check.kind === 'payout-length')
      return language === 'en' ? '15.24 m came out; rated 15.24 m' : 'Salieron 15,24 m; nominal 15,24 m';
    if (check.kind === 'lifeline-diameter') {
      const at = language === 'en' ? 'at' : 'a';
      return [2.54, 7.62, 12.7]
        .map((place) => `4.8 mm ${at} ${place} m`)
        .map((words) => (language === 'en' ? words : words.replaceAll('.', ',')))
        .join(' ');
    }
    return check.answers?.good[language] ?? (language === 'en' ? 'Good' : 'Correcto');
  }
  if (given.kind === 'marking') return language === 'en' ? 'Illegible' : 'Ilegible';
  if (given.kind !== 'defects' || check.kind !== 'condition') throw new Error(key);
  return given.findings
    .map(({ defect, positionM, note }) => {
      const label = check.defects.find((each) => each.key === defect)!.label[language];
      const place =
        positionM === undefined
          ? ''
          : language === 'en'
            ? ` ${positionM} m from the hook`
            : ` a ${String(positionM).replace('.', ',')} m del gancho`;
      return `${label}${place}${note === undefined ? '' : ` “${note.replace('№', '?')}”`}`;
    })
    .join(' ');
};

describe.runIf(canReadPdf)('the report of an inspection that removed a device', () => {
  test.each(['en', 'es'] as const)(
    'says every check with its criterion, its answer and who gave it, in %s',
    async (language) => {
      const { inspection, expectOutput } = await removedDevice();
      const of = { kind: 'inspection', inspection: inspection.inspection } as const;
      const { path } = await madeReport({ expectOutput }, { of, language });
      const text = textOf(path);
      for (const [index, key] of inspection.checks.entries()) {
        const { title, criterion } = procedure.checks.find((check) => check.key === key)!;
        expect(text).toContain(
          `${index + 1} ${title[language]} ${criterion[language]} ${answerWords(key, language)} Teo Arandal`,
        );
      }
      expect(inspection.checks.length).toBe(procedure.checks.length);
    },
  );

  test.each([
    ['en', 'Along the lifeline', 'Crushing, 3.2 m', 'Crushing, 7.85 m', '4.8 mm'],
    ['es', 'A lo largo del cable', 'Aplastamiento, 3,2 m', 'Aplastamiento, 7,85 m', '4,8 mm'],
  ] as const)('shows findings and diameters along the lifeline, in %s', async (language, title, ...said) => {
    const { inspection, expectOutput } = await removedDevice();
    const of = { kind: 'inspection', inspection: inspection.inspection } as const;
    const { path } = await madeReport({ expectOutput }, { of, language });
    const text = textOf(path);
    expect(text).toContain(title);
    const map = text.slice(text.indexOf(title));
    for (const words of said) expect(map).toContain(words);
  });

  test('names who signed as they were known that day, with their badge of that day, and says what it is now', async () => {
    const { inspection, expectOutput } = await removedDevice();
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const { people } = await expectOutput('person.list', {});
    const { personId } = people.find(({ name }) => name === 'Teo Arandal')!;
    await expectOutput('person.change', { personId, badge: 'HP20001', because: 'Lost on site' });
    await expectOutput('person.change', { personId, name: 'Teo Castellan', because: 'Took another name' });
    const of = { kind: 'inspection', inspection: inspection.inspection } as const;
    const { path } = await madeReport({ expectOutput }, { of, language: 'en' });
    const text = textOf(path);
    expect(text).toContain('Competent person Teo Arandal (in the record now: Teo Castellan)');
    expect(text).toContain('Badge HP10024 (in the record now: HP20001)');
    const { benchId } = inspection.device;
    const life = await madeReport({ expectOutput }, { of: { kind: 'device', benchId }, language: 'en' });
    expect(textOf(life.path)).toMatch(/Teo Arandal Signed, event \d+/);
  });

  test('says every reason with its place, the verdict, who signed on what authority, and the event', async () => {
    const { inspection, expectOutput } = await removedDevice();
    const of = { kind: 'inspection', inspection: inspection.inspection } as const;
    const { path } = await madeReport({ expectOutput }, { of, language: 'both' });
    const text = textOf(path);
    if (inspection.verdict.kind !== 'remove from service') throw new Error(inspection.verdict.kind);
    expect(inspection.verdict.reasons).toHaveLength(4);
    for (const { sentence } of inspection.verdict.reasons)
      expect(text).toContain(`${sentence.en.replace('№', '?')} ${sentence.es.replace('№', '?')}`);
    expect(text).toContain('Remove from service / Retirar del servicio');
    const { people } = await expectOutput('person.list', {});
    const { designation } = people.find(({ name }) => name === 'Teo Arandal')!;
    expect(text).toContain('Badge / Credencial HP10024');
    expect(text).toContain(`By ${designation!.designatedBy} on`);
    expect(text).toContain(designation!.trainingValidUntil.slice(0, 4));
    expect(text).toContain('10 Mar 2026 (2026-03-10T08:00:00.000Z)');
    const { head } = await expectOutput('ledger.verify', {});
    expect(text).toContain(head.rootHash);
    expect(text).toContain(`the signature is event ${head.size} of the record`);
    for (const caution of [
      'it does not certify',
      'The manufacturer’s instructions, local codes',
      'no certifica',
    ])
      expect(text).toContain(caution);
  });

  test('stands on the pages that were asked for, numbered, with embedded fonts, title, language and date', async () => {
    const { inspection, expectOutput } = await removedDevice();
    const of = { kind: 'inspection', inspection: inspection.inspection } as const;
    for (const [paper, size] of [
      // ISO 216: 210 × 297 mm; 8.5 × 11 in at 72 points an inch.
      ['a4', '595.276 x 841.89 pts (A4)'],
      ['letter', '612 x 792 pts (letter)'],
    ] as const) {
      const { path, pages } = await madeReport({ expectOutput }, { of, language: 'en', paper });
      const info = infoOf(path);
      expect(info['Page size']).toBe(size);
      expect(Number(info.Pages)).toBe(pages);
      expect(info.Title).toMatch(/^Inspection \d+: /);
      expect(info.CreationDate).toContain('Mar 10 08:00:00 2026');
      const lines = linesOf(path);
      for (let page = 1; page <= pages!; page += 1)
        expect(lines.some((line) => line.endsWith(`Page ${page} of ${pages}`))).toBe(true);
      const fonts = fontsOf(path);
      expect(fonts.length).toBeGreaterThan(0);
      for (const { name, embedded } of fonts) expect([name, embedded]).toEqual([name, true]);
    }
  });

  test('shows the pictures that were kept with its findings, and says how many are lost', async () => {
    const { benchId, ...station } = await stationWithDevice();
    const { inspection: begun } = await station.expectOutput('inspection.start', { benchId });
    const pictureBase64 = (
      await sharp({ create: { width: 1200, height: 900, channels: 3, background: '#3a6' } })
        .png()
        .toBuffer()
    ).toString('base64');
    const { inspection } = begun;
    await station.expectOutput('inspection.keep-picture', {
      inspection,
      check: 'lifeline.shape',
      pictureBase64,
    });
    for (const key of begun.checks)
      await station.expectOutput('inspection.answer', {
        inspection,
        check: key,
        answer: findings[key] ?? goodAnswer(procedure.checks.find((check) => check.key === key)!, 15.24),
      });
    await station.expectOutput('inspection.sign', { inspection, pin: demo.pin });
    const request = { of: { kind: 'inspection', inspection }, language: 'en' } as const;
    const { path } = await madeReport(station, request);
    const { title } = procedure.checks.find(({ key }) => key === 'lifeline.shape')!;
    expect(textOf(path)).toContain(`Pictures ${title.en}, 10 Mar 2026`);
    await rm(join(station.folder, 'evidence'), { recursive: true });
    const { path: without } = await madeReport(station, request);
    expect(without).not.toBe(path);
    expect(textOf(without)).toContain('that are missing or were changed: 1');
  });
});

test('no report is made of an inspection that is still open, or that is not there', async () => {
  const { expectOutput, benchId } = await stationWithDevice();
  const { inspection } = await expectOutput('inspection.start', { benchId });
  const codeOf = async (number: number) =>
    reportEnd({ expectOutput }, { of: { kind: 'inspection', inspection: number }, language: 'en' });
  expect(await codeOf(inspection.inspection)).toMatchObject({ code: 'inspection-not-ended' });
  expect(await codeOf(99_999)).toMatchObject({ code: 'inspection-unknown' });
});

test('the report of an inspection that was broken off says so, and by whom', async () => {
  const { expectOutput, benchId } = await stationWithDevice();
  const { inspection } = await expectOutput('inspection.start', { benchId });
  await expectOutput('inspection.break-off', {
    inspection: inspection.inspection,
    why: 'Called away.',
  });
  const of = { kind: 'inspection', inspection: inspection.inspection } as const;
  const { path } = await madeReport({ expectOutput }, { of, language: 'en' });
  if (canReadPdf) {
    expect(textOf(path)).toContain('Broken off 10 Mar 2026, Teo Arandal');
    expect(textOf(path)).toContain('Not answered');
    expect(textOf(path)).not.toContain('Competent person');
  }
});

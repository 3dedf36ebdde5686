/** Held devices through the contract: from a check-in that reports a fall to the bench again, and to scrap, over restarts. */
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type BenchId, calendarDate } from '../../src/domain/brand.ts';
import { pdfDocument, photoDocument } from '../support/given-documents.ts';
import { canReadPdf, madeReport, textOf } from '../support/report-text.ts';
import { goodAnswers } from '../support/shipped-rules.ts';
import { demo, demoStation, type TestStation } from '../support/station-fixture.ts';

const id = (text: string) => text as BenchId;
/** Of the invented depot, by `demo-data/fleet.json`. */
const ready = id('MM68GV91MM');
const alsoReady = id('AFZQ45HXXZ');
const today = calendarDate('2026-03-10');

const signIn = (station: TestStation, badge: string) => station.expectOutput('session.sign-in', { badge });

/** As the device comes back from a job with a fall. */
const fallen = async (station: TestStation, benchId = ready): Promise<void> => {
  await signIn(station, demo.attendant);
  await station.expectOutput('custody.check-in', {
    benchId,
    withoutCheckOut: true,
    answers: [
      { question: 'fall', said: 'yes', choices: ['fall'], note: 'Gantry 4.' },
      { question: 'exposure', said: 'no' },
      { question: 'questionable', said: 'no' },
    ],
  });
};

const facts = {
  happenedOn: today,
  userId: 'P006',
  job: 'Gantry 4',
  indicator: 'deployed' as const,
  informed: 'Head of depot',
  bagNumber: 'B-17',
};

const held = async (station: TestStation, benchId = ready) =>
  (await station.expectOutput('held.show', { benchId })).held;

/** Prints the quarantine tag, scans it where it hangs, and gives the text of its symbol. */
const hangTag = async (station: TestStation, benchId = ready): Promise<string> => {
  const { symbols } = await station.expectOutput('tag.issue', { benchId, kind: 'quarantine' });
  const { text } = symbols.find((each) => each.text.startsWith('SRL '))!;
  await station.expectOutput('tag.prove', { text });
  return text;
};

describe('a device that arrested a fall', () => {
  test('comes back by its case, its certificate, its own tag and a new inspection, over a restart at every step', async () => {
    let station = await demoStation();
    const again = async () => {
      station = await station.reopen();
    };
    await fallen(station);
    expect(await held(station)).toMatchObject({ nextStep: 'hang tag', reasons: [{ number: 1 }] });
    const tag = await hangTag(station);
    const { tagNumber } = (await held(station)).currentTag!;
    expect(await held(station)).toMatchObject({ nextStep: 'open fall case' });
    await again();
    await signIn(station, demo.attendant);
    expect(await station.expectError('release.take', { benchId: ready, tag })).toMatchObject({
      code: 'release-evidence-missing',
      sentence: expect.stringContaining('open a fall case'),
    });
    const { fallCase } = await station.expectOutput('fall-case.open', {
      benchId: ready,
      facts: { happenedOn: today },
      linked: [alsoReady],
    });
    expect((await held(station, alsoReady)).reasons[0]!.key).toBe('fall-case.linked');
    await again();
    await signIn(station, demo.attendant);
    const number = fallCase.number;
    await station.expectOutput('fall-case.note', {
      fallCase: number,
      facts,
      photos: [await photoDocument('scene.jpg')],
    });
    expect(
      await station.expectError('fall-case.close', { fallCase: number, findings: 'A slip.' }),
    ).toMatchObject({
      code: 'role-needed',
    });
    await signIn(station, demo.administrator);
    const closed = await station.expectOutput('fall-case.close', { fallCase: number, findings: 'A slip.' });
    expect(closed.fallCase).toMatchObject({
      phase: 'closed',
      closed: { findings: 'A slip.' },
      custody: [{ bagNumber: 'B-17' }],
      photos: [{ name: 'scene.jpg' }],
    });
    const { batch } = await station.expectOutput('return-batch.add', { benchIds: [ready] });
    await station.expectOutput('return-batch.ship', {
      batch: batch.number,
      carrier: 'Harrow Freight',
      followUpOn: calendarDate('2026-03-24'),
      condition: 'Arrested a fall.',
      contamination: 'none known',
    });
    await again();
    await signIn(station, demo.attendant);
    expect(await held(station)).toMatchObject({
      nextStep: 'wait for manufacturer',
      device: { standing: 'at manufacturer' },
    });
    station.clock.advance({ days: 15 });
    expect(await held(station)).toMatchObject({ nextStep: 'ask manufacturer', days: 15 });
    const certificate = { number: 'R-88', on: calendarDate('2026-03-20'), issuer: 'Norvane' };
    const received = { batch: batch.number, benchId: ready, outcome: 'repaired' as const };
    expect(await station.expectError('return-batch.receive', received)).toMatchObject({
      code: 'batch-certificate-needed',
    });
    await station.expectOutput('return-batch.receive', { ...received, certificate });
    expect(await station.expectOutput('return-batch.list', {})).toMatchObject({
      batches: [{ phase: 'closed' }],
      turnarounds: [{ devices: 1, medianDays: 15, longestDays: 15, condemned: 0 }],
    });
    const evidence = { benchId: ready, kind: 'repair-certificate', covers: [1], certificate };
    expect(
      await station.expectError('held.record-evidence', {
        ...evidence,
        documents: [{ name: 'note.txt', contentBase64: Buffer.from('hello').toString('base64') }],
      }),
    ).toMatchObject({ code: 'document-unreadable' });
    await station.expectOutput('held.record-evidence', { ...evidence, documents: [await pdfDocument()] });
    await again();
    await signIn(station, demo.attendant);
    const shown = await held(station);
    expect(shown.reasons.flatMap(({ missing }) => missing)).toEqual([]);
    const kept = shown.evidence[0]!.documents[0]!;
    const opened = await station.expectOutput('held.document', { benchId: ready, sha256: kept.sha256 });
    expect(Buffer.from(opened.contentBase64, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
    expect(
      await station.expectError('release.take', { benchId: ready, tag: String(tagNumber - 1) }),
    ).toMatchObject({
      code: 'release-other-tag',
    });
    const altered = tag.replace('REMOVED', 'REMOVED ');
    expect(await station.expectError('release.take', { benchId: ready, tag: altered })).toMatchObject({
      code: 'release-tag-unreadable',
    });
    expect(await held(station)).toMatchObject({ nextStep: 'scan tag back' });
    await station.expectOutput('release.take', { benchId: ready, tag });
    expect((await station.expectOutput('device.show', { benchId: ready })).device).toMatchObject({
      standing: 'quarantined',
      nextAction: 'start inspection',
    });
    await again();
    await signIn(station, demo.inspector);
    const { inspection } = await station.expectOutput('inspection.start', { benchId: ready });
    const answers = goodAnswers(inspection.device.ratedLengthM);
    for (const check of inspection.checks)
      await station.expectOutput('inspection.answer', {
        inspection: inspection.inspection,
        check,
        answer: answers[check]!,
      } as never);
    await station.expectOutput('inspection.sign', { inspection: inspection.inspection, pin: demo.pin });
    expect((await station.expectOutput('device.show', { benchId: ready })).device).toMatchObject({
      standing: 'in service',
      reasons: [],
    });
    expect((await held(station)).closedReasons[0]).toMatchObject({ key: 'check-in.fall.fall' });
    if (canReadPdf) {
      const { path } = await madeReport(station, { of: { kind: 'device', benchId: ready }, language: 'en' });
      const text = textOf(path);
      for (const words of [
        'Fall case 1 opened',
        'Fall case 1 closed with its findings',
        'Sent to its manufacturer, return batch 1',
        'Back from its manufacturer, repaired, certificate R-88, return batch 1',
        'R-88, Norvane, 2026-03-20; documents kept: 1',
        'scanned back in and destroyed; to the bench for a new inspection',
      ])
        expect(text).toContain(words);
    }
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  }, 240_000);
});

describe('a scrapped device', () => {
  test('was cut before another person with a photo, and nothing brings it back', async () => {
    const station = await demoStation();
    await fallen(station);
    const scrapping = {
      benchId: ready,
      lifelineCut: true,
      markingDefaced: true,
      witness: 'P006',
      photos: [await photoDocument()],
    };
    const wrongs: readonly (readonly [Partial<typeof scrapping>, string])[] = [
      [{ lifelineCut: false }, 'scrap-lifeline-not-cut'],
      [{ markingDefaced: false }, 'scrap-marking-not-defaced'],
      [{ witness: 'P005' }, 'scrap-witness-needed'],
      [{ photos: [] }, 'scrap-photo-needed'],
    ];
    for (const [wrong, code] of wrongs)
      expect(await station.expectError('device.scrap', { ...scrapping, ...wrong })).toMatchObject({ code });
    await station.expectOutput('device.scrap', scrapping);
    expect((await held(station)).scrapped).toMatchObject({ witness: 'Nadia Solheim' });
    const scrapped = { code: 'device-scrapped' };
    expect(await station.expectError('release.take', { benchId: ready, tag: '1' })).toMatchObject(scrapped);
    expect(
      await station.expectError('held.record-evidence', {
        benchId: ready,
        kind: 'repair-certificate',
        covers: [1],
        documents: [],
      }),
    ).toMatchObject(scrapped);
    expect(await station.expectError('return-batch.add', { benchIds: [ready] })).toMatchObject(scrapped);
    expect(await station.expectError('inspection.start', { benchId: ready })).toMatchObject(scrapped);
    const out = await station.expectOutput('custody.check-out', {
      userId: 'P006',
      benchIds: [ready],
      preUse: { language: 'en' },
    });
    expect(out).toMatchObject({ checkedOut: [], refused: [{ code: 'checkout-scrapped' }] });
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });
});

test('verification reads the documents of held devices again, and names one that is gone', async () => {
  const station = await demoStation();
  await fallen(station);
  const certificate = { number: 'R-88', on: today, issuer: 'Norvane' };
  await station.expectOutput('held.record-evidence', {
    benchId: ready,
    kind: 'repair-certificate',
    covers: [1],
    certificate,
    documents: [await pdfDocument()],
  });
  const { sha256 } = (await held(station)).evidence[0]!.documents[0]!;
  const files = await readdir(join(station.folder, 'evidence'));
  await rm(join(station.folder, 'evidence', files.find((name) => name.startsWith(sha256))!));
  expect((await station.expectOutput('ledger.verify', {})).faults).toContainEqual(
    expect.objectContaining({ kind: 'picture missing', sha256 }),
  );
});

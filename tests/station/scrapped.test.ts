/** Scrapped is final: every operation of the contract is tried on a scrapped device, and its bench ID is never given again. */
import { expect, test, vi } from 'vitest';
import { z } from 'zod';
import { benchIdAlphabet, benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import { contract, type InputOf, type OperationName } from '../../src/station/contract.ts';
import { pdfDocument, photoDocument } from '../support/given-documents.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { agreed, endOf, fileOf, headings, previewOf, runOf } from './exchange/import-support.ts';
import { sampleDevice } from './sample-device.ts';
import {
  certificate,
  type ScrappedDevice,
  scrappedDevice,
  serial,
  today,
  windows,
} from './scrapped-device.ts';

type Attempts = {
  readonly [Name in OperationName]?: (
    scrapped: ScrappedDevice,
  ) => readonly InputOf<Name>[] | Promise<readonly InputOf<Name>[]>;
};

const listOf = ({ benchId, model }: ScrappedDevice): string =>
  `Bench ID,${headings}\n${benchId},${model.manufacturer},${model.model},${serial},2026-01,15.24 m,,,,,,in service,2026-03-01,T. Arandal,pass,\n`;

/** Of every device of its model. */
const signedNotice = ({ model }: ScrappedDevice, reference: string): InputOf<'notice.record'> => ({
  text: {
    manufacturer: model.manufacturer,
    reference,
    issuedOn: today,
    instruction: { en: 'Use again.' },
    affected: [{ models: [model.model] }],
  },
  pin: demo.pin,
});

const noAnswers = (['fall', 'exposure', 'questionable'] as const).map((question) => ({
  question,
  said: 'no' as const,
}));

/** As a person would ask it of the device, or of what lay open about it when it was scrapped. */
const attempts: Attempts = {
  'count.finish': ({ benchId }) => [{ place: 'A1', scanned: [benchId], keepHere: [benchId] }],
  'custody.check-in': ({ benchId }) => [{ benchId, answers: noAnswers, withoutCheckOut: true, place: 'A1' }],
  'custody.check-out': ({ benchId, kitId }) => [
    { userId: 'P006', benchIds: [benchId], preUse: { language: 'en' } },
    { userId: 'P006', benchIds: [benchId], preUse: { language: 'en' }, kitId },
  ],
  'custody.transfer': ({ benchId }) => [{ benchId, toUserId: 'P006', because: 'Found.' }],
  'custody.write-off': ({ benchId }) => [{ benchId, because: 'Never came back.' }],
  'device.bind-code': ({ benchId }) => [{ benchId, otherCode: { code: 'NEW-CODE-1', kind: 'maker' } }],
  'device.keep-picture': async ({ benchId }) => [
    { benchId, of: 'marking', pictureBase64: (await photoDocument()).contentBase64 },
  ],
  'device-quote.record': ({ benchId }) => [{ benchId, price: 240 }],
  'device.record-facts': ({ benchId }) => [{ benchId, firstUsedOn: '2026' }],
  'device.record-revalidation': ({ benchId }) => [
    { benchId, revalidatedOn: today, revalidatedBy: 'Quillmoor', certificate: 'R-89' },
  ],
  'device.register': ({ benchId }) => [
    { ...sampleDevice(serial), benchId },
    { ...sampleDevice('Q26C49301'), benchId },
  ],
  'device.relabel': ({ benchId }) => [
    { benchId, marking: sampleDevice(serial).marking, reprintBecause: 'damaged' },
  ],
  'device.remove': ({ benchId }) => [{ benchId, ground: 'fall' }],
  'device.scrap': async ({ benchId }) => [
    {
      benchId,
      lifelineCut: true,
      markingDefaced: true,
      witness: 'P006',
      photos: [await photoDocument()],
    },
  ],
  'device.set-use': ({ benchId }) => [{ benchIds: [benchId], typeOfUse: 'infrequent to light' }],
  'device.store': ({ benchId }) => [{ benchId, place: 'A1' }],
  'fall-case.open': ({ benchId }) => [{ benchId, facts: { happenedOn: today } }],
  'fall-case.note': ({ fallCase }) => [{ fallCase, facts: { account: 'It holds.' } }],
  'fall-case.close': ({ fallCase }) => [{ fallCase, findings: 'Nothing happened.' }],
  'held.confirm-evidence': ({ benchId, evidence }) => [
    { benchId, evidence, lookedAtDevice: true, pin: demo.pin },
  ],
  'held.record-evidence': async ({ benchId }) => [
    {
      benchId,
      kind: 'repair-certificate',
      covers: [1, 2],
      certificate,
      documents: [await pdfDocument()],
    },
  ],
  'held.withdraw-evidence': ({ benchId, evidence }) => [{ benchId, evidence, because: 'Mistaken.' }],
  'identity.propose': ({ identityCase, benchId }) => [{ identityCase, candidate: benchId, pin: demo.pin }],
  'identity.confirm': ({ identityCase, benchId }) => [
    { identityCase, candidate: benchId, lookedAtDevice: true, pin: demo.pin },
  ],
  'identity.open': ({ benchId }) => [{ observation: { serial, benchId } }],
  'import.run': async (scrapped) => {
    const file = fileOf(listOf(scrapped));
    return [{ ...file, columns: agreed(await previewOf(scrapped.station, file)) }];
  },
  'inspection.start': ({ benchId }) => [{ benchId }],
  'inspection.answer': ({ abandoned, passed, answers }) =>
    [abandoned, passed].map((inspection) => ({
      inspection,
      check: 'marking.manufacturer',
      answer: answers['marking.manufacturer']!,
    })),
  'inspection.keep-picture': async ({ abandoned }) => [
    {
      inspection: abandoned,
      check: 'marking.manufacturer',
      pictureBase64: (await photoDocument()).contentBase64,
    },
  ],
  'inspection.sign': ({ abandoned, passed }) =>
    [abandoned, passed].map((inspection) => ({ inspection, pin: demo.pin })),
  'inspection.break-off': ({ abandoned }) => [{ inspection: abandoned, why: 'Mistaken.' }],
  'kit.save': ({ benchId, kitId }) => [
    { kitId, name: 'Gantry', code: 'KIT9', benchIds: [benchId] },
    { name: 'Gantry 2', code: 'KIT8', benchIds: [benchId] },
  ],
  'notice.record': (scrapped) => [signedNotice(scrapped, 'SN 2026-09')],
  'notice.record-start': (scrapped) => [signedNotice(scrapped, 'SN 2026-10')],
  'record.amend': ({ registered, answered }) => [
    {
      amends: registered,
      correction: { field: 'serial', now: 'Q26C49302' },
      because: 'Misread',
      markingReadNow: true,
      pin: demo.pin,
    },
    {
      amends: answered,
      correction: { field: 'answer', now: { kind: 'marking', state: 'legible' } },
      because: 'Misread',
      pin: demo.pin,
    },
  ],
  'release.take': ({ benchId, tag }) => [
    { benchId, tag },
    { benchId, tag: '1' },
  ],
  'reinspection.begin': ({ benchId }) => [{ benchId, isUnaware: true }],
  'reinspection.draw': () => [{ count: 50 }],
  'reinspection.see': ({ benchId }) => [{ benchId }],
  'return-batch.add': ({ benchId, batch }) => [{ benchIds: [benchId] }, { benchIds: [benchId], batch }],
  'return-batch.take-out': ({ benchId, batch }) => [{ benchId, batch }],
  'return-batch.ship': ({ batch }) => [
    {
      batch,
      carrier: 'Harrow Freight',
      followUpOn: today,
      condition: 'Sound.',
      contamination: 'none known',
    },
  ],
  'return-batch.follow-up': ({ batch }) => [{ batch, note: 'It comes back.', nextOn: today }],
  'return-batch.receive': ({ benchId, batch }) => [{ benchId, batch, outcome: 'repaired', certificate }],
  'tag.issue': ({ benchId }) =>
    (['status', 'quarantine'] as const).map((kind) => ({ benchId, kind, reprintBecause: 'lost' })),
  'tag.print': ({ benchId, printerId }) => [{ benchId, kind: 'status', printerId, reprintBecause: 'lost' }],
  'tag.prove': ({ tag }) => [{ text: tag }],
  'ledger.rebuild': () => [{}],
};

/** Of the station, its people, its printers, its models, its papers or its record as a whole; none of one device. */
const ofNoDevice: readonly OperationName[] = [
  'backup.cancel',
  'backup.make',
  'bench.set-capacity',
  'checkpoint.export',
  'export.cancel',
  'identity.disagree',
  'identity.leave-unidentified',
  'import.cancel',
  'keeping.set',
  'kit.remove',
  'model-sheet.record',
  'model-sheet.set-contact',
  'model-sheet.set-intervals',
  'model-sheet.set-minimum-diameter',
  'notice.record-cancel',
  'person.add',
  'person.change',
  'person.change-own-pin',
  'person.designate',
  'person.end-designation',
  'person.leave',
  'person.return',
  'person.set-pin',
  'print.cancel',
  'printer.calibrate',
  'printer.remove',
  'printer.save',
  'printer.test',
  'program.adopt',
  'repair-terms.record',
  'report.cancel',
  'restore.cancel',
  'restore.open',
  'restore.run',
  'returns-basis.record',
  'scanner.forget',
  'scanner.learn',
  'session.attend',
  'session.sign-in',
  'session.sign-out',
  'station.load-demo',
  'station.set-unattended',
  'station.setup',
];

const jobIn = (output: unknown): number => (output as { job: number }).job;

const commands = [...contract.values()].filter(({ kind }) => kind === 'command');

const namesDevice = (input: z.ZodType): boolean =>
  JSON.stringify(z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' })).includes('HJKMNP-TV-Z]{10}');

test('every command of the contract that names a device is tried on a scrapped one', () => {
  const tried = Object.keys(attempts);
  expect([...tried, ...ofNoDevice].sort()).toEqual(commands.map(({ name }) => name).sort());
  const naming = commands.filter(({ input }) => namesDevice(input)).map(({ name }) => name);
  expect(naming.length).toBeGreaterThan(20);
  expect(naming.filter((name) => !tried.includes(name))).toEqual([]);
});

test('no command of the contract brings a scrapped device back, whoever gives it', async () => {
  const scrapped = await scrappedDevice();
  const { station, benchId } = scrapped;
  const state = async () => {
    const { device } = await station.expectOutput('device.show', { benchId });
    const { held } = await station.expectOutput('held.show', { benchId });
    return { standing: device.standing, tag: device.currentTag?.kind, scrapped: held.scrapped };
  };
  await station.expectOutput('session.sign-in', { badge: demo.inspector });
  const asScrapped = await state();
  expect(asScrapped).toMatchObject({ standing: 'scrapped', scrapped: { witness: 'Nadia Solheim' } });
  for (const [name, inputsOf] of Object.entries(attempts) as [
    OperationName,
    (scrapped: ScrappedDevice) => Promise<readonly never[]>,
  ][]) {
    for (const input of await inputsOf(scrapped)) {
      const ends = [];
      for (const window of windows) {
        const result = await station.callAs(window)(name, input);
        if (result.ok && name === 'import.run')
          expect((await endOf(station, jobIn(result.output))).state).not.toBe('imported');
        if (result.ok && name === 'notice.record-start')
          await vi.waitFor(async () => {
            const status = await station.callAs(window)('notice.record-status', {
              job: jobIn(result.output),
            });
            expect(status).not.toMatchObject({ output: { state: 'working' } });
          });
        ends.push(result.ok ? 'done' : result.error.code);
        expect(await state(), `${name} by ${window}`).toEqual(asScrapped);
      }
      // A refusal for what was typed, or for who asked, would say nothing of the device.
      const beside = ends.filter((end) => ['input-invalid', 'role-needed', 'pin-wrong'].includes(end));
      expect(beside.length, `${name}: ${ends.join(', ')}`).toBeLessThan(ends.length);
      expect(ends).not.toContain('internal-error');
    }
  }
  expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
}, 240_000);

/** Bytes from which the station makes this bench ID. */
const bytesOf = (benchId: BenchId): Uint8Array =>
  Uint8Array.from([...benchId.slice(0, 6)], (symbol) => benchIdAlphabet.indexOf(symbol));

test('the bench ID of a scrapped, a quarantined or any other device is never given again, whatever chance gives', async () => {
  /** What chance gives next; what is never used once it has run out. */
  const given: Uint8Array[] = [];
  let last = 0;
  const randomBytes = (count: number): Uint8Array => {
    last += 1;
    return given.shift() ?? Uint8Array.from({ length: count }, (_, index) => (index === 5 ? last : 7));
  };
  const station = await demoStation({ randomBytes });
  const { expectOutput, expectError } = station;
  // All three in service and in store, by `demo-data/fleet.json`.
  const scrapped = 'MM68GV91MM' as BenchId;
  const quarantined = 'AFZQ45HXXZ' as BenchId;
  const inService = 'V098PGTHYP' as BenchId;
  for (const benchId of [scrapped, quarantined])
    await expectOutput('device.remove', { benchId, ground: 'fall' });
  await expectOutput('device.scrap', {
    benchId: scrapped,
    lifelineCut: true,
    markingDefaced: true,
    witness: 'P006',
    photos: [await photoDocument()],
  });
  const taken = [scrapped, quarantined, inService];
  const again = () => {
    given.push(...taken.map(bytesOf));
    return taken;
  };
  expect(benchIdFrom([...bytesOf(scrapped)])).toBe(scrapped);
  expect(again()).not.toContain((await expectOutput('bench-id.new', {})).benchId);
  expect(given).toEqual([]);
  const registered = again();
  expect(registered).not.toContain(
    (await expectOutput('device.register', sampleDevice('Q26C49310'))).benchId,
  );
  expect(given).toEqual([]);
  for (const benchId of taken)
    expect(await expectError('device.register', { ...sampleDevice('Q26C49311'), benchId })).toMatchObject({
      code: 'bench-id-taken',
    });
  again();
  const before = (await expectOutput('device.list', { limit: 1 })).total;
  const file = fileOf(`${headings}\nNorvane,Lode 6,N6-23-4401,2023-02,6 m,galvanized,,,,,,,,,\n`);
  const imported = await runOf(station, file);
  expect(imported).toMatchObject({ state: 'imported' });
  expect(given).toEqual([]);
  expect((await expectOutput('device.list', { limit: 1 })).total).toBe(before + 1);
  for (const [index, benchId] of taken.entries())
    expect((await expectOutput('device.show', { benchId })).device.standing).toBe(
      ['scrapped', 'quarantined', 'in service'][index],
    );
});

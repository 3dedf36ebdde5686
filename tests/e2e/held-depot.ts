/** Devices that are held, one in every state of the way back, made at the station of a window where they are not there yet. */
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';
import type { BenchId } from '../../src/domain/brand.ts';
import { markingElements } from '../../src/domain/marking.ts';
import { badges } from './prepared-depot.ts';
import type { Visit } from './visit.ts';

const names = ['fallen', 'doubted', 'ready', 'packed', 'away', 'scrapped'] as const;
export type HeldDevices = Readonly<Record<(typeof names)[number], BenchId>>;

/** Asks the station as the one who is signed in at the window. */
const ask = <Output>({ page }: Visit, operation: string, input: object = {}): Promise<Output> =>
  page.evaluate(
    async ({ operation, input }) => {
      const response = await fetch('/call', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ operation, input, language: 'en' }),
      });
      const answer = await response.json();
      if (!answer.ok) throw new Error(`${operation}: ${answer.error.sentence}`);
      return answer.output;
    },
    { operation, input },
  );

export const samplePdf = async (): Promise<Buffer> => {
  const made = await PDFDocument.create();
  made.addPage();
  return Buffer.from(await made.save());
};

export const samplePhoto = (): Promise<Buffer> =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: '#777' } })
    .jpeg()
    .toBuffer();

const certificate = { number: 'R-2088', on: '2026-03-10', issuer: 'Quillmoor' };

/** Whoever is signed in at the window is an administrator before and after. */
export const heldDevices = async (visit: Visit): Promise<HeldDevices> => {
  const known = await ask<{ devices: readonly { serial: string; benchId: BenchId }[] }>(
    visit,
    'device.list',
    {
      search: 'HELD',
      limit: 20,
    },
  );
  if (known.devices.length === 0) await makeThem(visit);
  const { devices } = await ask<typeof known>(visit, 'device.list', { search: 'HELD', limit: 20 });
  return Object.fromEntries(
    names.map((name) => [
      name,
      devices.find(({ serial }) => serial === `HELD-${name.toUpperCase()}`)!.benchId,
    ]),
  ) as HeldDevices;
};

const makeThem = async (visit: Visit): Promise<void> => {
  const { modelSheets } = await ask<{ modelSheets: readonly { modelSheetId: string; model: string }[] }>(
    visit,
    'model-sheet.list',
  );
  const { modelSheetId } = modelSheets.find(({ model }) => model.startsWith('Stayline'))!;
  const made: Partial<Record<(typeof names)[number], BenchId>> = {};
  await ask(visit, 'session.sign-in', { badge: badges.inspector });
  for (const name of names) {
    const { benchId } = await ask<{ benchId: BenchId }>(visit, 'device.register', {
      modelSheetId,
      serial: `HELD-${name.toUpperCase()}`,
      dateOfManufacture: '2025-03',
      marking: markingElements.map((element) => ({ element, state: 'legible' })),
    });
    made[name] = benchId;
    const ground = name === 'fallen' ? 'fall' : name === 'doubted' ? 'other' : 'damage';
    await ask(visit, 'device.remove', { benchId, ground, note: 'Hook struck a girder.' });
    const { symbols } = await ask<{ symbols: readonly { text: string }[] }>(visit, 'tag.issue', {
      benchId,
      kind: 'quarantine',
    });
    await ask(visit, 'tag.prove', { text: symbols.find(({ text }) => text.startsWith('SRL '))!.text });
  }
  const { fallen, doubted, ready, packed, away, scrapped } = made as HeldDevices;
  await ask(visit, 'fall-case.open', {
    benchId: fallen,
    facts: { happenedOn: '2026-03-09', userId: 'P006', job: 'Gantry 4', bagNumber: 'B-17' },
  });
  await ask(visit, 'held.record-evidence', {
    benchId: doubted,
    kind: 'doubt-settled',
    covers: [1],
    statement: 'The mark on the hook is paint: it wiped off, and the metal under it is whole.',
  });
  await ask(visit, 'held.record-evidence', {
    benchId: ready,
    kind: 'repair-certificate',
    covers: [1],
    certificate,
    documents: [{ name: 'certificate.pdf', contentBase64: (await samplePdf()).toString('base64') }],
  });
  const shipping = await ask<{ batch: { number: number } }>(visit, 'return-batch.add', { benchIds: [away] });
  await ask(visit, 'return-batch.ship', {
    batch: shipping.batch.number,
    carrier: 'Harrow Freight',
    followUpOn: '2026-03-24',
    condition: 'Hook struck a girder.',
    contamination: 'none known',
  });
  await ask(visit, 'return-batch.add', { benchIds: [packed] });
  await ask(visit, 'device.scrap', {
    benchId: scrapped,
    lifelineCut: true,
    markingDefaced: true,
    witness: 'P006',
    photos: [{ name: 'cut.jpg', contentBase64: (await samplePhoto()).toString('base64') }],
  });
  await ask(visit, 'session.sign-in', { badge: badges.administrator });
};

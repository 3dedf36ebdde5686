/** What a person can write at the invented depot beyond what its inspections and held devices need, each text once. */
import { tmpdir } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import { calendarDate, metres } from '../../src/domain/brand.ts';
import { type MarkingElement, markingElements } from '../../src/domain/marking.ts';
import type { InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { samplePdf, samplePhoto } from '../e2e/held-depot.ts';
import { badges, devices, pin, walkUntil, wornFacts } from '../e2e/prepared-depot.ts';

export type Call = <Name extends OperationName>(name: Name, input: InputOf<Name>) => Promise<OutputOf<Name>>;

const today = calendarDate('2026-03-10');
const soon = calendarDate('2026-03-24');
const because = 'Known by now';
const certificate = { number: 'R-2099', on: today, issuer: 'Quillmoor' };

export const designation = {
  designatedBy: 'Head of depot',
  designatedOn: calendarDate('2026-03-01'),
  trainingValidUntil: calendarDate('2027-01-31'),
  document: 'D-1',
  trainingCourse: 'Course',
  trainedOn: calendarDate('2026-02-01'),
};

/** Signs in as one of the people of the depot. */
const as = (call: Call, badge: string): Promise<unknown> => call('session.sign-in', { badge });

export const writeEverything = async (call: Call): Promise<void> => {
  await ofPeople(call);
  const modelSheetId = await ofModels(call);
  await ofDevices(call, modelSheetId);
  await ofWornDevices(call);
  await ofTheDesk(call);
  await ofFalls(call, modelSheetId);
  await ofReturns(call, modelSheetId);
  await ofNotices(call);
  await ofImports(call);
  await ofTheStation(call, modelSheetId);
};

const ofPeople = async (call: Call): Promise<void> => {
  await as(call, badges.administrator);
  const { personId } = await call('person.add', {
    name: 'Tove Lindqvist',
    badge: 'HOST-1',
    roles: ['inspector'],
  });
  await call('person.designate', {
    personId,
    designation,
  });
  await call('person.change', { personId: 'P003', name: 'Ambrose Tallow', because });
  await call('person.set-pin', { personId: 'P004', pin: '602214', because });
  await call('person.end-designation', { personId, because });
  await call('person.leave', { personId, because });
  await call('person.return', { personId, because });
};

const ofModels = async (call: Call): Promise<string> => {
  const { modelSheet } = await call('model-sheet.record', {
    modelSheet: {
      manufacturer: 'Verrant',
      model: 'Tether 6',
      ratedLengthM: metres(6),
      lifelineMaterial: 'galvanised',
      lifelineDiameterMm: 4.8,
      capacityKg: { from: 59, to: 140 },
      standard: 'Standard of the maker',
      loadIndicatorFitted: true,
      manufacturerReference: 'V-6',
      manufacturerContact: 'Service desk',
      manual: 'Manual 6',
    },
  });
  const { modelSheetId, manufacturer } = modelSheet;
  await call('model-sheet.set-contact', { manufacturer, manufacturerContact: 'Service desk, new number' });
  return modelSheetId;
};

const marking = (texts: Partial<Record<MarkingElement, string>>) =>
  markingElements.map((element) => {
    const text = texts[element];
    return { element, state: 'legible' as const, ...(text === undefined ? {} : { text }) };
  });

const registered = async (call: Call, modelSheetId: string, serial: string) => {
  const dateOfManufacture = '2025-04';
  const of = { modelSheetId, serial, dateOfManufacture, marking: marking({ capacityRange: 'As read' }) };
  return (await call('device.register', of)).benchId;
};

const ofDevices = async (call: Call, modelSheetId: string): Promise<void> => {
  await as(call, badges.inspector);
  const benchId = await registered(call, modelSheetId, 'WORDS-1');
  await call('device.record-revalidation', {
    benchId,
    revalidatedOn: today,
    revalidatedBy: 'Verrant',
    certificate: 'V-118',
  });
  const { serial, dateOfManufacture } = (await call('device.show', { benchId })).device;
  const read = marking({ serialNumber: serial, dateOfManufacture, capacityRange: 'As read' });
  await call('device.relabel', { benchId, marking: read, reprintBecause: 'damaged' });
  const dirty = 'upper-hook.body';
  const inspection = await walkUntil({ expectOutput: call }, benchId, dirty);
  const findings = [{ defect: 'dirt', note: 'At the edge' }];
  await call('inspection.answer', { inspection, check: dirty, answer: { kind: 'defects', findings } });
  const { device = [] } = await call('record.amendable', { benchId });
  const { amends } = device.find(({ field }) => field === 'serial')!;
  await call('record.amend', { amends, correction: { field: 'serial', now: 'WORDS-2' }, because, pin });
};

const ofWornDevices = async (call: Call): Promise<void> => {
  const opened = async () =>
    (await call('identity.open', { observation: { ...wornFacts, serial: 'Q22A30?37' }, keptAt: 'Shelf 4' }))
      .identityCase;
  await call('identity.leave-unidentified', { identityCase: await opened(), keptAt: 'Shelf 5' });
  const identityCase = await opened();
  const { identity } = await call('identity.show', { identityCase });
  await call('identity.propose', { identityCase, candidate: identity.ranking.candidates[0]!.benchId, pin });
  await as(call, badges.attendant);
  await call('identity.disagree', { identityCase, why: 'The housing is newer.', pin });
};

const ofTheDesk = async (call: Call): Promise<void> => {
  const benchId = devices.inService;
  await as(call, badges.inspector);
  const { symbols } = await call('tag.issue', { benchId, kind: 'status' });
  await call('tag.prove', { text: symbols.find(({ text }) => text.startsWith('SRL '))!.text });
  await as(call, badges.attendant);
  await call('kit.save', { name: 'Gantry', code: 'KIT9', benchIds: [benchId] });
  const preUse = { language: 'en' as const };
  await call('custody.check-out', { userId: 'P006', benchIds: [benchId], preUse });
  await call('custody.transfer', { benchId, toUserId: 'P009', because, preUse });
  await call('custody.check-in', {
    benchId,
    answers: [
      { question: 'fall', said: 'no' },
      { question: 'exposure', said: 'yes', choices: ['drop'], note: 'From the platform' },
    ],
  });
  await call('custody.write-off', { benchId: devices.out, because });
  await call('count.finish', { place: 'CAGE2', scanned: [], unknown: ['odd code'] });
};

const ofFalls = async (call: Call, modelSheetId: string): Promise<void> => {
  await as(call, badges.inspector);
  const benchId = await registered(call, modelSheetId, 'WORDS-3');
  await call('device.remove', { benchId, ground: 'fall', note: 'Fell' });
  const facts = { happenedOn: today, userId: 'P006', job: 'Gantry 5', indicator: 'deployed' as const };
  const more = { informed: 'Head of depot', bagNumber: 'B-18', account: 'It slipped.' };
  const { fallCase } = await call('fall-case.open', { benchId, facts: { ...facts, ...more } });
  await call('fall-case.note', {
    fallCase: fallCase.number,
    facts: { ...facts, ...more },
    photos: [{ name: 'scene.jpg', contentBase64: (await samplePhoto()).toString('base64') }],
  });
  await as(call, badges.administrator);
  await call('fall-case.close', { fallCase: fallCase.number, findings: 'A slip.' });
};

const ofReturns = async (call: Call, modelSheetId: string): Promise<void> => {
  await as(call, badges.inspector);
  const benchId = await registered(call, modelSheetId, 'WORDS-4');
  await call('device.remove', { benchId, ground: 'damage', note: 'Bent hook' });
  await as(call, badges.administrator);
  await call('repair-terms.record', { modelSheetId, repairable: 'yes', price: 90, quote: 'Q-1' });
  await call('device-quote.record', { benchId, price: 90, leadTimeDays: 30, quote: 'Q-2' });
  await call('returns-basis.record', { change: { what: 'plan', months: 4, currency: 'EUR' } });
  await as(call, badges.attendant);
  const { batch: made } = await call('return-batch.add', { benchIds: [benchId] });
  const { number: batch } = made;
  await call('return-batch.ship', {
    batch,
    carrier: 'Harrow Freight',
    consignment: 'HF-77',
    followUpOn: soon,
    condition: 'Bent hook',
    contamination: 'none known',
  });
  await call('return-batch.follow-up', { batch, note: 'Called them', nextOn: soon });
  await call('return-batch.receive', { batch, benchId, outcome: 'repaired', certificate });
  const documents = [{ name: 'certificate.pdf', contentBase64: (await samplePdf()).toString('base64') }];
  const kind = 'repair-certificate';
  const { held } = await call('held.record-evidence', { benchId, kind, covers: [1], certificate, documents });
  await as(call, badges.inspector);
  await call('held.withdraw-evidence', { benchId, evidence: held.evidence.at(-1)!.evidence, because });
};

const ofTheStation = async (call: Call, modelSheetId: string): Promise<void> => {
  await as(call, badges.administrator);
  const { capacity } = await call('bench.capacity', {});
  const closures = [{ from: soon, until: soon, name: 'Stocktaking' }];
  await call('bench.set-capacity', { capacity: { ...capacity, closures } });
  await call('printer.save', {
    settings: { kind: 'folder', name: 'Tags', stock: { widthMm: 100, heightMm: 50 }, folder: tmpdir() },
    tagKinds: [],
  });
  const { presets } = await call('program.show', {});
  const { version: _version, ...settings } = presets[0]!;
  const source = { mark: 'employer' as const, citation: 'Board' };
  await call('program.adopt', {
    program: {
      ...settings,
      key: 'words',
      inspectionInterval: { ...settings.inspectionInterval, source },
      jurisdictions: [{ name: { en: 'Harbour', es: 'Puerto' }, inspectionMonths: 6, source }],
      employerRules: [{ modelSheetId, inspectionMonths: 3, why: 'Salt air' }],
    },
    pin,
  });
};

const ofNotices = async (call: Call): Promise<void> => {
  await as(call, badges.administrator);
  const text = (reference: string) => ({
    manufacturer: 'Norvane',
    reference,
    issuedOn: calendarDate('2026-03-01'),
    instruction: { en: 'Hold it.', es: 'Reténgalo.' },
    affected: [{ models: ['Lode 2'], serials: ['As listed'] }],
  });
  await call('notice.record', { text: text('N-1'), pin });
  const { job } = await call('notice.record-start', { text: text('N-2'), pin });
  await ended(() => call('notice.record-status', { job }));
};

const ofImports = async (call: Call): Promise<void> => {
  await as(call, badges.administrator);
  const contentBase64 = Buffer.from('serial\nWORDS-9\n').toString('base64');
  const { job } = await call('import.run', {
    fileName: 'fleet.csv',
    contentBase64,
    columns: [{ column: 0, meaning: 'serial' }],
  });
  await ended(() => call('import.status', { job }));
};

const ended = async (status: () => Promise<{ readonly state: string }>): Promise<void> => {
  while ((await status()).state === 'working') await setTimeout(50);
};

/** A manufacturer's notice through the contract: what it means is held at once, wherever it is, and whenever it becomes known. */
import { describe, expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { markingElements } from '../../src/domain/marking.ts';
import type { InputOf } from '../../src/station/contract.ts';
import { demo, demoStation, type TestStation } from '../support/station-fixture.ts';
import { fileOf, headings, runOf } from './exchange/import-support.ts';

const id = (text: string) => text as BenchId;
/** Of the invented depot, by `demo-data/fleet.json`: two Lode 2 of 2025 and 2024, and one of 2023. */
const made2025 = id('MM68GV91MM');
const made2024 = id('VG7HCF1P6B');
const made2023 = id('V098PGTHYP');
/** Ready at the desk, and none of these. */
const another = id('AFZQ45HXXZ');

type Text = InputOf<'notice.record'>['text'];
const text: Text = {
  manufacturer: 'Norvane',
  reference: 'SN 2026-02',
  issuedOn: '2026-03-02' as Text['issuedOn'],
  instruction: { en: 'Take out of use and return to Norvane.' },
  affected: [{ models: ['Lode 2'], serials: ['N2-24-1000…N2-25-1999'] }],
};
const signed = (changes: Partial<Text> = {}) => ({ text: { ...text, ...changes }, pin: demo.pin });

const deviceOf = async (station: TestStation, benchId: BenchId) =>
  (await station.expectOutput('device.show', { benchId })).device;

const register = async (station: TestStation, serial: string, state: 'legible' | 'illegible' = 'legible') => {
  const { benchId } = await station.expectOutput('device.register', {
    modelSheetId: 'M001',
    serial,
    dateOfManufacture: '2025-02',
    marking: markingElements.map((element) => ({
      element,
      state: element === 'serialNumber' ? state : ('legible' as const),
    })),
  });
  return benchId;
};

const checkOut = async (station: TestStation, benchIds: BenchId[]) => {
  await station.expectOutput('session.sign-in', { badge: demo.attendant });
  const done = await station.expectOutput('custody.check-out', {
    userId: 'P006',
    benchIds,
    preUse: { language: 'en' },
  });
  await station.expectOutput('session.sign-in', { badge: demo.inspector });
  return done;
};

describe('a notice that is recorded', () => {
  test('holds what it means in the same breath, the device in the field too, and nothing else', async () => {
    const station = await demoStation();
    expect((await checkOut(station, [made2025])).checkedOut).toEqual([made2025]);
    const preview = await station.expectOutput('notice.preview', { text });
    expect(preview).toMatchObject({ certain: 2, possible: 0, out: 1, warnings: [] });
    expect(preview.devices.map(({ device, user }) => [device.benchId, user])).toEqual([
      [made2025, 'Nadia Solheim'],
      [made2024, undefined],
    ]);
    const before = await station.expectOutput('record.size', {});
    expect(await station.expectOutput('notice.record', signed())).toEqual({ notice: 1, held: 2 });
    expect((await station.expectOutput('record.size', {})).events).toBe(before.events + 3);
    for (const benchId of [made2025, made2024]) {
      const device = await deviceOf(station, benchId);
      expect(device.standing).toBe('quarantined');
      expect(device.reasons.at(-1)).toMatchObject({
        key: 'removal.recall',
        notice: 1,
        sentence: { en: 'Recalled by the manufacturer: Norvane notice SN 2026-02.' },
      });
      expect(device.currentTag?.kind).toBe('quarantine');
    }
    expect((await deviceOf(station, made2023)).standing).toBe('in service');
    const shown = await station.expectOutput('notice.show', { notice: 1 });
    expect(shown.notice).toMatchObject({ recordedBy: 'Teo Arandal', certain: 2, possible: 0 });
    expect(shown.matches.devices.map(({ held, user }) => [held, user])).toEqual([
      [true, 'Nadia Solheim'],
      [true, undefined],
    ]);
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('keeps its devices at the desk, with the sentence of a recall', async () => {
    const station = await demoStation();
    await station.expectOutput('notice.record', signed());
    expect(await checkOut(station, [made2025, another])).toMatchObject({
      checkedOut: [another],
      refused: [{ benchId: made2025, code: 'checkout-recalled' }],
    });
  });

  test('needs a PIN and a competent person or an administrator, and is recorded once', async () => {
    const station = await demoStation();
    expect(await station.expectError('notice.record', { text, pin: '000001' })).toMatchObject({
      field: 'pin',
    });
    await station.expectOutput('session.sign-in', { badge: demo.attendant });
    expect(await station.expectError('notice.record', signed())).toMatchObject({ code: 'role-needed' });
    await station.expectOutput('session.sign-in', { badge: demo.inspector });
    await station.expectOutput('notice.record', signed());
    expect(await station.expectError('notice.record', signed({ reference: 'sn 2026/02' }))).toMatchObject({
      code: 'notice-recorded-already',
      field: 'reference',
    });
  });

  test('is refused where it is of a day to come, or its dates run backwards', async () => {
    const station = await demoStation();
    const later = { issuedOn: '2026-03-11' as Text['issuedOn'] };
    expect(await station.expectError('notice.record', signed(later))).toMatchObject({
      code: 'notice-in-future',
    });
    const backwards = { affected: [{ made: { from: '2025-06', until: '2024' } }] };
    expect(await station.expectError('notice.record', signed(backwards))).toMatchObject({
      code: 'notice-dates-backwards',
    });
    expect(await station.expectOutput('notice.list', {})).toEqual({ notices: [] });
  });

  test('breaks an open inspection off and keeps what it had found', async () => {
    const station = await demoStation();
    const { inspection } = (await station.expectOutput('inspection.start', { benchId: made2025 })).inspection;
    await station.expectOutput('inspection.answer', {
      inspection,
      check: 'marking.serialNumber',
      answer: { kind: 'marking', state: 'illegible' },
    });
    await station.expectOutput('notice.record', signed());
    const device = await deviceOf(station, made2025);
    expect(device.openInspection).toBeUndefined();
    expect(device.reasons.map(({ key }) => key)).toEqual([
      'removal.recall',
      'marking.serialNumber.illegible',
    ]);
  });

  test('says what is odd about it: a maker and a model that nobody has, and serial numbers without a pattern', async () => {
    const station = await demoStation();
    const warned = async (changes: Partial<Text>) =>
      (await station.expectOutput('notice.preview', { text: { ...text, ...changes } })).warnings;
    expect(await warned({ manufacturer: 'Norvayne' })).toEqual([
      expect.stringContaining('Norvane, Quillmoor, Tessaline'),
    ]);
    const odd = await warned({ affected: [{ models: ['Lode 3'], serials: ['N2-25-9…X'] }] });
    expect(odd).toEqual([expect.stringContaining('Lode 3'), expect.stringContaining('“N2-25-9…X”')]);
  });
});

describe('a notice over many devices', () => {
  test('can be canceled until it is recorded, and then leaves nothing; recorded, it holds every one of them', async () => {
    const station = await demoStation();
    const count = 1_200;
    const rows = Array.from(
      { length: count },
      (_, index) => `Norvane,Lode 2,N2-25-${3000 + index},2025-03,,,,,,,in service,,,,\n`,
    );
    expect(await runOf(station, fileOf(`${headings}\n${rows.join('')}`))).toMatchObject({ devices: count });
    const wide = signed({ affected: [{ models: ['Lode 2'], serials: ['N2-25-3000…N2-25-4199'] }] });
    const before = await station.expectOutput('record.size', {});
    const follow = async (job: number, cancel: boolean) => {
      const seen: number[] = [];
      for (;;) {
        const status = await station.expectOutput('notice.record-status', { job });
        if (status.state !== 'working') return { status, seen };
        seen.push(status.done);
        if (cancel && status.done > 0) await station.expectOutput('notice.record-cancel', { job });
        await new Promise((resolve) => setTimeout(resolve, 2));
      }
    };
    const begun = await station.expectOutput('notice.record-start', wide);
    expect((await follow(begun.job, true)).status).toMatchObject({
      state: 'refused',
      code: 'notice-canceled',
    });
    expect(await station.expectOutput('record.size', {})).toEqual(before);
    expect((await station.expectOutput('notice.list', {})).notices).toEqual([]);
    const again = await station.expectOutput('notice.record-start', wide);
    const { status, seen } = await follow(again.job, false);
    expect(status).toMatchObject({ state: 'recorded', notice: 1, held: count });
    expect(seen.toSorted((one, other) => one - other)).toEqual(seen);
    const { total } = await station.expectOutput('device.list', { standing: ['quarantined'], limit: 1 });
    expect(total).toBeGreaterThanOrEqual(count);
  }, 60_000);
});

describe('a device that becomes known later', () => {
  test('is held as it is registered, where its serial number is named or cannot be read', async () => {
    const station = await demoStation();
    await station.expectOutput('notice.record', signed());
    const named = await deviceOf(station, await register(station, 'N2-25-1500'));
    expect(named).toMatchObject({ standing: 'quarantined', reasons: [{ key: 'removal.recall', notice: 1 }] });
    const unreadable = await deviceOf(station, await register(station, 'N2-2?-15??', 'illegible'));
    expect(unreadable.reasons[0]?.sentence.en).toBe(
      'May be recalled by the manufacturer: Norvane notice SN 2026-02.',
    );
    expect((await deviceOf(station, await register(station, 'N2-26-1500'))).standing).toBe('new');
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('is held once its serial number is corrected to one that is named', async () => {
    const station = await demoStation();
    await station.expectOutput('notice.record', signed());
    const benchId = await register(station, 'N2-26-1500');
    await station.expectOutput('record.amend', {
      amends: await registrationOf(station, benchId),
      correction: { field: 'serial', now: 'N2-25-1500' },
      because: 'Misread.',
      markingReadNow: true,
      pin: demo.pin,
    });
    expect((await deviceOf(station, benchId)).reasons).toMatchObject([{ key: 'removal.recall', notice: 1 }]);
  });

  test('is held as a list brings it into the register, and counts among those that are out of service', async () => {
    const station = await demoStation();
    await station.expectOutput('notice.record', signed());
    // Out of the range, in it, and in it and declared removed by the list too.
    const list = fileOf(`${headings}
Norvane,Lode 2,N2-26-1600,2026-01,,,,,,,in service,,,,
Norvane,Lode 2,N2-25-1600,2025-03,,,,,,,in service,,,,
Norvane,Lode 2,N2-25-1601,2025-03,,,,,,,removed,,,,Hook corroded.
`);
    expect(await runOf(station, list)).toMatchObject({ state: 'imported', devices: 3, removed: 2 });
    const found = async (serial: string) => {
      const { devices } = await station.expectOutput('device.list', { search: serial });
      return deviceOf(station, devices[0]!.benchId);
    };
    expect((await found('N2-26-1600')).standing).toBe('new');
    const recalled = await found('N2-25-1600');
    expect(recalled).toMatchObject({ standing: 'quarantined', currentTag: { kind: 'quarantine' } });
    // Nobody has read the serial number on the device yet.
    expect(recalled.reasons).toMatchObject([
      {
        key: 'removal.recall',
        notice: 1,
        sentence: { en: 'May be recalled by the manufacturer: Norvane notice SN 2026-02.' },
      },
    ]);
    expect((await found('N2-25-1601')).reasons.map(({ key }) => key)).toEqual([
      'removal.declared',
      'removal.recall',
    ]);
    expect(await station.expectError('inspection.start', { benchId: recalled.benchId })).toMatchObject({
      code: 'device-out-of-service',
    });
    expect((await station.expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('is held where two people take another device for it: what was seen on that one may be named', async () => {
    const station = await demoStation();
    const { identityCase } = await station.expectOutput('identity.open', {
      observation: { serial: 'N2-23-11??' },
    });
    await station.expectOutput('identity.propose', { identityCase, candidate: made2023, pin: demo.pin });
    // N2-23-1103 is not named, and so it stays in service; N2-23-11?? may be.
    const affected = [{ models: ['Lode 2'], serials: ['N2-23-1150…N2-23-1199'] }];
    expect(await station.expectOutput('notice.record', signed({ affected }))).toMatchObject({ held: 0 });
    const shown = await station.expectOutput('notice.show', { notice: 1 });
    expect(shown.matches.unrecognised).toMatchObject([{ identityCase }]);
    await station.expectOutput('session.sign-in', { badge: demo.attendant });
    const agreed = { identityCase, candidate: made2023, lookedAtDevice: true as const, pin: demo.pin };
    await station.expectOutput('identity.confirm', agreed);
    expect((await deviceOf(station, made2023)).reasons.map(({ key }) => key)).toEqual([
      'identity.presumed',
      'removal.recall',
    ]);
  });
});

/** Number of the entry that says the serial number. */
const registrationOf = async (station: TestStation, benchId: BenchId): Promise<number> => {
  const { device } = await station.expectOutput('record.amendable', { benchId });
  return device!.find(({ field }) => field === 'serial')!.amends;
};

test('devices that nobody has recognised are named with the place where they lie', async () => {
  const station = await demoStation();
  const observation = { manufacturer: 'Norv*', serial: 'N2-25-1??' };
  await station.expectOutput('identity.open', { observation, keptAt: 'CAGE2' });
  const { unrecognised } = await station.expectOutput('notice.preview', { text });
  expect(unrecognised).toEqual([
    { identityCase: 1, keptAt: 'CAGE2', because: expect.stringContaining('two people') },
  ]);
});

describe('a notice from a file', () => {
  const read = (station: TestStation, content: string) =>
    station.call('notice.read', { contentBase64: Buffer.from(content).toString('base64') });

  test('is read from JSON and from a table, in either language, and recorded by nobody', async () => {
    const station = await demoStation();
    expect(await read(station, JSON.stringify(text))).toMatchObject({ ok: true, output: { text } });
    const table = [
      'Fabricante;Referencia;Emitido el;Modelos;Números de serie;Fabricado desde;Instrucción',
      'Norvane;SN 7;2026-03-02;Lode 2;N2-24-1000…N2-25-1999;;Devolver a Norvane.',
      ';;;Lode 6;;2024-06;',
    ].join('\r\n');
    expect(await read(station, table)).toMatchObject({
      ok: true,
      output: {
        text: {
          manufacturer: 'Norvane',
          reference: 'SN 7',
          instruction: { es: 'Devolver a Norvane.' },
          affected: [
            { models: ['Lode 2'], serials: ['N2-24-1000…N2-25-1999'] },
            { models: ['Lode 6'], serials: [], made: { from: '2024-06' } },
          ],
        },
      },
    });
    expect(await station.expectOutput('notice.list', {})).toEqual({ notices: [] });
  });

  test('says what is missing', async () => {
    const station = await demoStation();
    const { instruction: _instruction, ...rest } = text;
    expect(await read(station, JSON.stringify(rest))).toMatchObject({
      ok: false,
      error: { code: 'notice-file-lacks', sentence: expect.stringContaining('instruction') },
    });
    expect(await read(station, '{"manufacturer":')).toMatchObject({
      ok: false,
      error: { code: 'notice-file-not-read' },
    });
  });
});

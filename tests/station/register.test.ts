/** The register through the contract: devices, their codes, and what a scan means. */
import { describe, expect, test } from 'vitest';
import { benchIdAlphabet } from '../../src/domain/bench-id/bench-id.ts';
import { demo, demoStation, testStation } from '../support/station-fixture.ts';
import { sampleDevice } from './sample-device.ts';

const withDevice = async (serial = 'Q26C49001', code = 'QM152649001') => {
  const station = await demoStation();
  const { benchId } = await station.expectOutput('device.register', sampleDevice(serial, code));
  return { ...station, benchId };
};

describe('a new device', () => {
  test('has a bench ID of its own, found by that, by its maker code and by its serial number', async () => {
    const { expectOutput, benchId } = await withDevice();
    const hyphened = `${benchId.slice(0, 5)}-${benchId.slice(5)}`;
    for (const text of [benchId, hyphened, benchId.toLowerCase()]) {
      expect(await expectOutput('scan.interpret', { text })).toMatchObject({
        meaning: 'device',
        by: 'bench ID',
        device: { benchId },
      });
    }
    expect(await expectOutput('scan.interpret', { text: 'QM152649001' })).toMatchObject({
      meaning: 'device',
      by: 'other code',
      device: { benchId },
    });
    expect(await expectOutput('scan.interpret', { text: 'q26c49001' })).toMatchObject({
      meaning: 'suggestion',
      devices: [{ because: 'serial number', device: { benchId } }],
    });
  });

  test('may take the bench ID of a label that is on it already', async () => {
    const { expectOutput } = await demoStation();
    const { benchId } = await expectOutput('bench-id.new', {});
    expect(await expectOutput('scan.interpret', { text: benchId })).toEqual({
      meaning: 'bench ID not registered',
      benchId,
    });
    const registered = await expectOutput('device.register', { ...sampleDevice('Q26C49003'), benchId });
    expect(registered.benchId).toBe(benchId);
  });

  test('is refused with one clear sentence where it clashes with the register, and nothing is recorded', async () => {
    const { expectOutput, expectError, benchId } = await withDevice();
    const before = (await expectOutput('ledger.verify', {})).head.size;
    const other = sampleDevice('Q26C49004');
    const wrong = `${benchId.slice(0, 9)}${benchId.endsWith('0') ? '1' : '0'}`;
    const refused = [
      await expectError('device.register', sampleDevice('Q26C49001')),
      await expectError('device.register', sampleDevice('q26c49001')),
      await expectError('device.register', sampleDevice('Q26C49004', 'QM152649001')),
      await expectError('device.register', sampleDevice('Q26C49004', demo.attendant)),
      await expectError('device.register', sampleDevice('Q26C49004', 'XCGOOD')),
      await expectError('device.register', sampleDevice('Q26C49004', benchId)),
      await expectError('device.register', { ...other, benchId }),
      await expectError('device.register', { ...other, benchId: wrong }),
      await expectError('device.register', { ...other, modelSheetId: 'M999' }),
      await expectError('device.register', { ...other, marking: other.marking.slice(1) }),
    ];
    expect(refused.map(({ code }) => code)).toEqual([
      'serial-taken',
      'serial-taken',
      'code-taken',
      'code-taken',
      'code-is-ours',
      'code-is-ours',
      'bench-id-taken',
      'bench-id-not-exact',
      'model-sheet-unknown',
      'marking-incomplete',
    ]);
    for (const { sentence } of refused) expect(sentence).toMatch(/[.!]$/);
    expect((await expectOutput('ledger.verify', {})).head.size).toBe(before);
  });

  test('takes further codes, each of which means one device', async () => {
    const { expectOutput, expectError, benchId } = await withDevice();
    await expectOutput('device.bind-code', { benchId, otherCode: { code: 'E200-3412-0117', kind: 'rfid' } });
    expect(await expectOutput('scan.interpret', { text: 'E200-3412-0117' })).toMatchObject({
      meaning: 'device',
      device: { benchId },
    });
    const other = await expectOutput('device.register', sampleDevice('Q26C49005'));
    expect(
      await expectError('device.bind-code', {
        benchId: other.benchId,
        otherCode: { code: 'E200-3412-0117', kind: 'rfid' },
      }),
    ).toMatchObject({ code: 'code-taken' });
  });
});

describe('a typed bench ID with errors', () => {
  test('yields the registered device as a suggestion, and acts on nothing', async () => {
    const { expectOutput, benchId } = await withDevice();
    const torn = `${benchId.slice(0, 3)}????${benchId.slice(7)}`;
    expect(await expectOutput('scan.interpret', { text: torn, typed: true })).toMatchObject({
      meaning: 'suggestion',
      devices: [{ because: 'repaired bench ID', device: { benchId } }],
    });
    expect(await expectOutput('bench-id.check', { text: torn })).toMatchObject({
      kind: 'suggestion',
      benchId,
      registered: true,
      changed: [3, 4, 5, 6],
      contradicted: [],
    });
  });

  test('is never repaired where it was scanned: a scanned one must be exact', async () => {
    const { expectOutput, benchId } = await withDevice();
    const wrong = `${benchId[0] === 'A' ? 'B' : 'A'}${benchId.slice(1)}`;
    expect(await expectOutput('scan.interpret', { text: wrong })).toEqual({
      meaning: 'unknown',
      text: wrong,
    });
  });

  test('never opens a device by itself: all single and double errors of a registered ID (invariant 9)', async () => {
    const { expectOutput, benchId } = await withDevice();
    const others = (symbol: string) =>
      [...benchIdAlphabet].filter((each) => each !== symbol).filter((_, index) => index % 5 === 0);
    const damaged: string[] = [];
    for (let first = 0; first < 10; first += 1) {
      for (const symbol of others(benchId[first]!)) {
        const once = benchId.slice(0, first) + symbol + benchId.slice(first + 1);
        damaged.push(once);
        for (let second = first + 1; second < 10; second += 1) {
          damaged.push(once.slice(0, second) + others(benchId[second]!)[0] + once.slice(second + 1));
        }
      }
    }
    const meanings = await Promise.all(
      damaged.map((text) => expectOutput('scan.interpret', { text, typed: true })),
    );
    expect(new Set(meanings.map(({ meaning }) => meaning))).toEqual(new Set(['suggestion']));
    expect(
      meanings.every(
        (meaning) =>
          meaning.meaning === 'suggestion' &&
          meaning.devices.some(({ device }) => device.benchId === benchId),
      ),
    ).toBe(true);
  });
});

describe('any other scan', () => {
  test('means a badge, a command, or is unknown, and nothing is registered by it', async () => {
    const { expectOutput } = await demoStation();
    expect(await expectOutput('scan.interpret', { text: demo.attendant })).toEqual({
      meaning: 'badge',
      badge: demo.attendant,
      name: 'Bram Kestrin',
    });
    expect(await expectOutput('scan.interpret', { text: 'XCGOOD' })).toEqual({
      meaning: 'command',
      command: 'good',
    });
    expect(await expectOutput('scan.interpret', { text: '4006381333931' })).toEqual({
      meaning: 'unknown',
      text: '4006381333931',
    });
  });
});

describe('taking a device out of service at once', () => {
  test('needs a ground of the program, and a note where the ground says nothing by itself', async () => {
    const { expectOutput, expectError, benchId } = await withDevice();
    expect(await expectError('device.remove', { benchId, ground: 'rust' })).toMatchObject({
      code: 'removal-ground-unknown',
    });
    expect(await expectError('device.remove', { benchId, ground: 'damage' })).toMatchObject({
      code: 'note-needed',
      field: 'note',
    });
    await expectOutput('device.remove', { benchId, ground: 'damage', note: 'Cover dented.' });
    await expectOutput('device.remove', { benchId, ground: 'fall' });
    const { device } = await expectOutput('device.show', { benchId });
    expect(device).toMatchObject({
      standing: 'quarantined',
      removedBy: 'Teo Arandal',
      currentTag: { kind: 'quarantine', tagNumber: 2 },
    });
    expect(device.reasons.map(({ sentence }) => sentence.en)).toEqual([
      'Damage seen: Cover dented.',
      'Arrested a fall.',
    ]);
  });
});

describe('who may do what', () => {
  test('nobody without a badge sees or changes the register, and a user changes nothing but taking gear out of service', async () => {
    const { expectOutput, expectError, benchId } = await withDevice();
    await expectOutput('session.sign-out', {});
    expect(await expectError('device.list', {})).toMatchObject({ code: 'sign-in-needed' });
    expect(await expectError('device.remove', { benchId, ground: 'fall' })).toMatchObject({
      code: 'sign-in-needed',
    });
    await expectOutput('session.sign-in', { badge: demo.user });
    expect(await expectError('device.register', sampleDevice('Q26C49006'))).toMatchObject({
      code: 'role-needed',
    });
    expect(
      await expectError('person.add', { name: 'Mara Quill', badge: 'HP10079', roles: ['user'] }),
    ).toMatchObject({ code: 'role-needed' });
    await expectOutput('device.remove', { benchId, ground: 'fall' });
  });

  test('a badge signs in one window and no other', async () => {
    const { callAs } = await demoStation();
    const other = await callAs('another window')('device.list', {});
    expect(other.ok ? 'listed' : other.error.code).toBe('sign-in-needed');
  });
});

describe('an empty station', () => {
  const setup = {
    name: 'Cold Ridge depot',
    timeZone: 'America/Denver',
    lengthUnit: 'ft' as const,
    administrator: { name: 'Mara Quill', badge: 'CR20011', pin: '602214' },
  };

  test('refuses everything until it is set up, then has one administrator and nothing else', async () => {
    const { expectOutput, expectError } = await testStation();
    expect(await expectOutput('station.status', {})).toEqual({ state: 'empty' });
    expect(await expectError('session.sign-in', { badge: 'CR20011' })).toMatchObject({
      code: 'station-not-set-up',
    });
    expect(await expectError('scan.interpret', { text: 'CR20011' })).toMatchObject({
      code: 'station-not-set-up',
    });
    expect(await expectError('station.setup', { ...setup, timeZone: 'Mars/Olympus' })).toMatchObject({
      code: 'time-zone-unknown',
      field: 'timeZone',
    });
    expect(
      await expectError('station.setup', {
        ...setup,
        administrator: { ...setup.administrator, pin: '111111' },
      }),
    ).toMatchObject({ code: 'pin-too-weak' });
    await expectOutput('station.setup', setup);
    expect(await expectOutput('station.status', {})).toMatchObject({
      state: 'ready',
      name: 'Cold Ridge depot',
      lengthUnit: 'ft',
      demo: false,
      person: { name: 'Mara Quill', maySign: false, pinSet: true },
      counts: { devices: 0 },
    });
    expect(await expectError('station.setup', setup)).toMatchObject({ code: 'station-already-set-up' });
    expect(await expectError('station.load-demo', {})).toMatchObject({ code: 'station-already-set-up' });
  });

  test('designates its inspectors and records its models, each with a sentence where something is wrong', async () => {
    const { expectOutput, expectError } = await testStation();
    await expectOutput('station.setup', setup);
    const { personId } = await expectOutput('person.add', {
      name: 'Jonas Veld',
      badge: 'CR20028',
      roles: ['inspector'],
    });
    const designation = {
      designatedBy: 'Mara Quill',
      designatedOn: '2026-03-01' as never,
      trainingValidUntil: '2028-03-01' as never,
    };
    expect(
      await expectError('person.add', { name: 'Ada Lorn', badge: 'CR20028', roles: ['user'] }),
    ).toMatchObject({ code: 'badge-taken' });
    expect(
      await expectError('person.designate', {
        personId,
        designation: { ...designation, designatedOn: '2026-03-11' as never },
      }),
    ).toMatchObject({ code: 'designation-in-future' });
    expect(
      await expectError('person.designate', {
        personId,
        designation: { ...designation, trainingValidUntil: '2026-02-01' as never },
      }),
    ).toMatchObject({ code: 'training-ends-before-designation' });
    await expectOutput('person.designate', { personId, designation });
    await expectOutput('person.set-pin', { personId, pin: '314159' });
    const { people } = await expectOutput('person.list', {});
    expect(people.find((person) => person.personId === personId)).toMatchObject({
      maySign: true,
      pinSet: true,
    });
    const modelSheet = {
      manufacturer: 'Norvane',
      model: 'Lode 2',
      ratedLengthM: 2 as never,
      lifelineMaterial: 'galvanised' as const,
      lifelineDiameterMm: 4.8 as never,
      capacityKg: { from: 59, to: 140 },
      standard: 'ANSI/ASSP Z359.14',
      loadIndicatorFitted: false,
    };
    await expectOutput('model-sheet.record', { modelSheet });
    expect(
      await expectError('model-sheet.record', { modelSheet: { ...modelSheet, model: 'LODE 2' } }),
    ).toMatchObject({ code: 'model-sheet-exists' });
    expect(
      await expectError('model-sheet.record', {
        modelSheet: { ...modelSheet, model: 'Lode 3', capacityKg: { from: 140, to: 59 } },
      }),
    ).toMatchObject({ code: 'capacity-range-reversed' });
  });
});

describe('the invented depot', () => {
  test('holds at least 40 devices of five models from 2 m to 30 m, ten people and two years of inspections', async () => {
    const { expectOutput } = await demoStation();
    const { devices, total } = await expectOutput('device.list', { limit: 500 });
    expect(total).toBeGreaterThanOrEqual(40);
    expect(new Set(devices.map(({ model }) => model)).size).toBe(5);
    expect(Math.min(...devices.map(({ ratedLengthM }) => ratedLengthM))).toBe(2);
    expect(Math.max(...devices.map(({ ratedLengthM }) => ratedLengthM))).toBe(30);
    expect((await expectOutput('person.list', {})).people).toHaveLength(10);
    const status = await expectOutput('station.status', {});
    const counts = status.state === 'ready' ? status.counts : undefined;
    expect(counts).toMatchObject({ devices: total, openInspections: 1 });
    for (const count of [counts!.overdue, counts!.dueSoon, counts!.held, counts!.neverInspected])
      expect(count).toBeGreaterThan(0);
    const cards = await Promise.all(devices.map(({ benchId }) => expectOutput('device.show', { benchId })));
    const days = cards
      .flatMap(({ device }) => device.inspections.map((inspection) => inspection.startedOn))
      .sort();
    expect(days[0]! < '2024-07-01').toBe(true);
    expect(await expectOutput('ledger.verify', {})).toMatchObject({ sound: true, faults: [] });
  });

  test('is searched by any words of a device, hyphens and case aside', async () => {
    const { expectOutput } = await demoStation();
    const { devices } = await expectOutput('device.list', { search: 'tessaline mastrun' });
    expect(devices.length).toBe(6);
    const one = devices[0]!;
    const found = await expectOutput('device.list', {
      search: `${one.benchId.slice(0, 5)}-${one.benchId.slice(5)}`.toLowerCase(),
    });
    expect(found.devices.map(({ benchId }) => benchId)).toEqual([one.benchId]);
    expect(await expectOutput('device.list', { search: "no such ' device %" })).toEqual({
      devices: [],
      total: 0,
    });
    const overdue = await expectOutput('device.list', { due: 'overdue' });
    expect(overdue.devices.map(({ dueState }) => dueState)).toEqual(overdue.devices.map(() => 'overdue'));
    expect(overdue.total).toBe(3);
  });
});

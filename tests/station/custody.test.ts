/** The desk through the contract: what goes out, what stays and why, what comes back and what becomes of it. */
import { describe, expect, test } from 'vitest';
import type { BenchId } from '../../src/domain/brand.ts';
import { calendarDate } from '../../src/domain/brand.ts';
import type { InputOf } from '../../src/station/contract.ts';
import { demo, demoStation } from '../support/station-fixture.ts';

const id = (text: string) => text as BenchId;
/** Of the invented depot, by `demo-data/fleet.json`. */
const ready = id('MM68GV91MM');
const alsoReady = id('AFZQ45HXXZ');
const stays = {
  'checkout-overdue': id('KY9RCDP2ES'),
  'checkout-tag-not-proved': id('GJQ81T5WX2'),
  'checkout-quarantined': id('2JTJ77J0NM'),
  'checkout-never-inspected': id('4R02SSYNB2'),
  'checkout-inspection-open': id('X9SCHYD3XD'),
} as const;

/** Nadia Solheim, a user; Bram Kestrin is the attendant at this window. */
const nadia = 'P006';
const preUse = { language: 'en' as const };
const no = (question: string) => ({ question, said: 'no' as const });
const allNo = [no('fall'), no('exposure'), no('questionable')];

const desk = async () => {
  const station = await demoStation();
  const { expectOutput } = station;
  await expectOutput('session.sign-in', { badge: demo.administrator });
  const added = { name: 'Mara Quill', badge: 'HP20010', roles: ['user' as const] };
  const { personId: mara } = await expectOutput('person.add', added);
  await expectOutput('session.sign-in', { badge: demo.attendant });
  const card = async (benchId: BenchId) => (await expectOutput('device.show', { benchId })).device;
  const checkOut = (benchIds: BenchId[], more: { expectedOn?: ReturnType<typeof calendarDate> } = {}) =>
    expectOutput('custody.check-out', { userId: nadia, benchIds, preUse, ...more });
  return { ...station, mara, card, checkOut };
};

describe('check-out', () => {
  test('names what stays, each with its own reason and way out, and lets the rest go', async () => {
    const { checkOut, card, expectOutput } = await desk();
    const countsNow = async () => {
      const status = await expectOutput('station.status', {});
      return status.state === 'ready' ? status.counts : undefined;
    };
    const before = await countsNow();
    const done = await checkOut([ready, ...Object.values(stays), alsoReady]);
    expect(done.checkedOut).toEqual([ready, alsoReady]);
    expect(done.refused.map(({ code, benchId }) => [code, benchId])).toEqual(Object.entries(stays));
    for (const { sentence } of done.refused) {
      expect(sentence.en).not.toContain('{{');
      expect(sentence.es).not.toBe(sentence.en);
    }
    expect(done.refused.find(({ code }) => code === 'checkout-quarantined')?.sentence.es).toContain(
      'Detuvo una caída. Tower 14',
    );
    expect(await card(ready)).toMatchObject({ heldBy: 'Nadia Solheim', custody: { userId: nadia } });
    expect(await expectOutput('custody.list', { userId: nadia })).toMatchObject({ total: 2 });
    const { out = 0, overdueReturns } = before ?? {};
    expect(await countsNow()).toMatchObject({ out: out + 2, overdueReturns });
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('takes no device whose inspection before use the user has not confirmed', async () => {
    const { expectOutput, card } = await desk();
    const done = await expectOutput('custody.check-out', { userId: nadia, benchIds: [ready] });
    expect(done).toMatchObject({ checkedOut: [], refused: [{ code: 'checkout-pre-use-needed' }] });
    expect((await card(ready)).custody).toBeUndefined();
  });

  test('gives nothing to people who are no users, and none to those who left', async () => {
    const { expectError, expectOutput, mara } = await desk();
    const to = (userId: string) => ({ userId, benchIds: [ready], preUse });
    expect(await expectError('custody.check-out', to('P002'))).toMatchObject({ code: 'checkout-not-a-user' });
    await expectOutput('session.sign-in', { badge: demo.administrator });
    await expectOutput('person.leave', { personId: mara, because: 'Moved' });
    await expectOutput('session.sign-in', { badge: demo.attendant });
    expect(await expectError('custody.check-out', to(mara))).toMatchObject({ code: 'person-has-left' });
    expect(await expectError('desk.user', { badge: 'HP20010' })).toMatchObject({ code: 'badge-of-leaver' });
  });

  test('remembers the language in which a user confirmed last', async () => {
    const { expectOutput, mara } = await desk();
    const whose = async (badge: string) => (await expectOutput('desk.user', { badge })).language;
    expect(await whose(demo.user)).toBeUndefined();
    const out = (language: 'en' | 'es') => ({ userId: nadia, benchIds: [ready], preUse: { language } });
    await expectOutput('custody.check-out', out('es'));
    expect(await whose(demo.user)).toBe('es');
    await expectOutput('custody.transfer', {
      benchId: ready,
      toUserId: mara,
      handedOverBy: nadia,
      preUse: { language: 'en' },
    });
    expect(await whose('HP20010')).toBe('en');
    expect(await whose(demo.user)).toBe('es');
  });

  test('is the attendant’s: a user or an inspector hands nothing out', async () => {
    const { expectError, expectOutput } = await desk();
    for (const badge of [demo.user, demo.inspector]) {
      await expectOutput('session.sign-in', { badge });
      const error = await expectError('custody.check-out', { userId: nadia, benchIds: [ready], preUse });
      expect(error.code).toBe('role-needed');
    }
  });

  test('does not go beyond the due date, nor into the past', async () => {
    const { checkOut, card } = await desk();
    const { dueOn } = await card(ready);
    const after = calendarDate(`${Number(dueOn?.slice(0, 4)) + 1}-01-01`);
    expect((await checkOut([ready], { expectedOn: after })).refused[0]?.code).toBe(
      'checkout-return-after-due',
    );
    const past = calendarDate('2026-03-09');
    expect((await checkOut([ready], { expectedOn: past })).refused[0]?.code).toBe('checkout-return-in-past');
    expect((await checkOut([ready], { expectedOn: dueOn! })).checkedOut).toEqual([ready]);
  });

  test('of one device at two windows: one wins, the other is told who has it', async () => {
    const { callAs, mara } = await desk();
    const [one, other] = [callAs('one'), callAs('other')];
    for (const call of [one, other]) await call('session.sign-in', { badge: demo.attendant });
    const results = await Promise.all([
      one('custody.check-out', { userId: nadia, benchIds: [ready], preUse }),
      other('custody.check-out', { userId: mara, benchIds: [ready], preUse }),
    ]);
    const outputs = results.map((result) => (result.ok ? result.output : undefined));
    expect(outputs.flatMap((output) => output?.checkedOut)).toEqual([ready]);
    const [refused] = outputs.flatMap((output) => output?.refused ?? []);
    expect(refused?.code).toBe('checkout-already-out');
    expect(refused?.sentence.en).toMatch(/Nadia Solheim|Mara Quill/);
  });
});

describe('check-in', () => {
  test('wants every question answered, and brings a sound device back to store', async () => {
    const { checkOut, card, expectError, expectOutput } = await desk();
    await checkOut([ready]);
    for (const answers of [[], allNo.slice(1), [...allNo, no('fall')]]) {
      const error = await expectError('custody.check-in', { benchId: ready, answers });
      expect(error.code).toBe('check-in-question-open');
    }
    expect((await card(ready)).custody).toBeDefined();
    const back = await expectOutput('custody.check-in', {
      benchId: ready,
      answers: allNo,
      answeredBy: nadia,
    });
    expect(back).toMatchObject({ held: false, reasons: [] });
    const { custody, standing } = await card(ready);
    expect({ custody, standing }).toEqual({ standing: 'in service' });
    const { spells } = await expectOutput('custody.history', { userId: nadia });
    expect(spells).toMatchObject([{ benchId: ready, ended: { how: 'checked in', by: 'Bram Kestrin' } }]);
    expect((await expectOutput('custody.history', { benchId: ready })).spells).toEqual(spells);
  });

  test('holds the device at once for any yes, with the words used, and for what nobody knows', async () => {
    const { checkOut, card, expectOutput } = await desk();
    await checkOut([ready, alsoReady]);
    const note = 'Down the shaft of tower 9.';
    const dropped = { question: 'exposure', said: 'yes' as const, choices: ['drop', 'soaking'], note };
    const back = await expectOutput('custody.check-in', {
      benchId: ready,
      answers: [no('fall'), dropped, no('questionable')],
    });
    expect(back.held).toBe(true);
    expect(back.reasons.map(({ sentence }) => sentence.en)).toEqual([`Was soaked. ${note}`, 'Was dropped.']);
    const held = await card(ready);
    expect(held).toMatchObject({ standing: 'quarantined', currentTag: { kind: 'quarantine' } });
    expect(held.custody).toBeUndefined();
    const doubted = await expectOutput('custody.check-in', {
      benchId: alsoReady,
      answers: [{ question: 'fall', said: 'not known' }, no('exposure'), no('questionable')],
    });
    expect(doubted.held).toBe(true);
    expect((await checkOut([ready, alsoReady])).refused.map(({ code }) => code)).toEqual([
      'checkout-quarantined',
      'checkout-quarantined',
    ]);
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('holds the device with the first yes, before it is said what it was, and asks the rest of whoever goes on', async () => {
    const { checkOut, card, expectError, expectOutput } = await desk();
    await checkOut([ready]);
    const tag = (await card(ready)).currentTag?.tagNumber ?? 0;
    const answer = (...answers: InputOf<'custody.check-in'>['answers']) => ({ benchId: ready, answers });
    const fallen = { question: 'fall', said: 'yes' as const, choices: [] };
    expect(await expectOutput('custody.check-in', answer(fallen))).toMatchObject({
      held: true,
      quarantineTag: tag + 1,
      open: { unanswered: ['exposure', 'questionable'], unexplained: ['fall'] },
    });
    const held = await card(ready);
    expect(held).toMatchObject({
      standing: 'quarantined',
      currentTag: { kind: 'quarantine', tagNumber: tag + 1 },
    });
    expect(held.custody).toBeUndefined();
    expect(held.reasons.map(({ sentence }) => sentence.en)).toEqual(['Stopped a fall or took an impact.']);

    const explained = { ...fallen, choices: ['fall'], note: 'Tower 9.' };
    expect(await expectOutput('custody.check-in', answer(explained, no('exposure')))).toMatchObject({
      quarantineTag: tag + 2,
      open: { unanswered: ['questionable'], unexplained: [] },
      heldFor: [{ sentence: { en: 'Arrested a fall. Tower 9.' } }],
    });
    expect(await expectError('custody.check-in', answer(no('fall')))).toMatchObject({
      code: 'check-in-answered-already',
    });
    const last = await expectOutput('custody.check-in', answer(no('questionable')));
    expect(last).toMatchObject({ held: true, reasons: [] });
    expect(last.open).toBeUndefined();
    expect((await card(ready)).openCheckIn).toBeUndefined();
    expect((await card(ready)).reasons).toHaveLength(1);
    expect(await expectError('custody.check-in', answer(no('questionable')))).toMatchObject({
      code: 'check-in-not-out',
    });
    expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
  });

  test('of one device at two windows: whoever says no after it was held is told, and a doubt counts wherever it is said', async () => {
    const { callAs, checkOut, card } = await desk();
    await checkOut([ready]);
    const [one, other] = [callAs('one'), callAs('other')];
    for (const call of [one, other]) await call('session.sign-in', { badge: demo.attendant });
    const unknown = (question: string) => ({ question, said: 'not known' as const });
    const first = await one('custody.check-in', {
      benchId: ready,
      answers: [no('fall'), unknown('exposure')],
    });
    expect(first.ok && first.output.open).toEqual({ unanswered: ['questionable'], unexplained: [] });
    const late = await other('custody.check-in', { benchId: ready, answers: [no('fall'), no('exposure')] });
    expect(late.ok ? late.output : late.error.code).toBe('check-in-answered-already');
    const doubt = await other('custody.check-in', { benchId: ready, answers: [unknown('fall')] });
    expect(doubt.ok && doubt.output.heldFor).toHaveLength(2);
    const { reasons } = await card(ready);
    expect(reasons.map(({ key }) => key)).toEqual(['check-in.exposure.not-known', 'check-in.fall.not-known']);
  });

  test('of a device that was never checked out is said to be one, and asks the same', async () => {
    const { expectError, expectOutput } = await desk();
    const input = { benchId: ready, answers: allNo };
    expect(await expectError('custody.check-in', input)).toMatchObject({ code: 'check-in-not-out' });
    const found = { ...input, withoutCheckOut: true };
    expect(await expectOutput('custody.check-in', found)).toMatchObject({ held: false });
    const open = { benchId: ready, answers: allNo.slice(1), withoutCheckOut: true };
    expect(await expectError('custody.check-in', open)).toMatchObject({ code: 'check-in-question-open' });
  });
});

test('a device that is out is not inspected before it came back, and inspected as ever once it did', async () => {
  const { checkOut, card, expectError, expectOutput } = await desk();
  await checkOut([ready]);
  expect(await card(ready)).toMatchObject({ nextAction: 'check in first' });
  await expectOutput('session.sign-in', { badge: demo.inspector });
  const error = await expectError('inspection.start', { benchId: ready });
  expect(error).toMatchObject({ code: 'inspection-device-out' });
  expect(error.sentence).toContain('Check it in first');
  await expectOutput('custody.check-in', { benchId: ready, answers: allNo });
  await expectOutput('inspection.start', { benchId: ready });
});

describe('between users', () => {
  test('a device passes by both badges, or with the attendant’s reason, and is confirmed anew', async () => {
    const { checkOut, card, expectError, expectOutput, mara } = await desk();
    await checkOut([ready, alsoReady]);
    const over = { benchId: ready, toUserId: mara };
    expect(await expectError('custody.transfer', { ...over, preUse })).toMatchObject({
      code: 'transfer-reason-needed',
    });
    const byBadges = { ...over, handedOverBy: nadia };
    expect(await expectError('custody.transfer', byBadges)).toMatchObject({
      code: 'checkout-pre-use-needed',
    });
    await expectOutput('custody.transfer', { ...byBadges, preUse });
    expect(await card(ready)).toMatchObject({ heldBy: 'Mara Quill' });
    const because = 'Nadia handed it over on site and went home.';
    await expectOutput('custody.transfer', { benchId: alsoReady, toUserId: mara, because, preUse });
    const { spells } = await expectOutput('custody.history', { benchId: ready });
    expect(spells.map(({ user, ended }) => [user, ended?.how])).toEqual([
      ['Mara Quill', undefined],
      ['Nadia Solheim', 'transferred'],
    ]);
    const again = { benchId: ready, toUserId: mara, handedOverBy: mara, preUse };
    expect(await expectError('custody.transfer', again)).toMatchObject({ code: 'transfer-to-same' });
  });

  test('a device that was taken out of service while it was out is handed over to nobody', async () => {
    const { checkOut, expectError, expectOutput, mara } = await desk();
    await checkOut([ready]);
    await expectOutput('device.remove', { benchId: ready, ground: 'fall' });
    const over = { benchId: ready, toUserId: mara, handedOverBy: nadia, preUse };
    expect(await expectError('custody.transfer', over)).toMatchObject({ code: 'checkout-quarantined' });
  });
});

test('a device that is not back in time is listed, and one that never comes is written off, out of service', async () => {
  const { checkOut, card, clock, expectOutput, expectError } = await desk();
  await checkOut([ready, alsoReady], { expectedOn: calendarDate('2026-03-10') });
  expect(await expectOutput('custody.list', { overdue: true, userId: nadia })).toMatchObject({ total: 0 });
  clock.advance({ days: 1 });
  const late = await expectOutput('custody.list', { overdue: true, userId: nadia });
  expect(late.out.map(({ overdue, user }) => [overdue, user])).toEqual([
    [true, 'Nadia Solheim'],
    [true, 'Nadia Solheim'],
  ]);
  await expectOutput('custody.write-off', { benchId: ready, because: 'Site closed' });
  expect(await expectOutput('custody.list', { overdue: true, userId: nadia })).toMatchObject({ total: 1 });
  const lost = await card(ready);
  expect(lost.standing).toBe('quarantined');
  expect(lost.reasons[0]?.sentence.en).toContain('Nadia Solheim');
  expect(await expectError('custody.write-off', { benchId: ready, because: 'Again' })).toMatchObject({
    code: 'lost-already',
  });
  await expectOutput('custody.check-in', { benchId: ready, answers: allNo });
  expect(await card(ready)).toMatchObject({ standing: 'quarantined' });
  expect((await card(ready)).custody).toBeUndefined();
});

test('a kit is told by its name and code, and holds devices of the register', async () => {
  const { expectOutput, expectError } = await desk();
  const kit = { name: 'Roof crew', code: 'RC1', benchIds: [ready, alsoReady, ready] };
  const { kitId } = await expectOutput('kit.save', kit);
  const { kits } = await expectOutput('kit.list', {});
  expect(kits.find((each) => each.kitId === kitId)?.devices.map(({ benchId }) => benchId)).toEqual([
    ready,
    alsoReady,
  ]);
  expect(await expectError('kit.save', { ...kit, code: 'RC2', name: 'roof CREW' })).toMatchObject({
    code: 'kit-name-taken',
  });
  expect(await expectError('kit.save', { ...kit, name: 'Other' })).toMatchObject({ code: 'kit-code-taken' });
  expect(await expectError('count.finish', { place: 'RC1', scanned: [] })).toMatchObject({
    code: 'count-place-is-kit',
  });
  await expectOutput('device.store', { benchId: ready, place: 'A1' });
  expect(await expectError('kit.save', { ...kit, name: 'Other', code: 'A1' })).toMatchObject({
    code: 'kit-code-is-place',
  });
  await expectOutput('kit.remove', { kitId });
  expect(await expectError('kit.remove', { kitId })).toMatchObject({ code: 'kit-unknown' });
});

test('a count says what was found, is missing, lies wrong, is recorded out or unknown, and gives what had no place one', async () => {
  const { checkOut, card, expectOutput } = await desk();
  const [third, fourth, fifth] = [id('9NS2Z7MXM4'), id('5D30J4PX2V'), id('9YBVW31JDD')];
  for (const benchId of [ready, third]) await expectOutput('device.store', { benchId, place: 'A1' });
  await expectOutput('device.store', { benchId: fourth, place: 'B2' });
  await checkOut([alsoReady]);
  const count = { place: 'A1', scanned: [ready, fourth, fifth, alsoReady, ready], unknown: ['X-1'] };
  const expected = {
    place: 'A1',
    found: [ready, fifth],
    missing: [third],
    wrongPlace: [{ benchId: fourth, place: 'B2' }],
    recordedOut: [alsoReady],
    unknown: ['X-1'],
  };
  expect((await expectOutput('count.preview', count)).result).toEqual(expected);
  expect((await expectOutput('count.finish', { ...count, keepHere: [fourth] })).result).toEqual(expected);
  expect((await card(fifth)).stored).toMatchObject({ place: 'A1' });
  expect((await card(fourth)).stored).toMatchObject({ place: 'A1' });
  expect((await card(alsoReady)).stored).toBeUndefined();
  const { places } = await expectOutput('count.places', {});
  expect(places.find(({ place }) => place === 'A1')).toMatchObject({
    devices: 4,
    counted: { found: 2, missing: 1 },
  });
  expect((await expectOutput('ledger.verify', {})).sound).toBe(true);
});

test('the record grows with every change and with no look at it', async () => {
  const { checkOut, expectOutput } = await desk();
  const before = (await expectOutput('record.size', {})).events;
  await expectOutput('custody.check', { benchId: ready, userId: nadia });
  expect((await expectOutput('record.size', {})).events).toBe(before);
  await checkOut([ready, alsoReady]);
  expect((await expectOutput('record.size', {})).events).toBe(before + 2);
});

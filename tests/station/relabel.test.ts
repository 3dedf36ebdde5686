/** A label of ours once more, and the request to the manufacturer where the marking is lost. */
import { describe, expect, test } from 'vitest';
import { metres } from '../../src/domain/brand.ts';
import { type MarkingElement, type MarkingState, markingElements } from '../../src/domain/marking.ts';
import { demo } from '../support/station-fixture.ts';
import { stationWithDevice } from './sample-device.ts';

const serial = 'Q26C49001';
const reading = (lost: Partial<Record<MarkingElement, MarkingState>> = {}, read = serial) =>
  markingElements.map((element) => {
    const state = lost[element] ?? 'legible';
    return state === 'legible' && element === 'serialNumber'
      ? { element, state, text: read }
      : { element, state };
  });
const because = 'lost' as const;

describe('a label of ours once more', () => {
  test('may be printed where every element of the marking was read just now, and is counted', async () => {
    const { expectOutput, benchId, card } = await stationWithDevice(serial);
    expect(
      await expectOutput('device.relabel', { benchId, marking: reading(), reprintBecause: because }),
    ).toEqual({ outcome: 'may be printed' });
    await expectOutput('device.relabel', { benchId, marking: reading(), reprintBecause: 'damaged' });
    expect(await card()).toMatchObject({ standing: 'new', labelsReprinted: 2 });
  });

  test('is not printed over a lost element: the device is removed at once for each, and asked for of its manufacturer', async () => {
    const { expectOutput, benchId, card } = await stationWithDevice(serial);
    const result = await expectOutput('device.relabel', {
      benchId,
      marking: reading({ capacityRange: 'illegible', warnings: 'missing' }),
      reprintBecause: because,
    });
    expect(result.outcome).toBe('removed');
    const device = await card();
    expect(device).toMatchObject({
      standing: 'quarantined',
      labelsReprinted: 0,
      currentTag: { kind: 'quarantine' },
    });
    expect(device.reasons.map(({ key }) => key)).toEqual([
      'marking.capacityRange.illegible',
      'marking.warnings.missing',
    ]);
    const { requests } = await expectOutput('marking-request.list', {});
    const asked = requests
      .find(({ manufacturer }) => manufacturer === 'Quillmoor')
      ?.devices.find((each) => each.benchId === benchId);
    expect(asked).toMatchObject({ serial, presumed: false, elements: ['capacityRange', 'warnings'] });
  });

  test.each([
    ['not every element is answered', reading().slice(1), 'marking-incomplete'],
    ['an element is answered twice', [...reading(), reading()[0]!], 'marking-incomplete'],
    ['the serial number was not typed', reading({}, ''), 'serial-needed'],
    ['the serial number is another', reading({}, 'Q26C49007'), 'serial-differs'],
    [
      'the serial number is another, whatever else is lost',
      reading({ warnings: 'missing' }, 'Q26C49007'),
      'serial-differs',
    ],
  ])('is refused where %s, and nothing changes', async (_why, marking, code) => {
    const { expectError, benchId, card } = await stationWithDevice(serial);
    const before = await card();
    expect((await expectError('device.relabel', { benchId, marking, reprintBecause: because })).code).toBe(
      code,
    );
    expect(await card()).toEqual(before);
  });

  test('is for people of the depot, not for a user', async () => {
    const { expectOutput, expectError, benchId } = await stationWithDevice(serial);
    await expectOutput('session.sign-in', { badge: demo.user });
    const error = await expectError('device.relabel', {
      benchId,
      marking: reading(),
      reprintBecause: because,
    });
    expect(error.code).toBe('role-needed');
  });

  test('is not printed while the identity is presumed, until a competent person reads the whole marking', async () => {
    const { expectOutput, expectError, benchId, card } = await stationWithDevice(serial);
    const { identityCase } = await expectOutput('identity.open', {
      observation: { serial: 'Q26C4900?', lengthM: metres(15.24) },
    });
    await expectOutput('identity.propose', { identityCase, candidate: benchId, pin: demo.pin });
    await expectOutput('session.sign-in', { badge: demo.attendant });
    await expectOutput('identity.confirm', {
      identityCase,
      candidate: benchId,
      lookedAtDevice: true,
      pin: demo.pin,
    });
    expect((await expectError('tag.issue', { benchId, kind: 'id' })).code).toBe('identity-presumed-no-label');
    const { requests } = await expectOutput('marking-request.list', {});
    const asked = requests.flatMap(({ devices }) => devices).find((each) => each.benchId === benchId);
    expect(asked).toMatchObject({ presumed: true, elements: [...markingElements] });
    const read = { benchId, marking: reading(), reprintBecause: because };
    expect((await expectError('device.relabel', read)).code).toBe('identity-competent-person-needed');
    await expectOutput('session.sign-in', { badge: demo.inspector });
    await expectOutput('device.relabel', read);
    const device = await card();
    expect(device.presumedIdentity).toBeUndefined();
    // Knowing again who it is does not bring it back: its reasons stand until there is evidence for its return.
    expect(device.standing).toBe('quarantined');
    await expectOutput('tag.issue', { benchId, kind: 'id' });
  });
});

/** Each reason to keep a device at the desk by its own code, and scrapped is final. */
import { expect, test } from 'vitest';
import { calendarDate, instant } from '../../src/domain/brand.ts';
import type { Device } from '../../src/domain/device.ts';
import { World } from './invariants-world.ts';

const passed = (): World => {
  const world = new World(1);
  world.start(0);
  world.answerAll(0, 'inspector', undefined, undefined);
  world.sign(0, 'inspector');
  world.prove(0, 1);
  return world;
};

const recall: Device['reasons'] = [
  {
    key: 'removal.recall',
    zone: 'whole-device',
    effect: 'remove',
    sentence: { en: 'Recalled.', es: 'Retirado.' },
  },
];
const presumedIdentity = { identityCase: 1, proposedBy: 'a', confirmedBy: 'b', on: '2026-01-10' } as never;
const since = { on: calendarDate('2026-01-10'), at: instant('2026-01-10T08:00:00.000Z') };
const marking = [{ element: 'serialNumber', state: 'illegible' }] as Device['marking'];

test.each<[string, Partial<Device>]>([
  ['checkout-scrapped', { standing: 'scrapped' }],
  ['checkout-at-manufacturer', { standing: 'at manufacturer' }],
  ['checkout-recalled', { standing: 'quarantined', reasons: recall }],
  ['checkout-quarantined-unexplained', { standing: 'quarantined' }],
  ['checkout-never-inspected', { standing: 'new' }],
  ['checkout-identity-presumed', { presumedIdentity }],
  ['checkout-marking-not-intact', { marking }],
  ['checkout-inspection-open', { openInspection: 2 }],
])('%s keeps a device at the desk', (code, state) => {
  const world = passed();
  world.force(0, state);
  expect(world.checkOut(0, 'nadia', true, 0).refused).toBe(code);
});

test('a device that passed and whose tag was scanned on it goes out', () => {
  expect(passed().checkOut(0, 'nadia', true, 0).refused).toBeUndefined();
});

test('a scrapped device stays scrapped whatever is done with it', () => {
  const world = passed();
  world.checkOut(0, 'nadia', true, 0);
  world.force(0, { standing: 'scrapped' });
  world.remove(0);
  world.start(0);
  world.transfer(0, 'mara', true, 'Random.');
  world.lose(0);
  world.checkIn(
    0,
    [
      { question: 'fall', said: 'yes', choices: ['fall'] },
      { question: 'exposure', said: 'no' },
      { question: 'questionable', said: 'no' },
    ],
    false,
  );
  expect(world.device(0).standing).toBe('scrapped');
  expect(world.device(0).custody).toBeUndefined();
});

test.each<[string, Partial<Device>]>([
  ['inspection-device-out', { custody: { spell: 3, userId: 'nadia', since, handedOutBy: 'mara' } }],
  ['inspection-check-in-open', { openCheckIn: { unanswered: ['fall'], unexplained: [] } }],
])('%s: no inspection of it is begun, and one that was begun before never passes', (code, state) => {
  const world = passed();
  world.force(0, state);
  expect(world.start(0).refused).toBe(code);
  const walked = passed();
  walked.start(0);
  walked.answerAll(0, 'inspector', undefined, undefined);
  walked.force(0, state);
  expect(walked.sign(0, 'inspector').refused).toBe(code);
});

test('a device that is recorded out is taken out of service by an inspection that was begun before', () => {
  const world = passed();
  world.start(0);
  world.answerAll(0, 'inspector', 'lower-hook.body', undefined);
  world.force(0, { custody: { spell: 3, userId: 'nadia', since, handedOutBy: 'mara' } });
  expect(world.sign(0, 'inspector').refused).toBeUndefined();
  expect(world.device(0).standing).toBe('quarantined');
});

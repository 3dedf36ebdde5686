/** Each reason to keep a device at the desk by its own code, and scrapped is final. */
import { expect, test } from 'vitest';
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

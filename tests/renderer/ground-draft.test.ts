/** The employer's own grounds for taking a device out of service, beside the trade's. */
import { expect, test } from 'vitest';
import { groundsOf, ownGround } from '../../renderer/screens/program/ground-draft.ts';
import type { RemovalGround } from '../../src/domain/program.ts';

const ground = (key: string, label = key): RemovalGround => ({
  key,
  zone: 'history',
  label: { en: label, es: label },
  reason: { en: `${label}.`, es: `${label}.` },
  noteNeeded: false,
});

test('a program from before a ground of the trade was shipped gets it, in its place, and keeps its own after them', () => {
  const trade = [ground('fall'), ground('recall'), ground('other')];
  const own = ground('own-flood');
  expect(groundsOf([ground('fall'), own, ground('other')], trade)).toEqual([...trade, own]);
});

test('what a program says of a ground of the trade stays as it says it', () => {
  const ours = ground('fall', 'It caught somebody');
  expect(groundsOf([ours], [ground('fall')])).toEqual([ours]);
});

test('an own ground is said as it was written, with room for a note where one is needed', () => {
  expect(ownGround(' Stood in flood water. ', false, [])).toEqual({
    key: 'own-stood-in-flood-water',
    zone: 'whole-device',
    label: { en: 'Stood in flood water', es: 'Stood in flood water' },
    reason: { en: 'Stood in flood water.', es: 'Stood in flood water.' },
    noteNeeded: false,
  });
  expect(ownGround('Borrowed by another site', true, []).reason.en).toBe('Borrowed by another site:');
});

test('two own grounds never share a key, whatever they are written in', () => {
  const first = ownGround('Inundación', false, []);
  expect(first.key).toBe('own-inundacion');
  expect(ownGround('inundacion!', false, [first]).key).toBe('own-inundacion-2');
  expect(ownGround('浸水', false, []).key).toBe('own-ground');
});

/** What a quarantine tag asks for: the evidence of all reasons together, each piece once. */
import { expect, test } from 'vitest';
import { askedBeforeReturn, shortWords } from '../../../src/domain/held/asked-before-return.ts';
import { program, releaseRules } from '../../support/shipped-rules.ts';
import { reasonOf } from './held-device.ts';

const asked = (
  keys: readonly string[],
  release?: Parameters<typeof askedBeforeReturn>[1]['program']['release'],
) =>
  askedBeforeReturn(keys.map(reasonOf), {
    rules: releaseRules,
    program: { ...program, ...(release === undefined ? {} : { release }) },
  }).map(({ reasons, kinds }) => [reasons, kinds.map(({ key }) => key)]);

test('each piece of evidence is asked for once, with the reasons that ask for it, in their order', () => {
  expect(
    asked([
      'marking.serialNumber.missing',
      'lifeline.wires.broken-wires',
      'removal.fall',
      'marking.model.illegible',
      'brake.midway.slips',
    ]),
  ).toEqual([
    [[1, 4], ['re-marking']],
    [[2, 5], ['repair-certificate']],
    [[3], ['investigation']],
    [[3], ['manufacturer-word', 'repair-certificate']],
  ]);
});

test('a reason that asks for nothing of its own adds nothing, and the program’s stricter rule is the one asked for', () => {
  expect(asked(['release.evidence-withdrawn'])).toEqual([]);
  expect(
    asked(
      ['removal.recall', 'release.inspection-broken-off'],
      [{ for: 'recall', needs: [['recall-instruction'], ['manufacturer-word']] }],
    ),
  ).toEqual([
    [[1], ['recall-instruction']],
    [[1], ['manufacturer-word']],
  ]);
});

test('evidence that cannot exist is said by what to do instead', () => {
  const [piece] = askedBeforeReturn([reasonOf('manufacturer.condemned')], { rules: releaseRules, program });
  expect(piece!.kinds.map(shortWords)).toEqual([
    {
      en: 'Nothing brings it back: the manufacturer condemned it. Scrap it.',
      es: 'Nada lo devuelve al servicio: el fabricante lo condenó. Deséchelo.',
    },
  ]);
});

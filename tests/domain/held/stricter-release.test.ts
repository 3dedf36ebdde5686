/** What a program asks for before a return: more than the product does, and never less. */
import { describe, expect, test } from 'vitest';
import { programFault } from '../../../src/domain/decide/program.ts';
import { needsOf, personsOf, type StrictRelease } from '../../../src/domain/held/release-rules.ts';
import { program, releaseRules } from '../../support/shipped-rules.ts';
import { competent, HeldDevice } from './held-device.ts';

describe('a program', () => {
  const settings = (release: StrictRelease[]) => ({ ...program, release });

  test('may ask for more before a return than the product does', () => {
    for (const needs of [
      [['investigation'], ['repair-certificate']],
      [['investigation'], ['manufacturer-word'], ['repair-certificate']],
    ])
      expect(programFault(settings([{ for: 'fall', needs }]), program, releaseRules)).toBeUndefined();
  });

  test.each([
    ['fall', [['manufacturer-word']]],
    ['fall', [['investigation', 'manufacturer-word'], ['repair-certificate']]],
    ['fall', []],
    ['removal.fall', [['investigation']]],
    ['marking', [['re-marking', 'doubt-settled']]],
    ['removal.a-ground-of-ours', [['doubt-settled']]],
    ['condemned', [['repair-certificate']]],
  ])('that asks for less at %s is refused', (of, needs) => {
    expect(programFault(settings([{ for: of, needs }]), program, releaseRules)).toMatchObject({
      code: 'program-release-weaker',
    });
  });

  test.each([
    [[{ for: 'falls', needs: [['investigation']] }], 'program-release-rule-unknown'],
    [
      [
        { for: 'doubt', needs: [['repair-certificate']] },
        { for: 'doubt', needs: [['doubt-settled']] },
      ],
      'program-release-twice',
    ],
    [[{ for: 'doubt', needs: [['doubt-settled']], persons: 1 }], 'program-release-persons'],
  ])('that names no rule, one twice, or one person alone is refused', (release, code) => {
    expect(programFault(settings(release), program, releaseRules)).toMatchObject({ code });
  });

  test('that speaks of a reason and of its rule asks for both', () => {
    const strict: readonly StrictRelease[] = [
      { for: 'parts', needs: [['repair-certificate'], ['doubt-settled']] },
      { for: 'housing.body.crack', needs: [['repair-certificate'], ['manufacturer-word']], persons: 4 },
    ];
    expect(needsOf(releaseRules, strict, 'housing.body.crack')).toEqual([
      ['repair-certificate'],
      ['doubt-settled'],
      ['manufacturer-word'],
    ]);
    expect(personsOf(releaseRules, strict, 'housing.body.crack')).toBe(4);
    expect(personsOf(releaseRules, strict, 'housing.body.dent')).toBe(2);
  });

  test('may ask for more persons behind a statement, and each of them looks and agrees by themselves', () => {
    const held = new HeldDevice(
      ['overall.doubt.yes'],
      [{ for: 'doubt', needs: [['doubt-settled']], persons: 3 }],
    );
    const statement = { kind: 'doubt-settled', covers: [1], documents: [], statement: 'Only dust.' };
    expect(held.record(statement)).toBeUndefined();
    const [{ evidence } = { evidence: 0 }] = held.device.evidence ?? [];
    expect(held.release()).toMatchObject({ code: 'release-evidence-unconfirmed', values: { persons: 2 } });
    expect(held.confirm(evidence)).toBeUndefined();
    expect(held.release()).toMatchObject({ code: 'release-evidence-unconfirmed', values: { persons: 1 } });
    expect(held.confirm(evidence)).toMatchObject({ code: 'evidence-agreed-already' });
    expect(held.confirm(evidence, competent('vera'))).toBeUndefined();
    expect(held.confirm(evidence, competent('nils'))).toMatchObject({ code: 'evidence-needs-no-second' });
    expect(held.release()).toBeUndefined();
  });
});

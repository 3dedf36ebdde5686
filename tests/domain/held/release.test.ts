/** The way back from removal: for every reason there is, what must exist first, and that nothing less will do. */
import { describe, expect, test } from 'vitest';
import { calendarDate } from '../../../src/domain/brand.ts';
import { decideCloseFallCase, decideOpenFallCase } from '../../../src/domain/decide/held/fall-case.ts';
import { evolveCaseFile } from '../../../src/domain/evolve-case-file.ts';
import type { CaseFile } from '../../../src/domain/held/case-file.ts';
import type { FallCase } from '../../../src/domain/held/fall-case.ts';
import { type EvidenceKind, needsOf, ruleOf } from '../../../src/domain/held/release-rules.ts';
import type { Refusal } from '../../../src/domain/refusal.ts';
import { sentenceOf } from '../../../src/station/sentence.ts';
import { releaseRules } from '../../support/shipped-rules.ts';
import { everyReason, reasonsNamedInSource } from './every-reason.ts';
import { attendant, benchId, certificate, competent, document, HeldDevice, today } from './held-device.ts';

/** By hand, from the trade: what each of these asks for. */
const byHand: readonly (readonly [string, readonly (readonly string[])[]])[] = [
  ['marking.serialNumber.missing', [['re-marking']]],
  ['removal.marking', [['re-marking']]],
  ['lifeline.wires.broken-wires', [['repair-certificate']]],
  ['upper-hook.body.corrosion', [['repair-certificate']]],
  ['brake.midway.slips', [['repair-certificate']]],
  ['history.fall-or-impact.fall', [['investigation'], ['manufacturer-word', 'repair-certificate']]],
  ['removal.fall', [['investigation'], ['manufacturer-word', 'repair-certificate']]],
  ['check-in.fall.impact', [['investigation'], ['manufacturer-word', 'repair-certificate']]],
  ['check-in.fall.not-known', [['investigation'], ['manufacturer-word', 'repair-certificate']]],
  ['indicator.load.deployed', [['investigation'], ['repair-certificate']]],
  ['removal.recall', [['recall-instruction']]],
  ['identity.presumed', [['re-marking'], ['identity-settled']]],
  ['program.revalidation-overdue', [['revalidation']]],
  ['manufacturer.condemned', [['no-return']]],
  ['removal.a-ground-of-the-employer', [['repair-certificate']]],
];

const kindOf = (key: string): EvidenceKind => releaseRules.kinds.find((kind) => kind.key === key)!;

/** Brings one piece of evidence about, as a person would; whatever the rules ask of it besides is done too. */
const provide = (held: HeldDevice, kind: EvidenceKind): Refusal | undefined => {
  switch (kind.how) {
    case 'never':
      return undefined;
    case 'certificate':
      return held.record({ kind: kind.key, covers: [1], documents: [document], certificate });
    case 'statement': {
      const refused = held.record({
        kind: kind.key,
        covers: [1],
        documents: [],
        statement: 'Looked at: sound.',
      });
      return refused ?? held.confirm(held.device.evidence!.at(-1)!.evidence);
    }
    case 'fall case':
      return closeFallCase(held);
  }
};

const facts = {
  happenedOn: today,
  userId: 'nadia',
  job: 'Gantry 4',
  indicator: 'deployed' as const,
  informed: 'Head of depot',
  bagNumber: 'B-17',
};

const closeFallCase = (held: HeldDevice): Refusal | undefined => {
  const occasion = { at: '2026-03-10T08:00:00.000Z' as never, on: today, by: 'dora' };
  const opened = decideOpenFallCase(held.device, { fallCase: 1, facts, linked: [] }, occasion);
  const refused = held.take(opened, 'dora');
  if (refused !== undefined) return refused;
  return held.take(decideCloseFallCase(caseOf(held), 'A slip.', competent('sol'), occasion), 'sol');
};

const caseOf = (held: HeldDevice): FallCase =>
  held.events.reduce<CaseFile | undefined>(evolveCaseFile, undefined) as FallCase;

/** The sentence that a person reads, in either language, says what is missing. */
const expectNamed = (refused: Refusal, { missing }: EvidenceKind): void => {
  expect(sentenceOf(refused, 'en')).toContain(missing.en);
  expect(sentenceOf(refused, 'es')).toContain(missing.es);
};

/** Every way to choose one of each group. */
const choices = (needs: readonly (readonly string[])[]): readonly (readonly string[])[] =>
  needs.reduce<readonly (readonly string[])[]>(
    (chosen, group) => chosen.flatMap((before) => group.map((key) => [...before, key])),
    [[]],
  );

describe('the release rules', () => {
  test('name every reason of the shipped procedures, of the desk and of the rules themselves', () => {
    const unnamed = everyReason.filter((key) => ruleOf(releaseRules, key)?.key === 'otherwise');
    expect(unnamed).toEqual([]);
    expect(everyReason.length).toBeGreaterThan(100);
    expect(reasonsNamedInSource()).toContain('custody.lost');
    expect(reasonsNamedInSource().filter((key) => !everyReason.includes(key))).toEqual([]);
  });

  test.each(byHand)('ask for %s what the trade asks for', (key, needs) => {
    expect(needsOf(releaseRules, undefined, key)).toEqual(needs);
  });

  test.each(everyReason)('lead from removal to return for %s, and nowhere with a piece left out', (key) => {
    const needs = needsOf(releaseRules, undefined, key);
    for (const chosen of choices(needs)) {
      const isNever = chosen.some((each) => kindOf(each).how === 'never');
      for (const leftOut of [undefined, ...chosen]) {
        const held = new HeldDevice([key]);
        expect(held.start()).toMatchObject({ code: 'device-out-of-service' });
        for (const each of chosen) if (each !== leftOut) expect(provide(held, kindOf(each))).toBeUndefined();
        const refused = held.release();
        if (leftOut === undefined && !isNever) {
          expect(refused).toBeUndefined();
          expect(held.start()).toBeUndefined();
          expect(held.device.standing).toBe('quarantined');
          expect(held.sign()).toBeUndefined();
          expect(held.device).toMatchObject({
            standing: 'in service',
            reasons: [],
            closedReasons: [{ key }],
            currentTag: { kind: 'status' },
          });
          continue;
        }
        expect(refused).toMatchObject({ code: 'release-evidence-missing' });
        expectNamed(refused!, kindOf(leftOut ?? 'no-return'));
        expect(held.start()).toMatchObject({ code: 'device-out-of-service' });
        expect(held.device.standing).toBe('quarantined');
      }
    }
  });
});

/** One piece as somebody leaves it who does not finish it; the refusal is of whoever goes on all the same. */
const halves: readonly (readonly [
  string,
  EvidenceKind['how'],
  (held: HeldDevice, kind: EvidenceKind) => void,
])[] = [
  [
    'its document',
    'certificate',
    (held, { key: kind }) => {
      expect(held.record({ kind, covers: [1], documents: [], certificate })).toMatchObject({
        code: 'evidence-document-needed',
      });
    },
  ],
  [
    'its number and date',
    'certificate',
    (held, { key: kind }) => {
      expect(held.record({ kind, covers: [1], documents: [document] })).toMatchObject({
        code: 'evidence-certificate-needed',
      });
    },
  ],
  [
    'the second person',
    'statement',
    (held, { key: kind }) => {
      expect(held.record({ kind, covers: [1], documents: [], statement: 'Sound.' })).toBeUndefined();
    },
  ],
  [
    'the other person who closes it',
    'fall case',
    (held) => {
      const occasion = { at: '2026-03-10T08:00:00.000Z' as never, on: today, by: 'ines' };
      held.take(decideOpenFallCase(held.device, { fallCase: 1, facts, linked: [] }, occasion));
      expect(
        held.take(decideCloseFallCase(caseOf(held), 'A slip.', competent('ines'), occasion)),
      ).toMatchObject({
        code: 'fall-case-second-person-needed',
      });
    },
  ],
  ...(Object.keys(facts) as (keyof typeof facts)[]).map(
    (fact) =>
      [
        `the fact ${fact}`,
        'fall case',
        (held: HeldDevice) => {
          const occasion = { at: '2026-03-10T08:00:00.000Z' as never, on: today, by: 'dora' };
          const { [fact]: _left, ...others } = facts;
          held.take(
            decideOpenFallCase(held.device, { fallCase: 1, facts: others, linked: [] }, occasion),
            'dora',
          );
          expect(
            held.take(decideCloseFallCase(caseOf(held), 'A slip.', competent('sol'), occasion)),
          ).toMatchObject({
            code: 'fall-case-facts-missing',
            field: `facts.${fact}`,
          });
        },
      ] as const,
  ),
];

describe('evidence that lacks a part of its own', () => {
  test.each(halves)(
    'does not count, for any reason that asks for it: without %s',
    (_part, how, provideHalf) => {
      const asked = everyReason.flatMap((key) =>
        choices(needsOf(releaseRules, undefined, key))
          .filter((chosen) => chosen.every((each) => kindOf(each).how !== 'never'))
          .flatMap((chosen) =>
            chosen
              .filter((each) => kindOf(each).how === how)
              .map((half) => ({ key, half, others: chosen.filter((each) => each !== half) })),
          ),
      );
      expect(asked.length).toBeGreaterThan(0);
      for (const { key, half, others } of asked) {
        const held = new HeldDevice([key]);
        for (const each of others) expect(provide(held, kindOf(each))).toBeUndefined();
        provideHalf(held, kindOf(half));
        const refused = held.release();
        if (how === 'statement') expect(refused).toMatchObject({ code: 'release-evidence-unconfirmed' });
        else {
          expect(refused).toMatchObject({ code: 'release-evidence-missing' });
          expectNamed(refused!, kindOf(half));
        }
        expect(held.start()).toMatchObject({ code: 'device-out-of-service' });
      }
    },
  );
});

describe('evidence', () => {
  test('covers only the reasons that it is recorded for, and none that came later', () => {
    const held = new HeldDevice(['lifeline.wires.broken-wires', 'brake.midway.slips']);
    held.record({ kind: 'repair-certificate', covers: [1], documents: [document], certificate });
    expect(held.release()).toMatchObject({
      code: 'release-evidence-missing',
      values: { reason: { en: 'Because of brake.midway.slips.' } },
    });
    held.record({ kind: 'repair-certificate', covers: [2], documents: [document], certificate });
    held.remove(['lifeline.wires.broken-wires']);
    expect(held.release()).toMatchObject({ code: 'release-evidence-missing', values: { count: 1 } });
  });

  test('is refused without its document, its number, or where its certificate is older than the removal', () => {
    const held = new HeldDevice(['brake.midway.slips']);
    const entry = { kind: 'repair-certificate', covers: [1], documents: [document], certificate };
    expect(held.record({ ...entry, documents: [] })).toMatchObject({ code: 'evidence-document-needed' });
    expect(held.record({ ...entry, certificate: undefined })).toMatchObject({
      code: 'evidence-certificate-needed',
    });
    expect(
      held.record({ ...entry, certificate: { ...certificate, on: calendarDate('2026-03-09') } }),
    ).toMatchObject({ code: 'evidence-too-old' });
    expect(
      held.record({ ...entry, certificate: { ...certificate, on: calendarDate('2026-03-11') } }),
    ).toMatchObject({ code: 'evidence-in-future' });
    expect(held.record({ ...entry, covers: [2] })).toMatchObject({ code: 'evidence-reason-unknown' });
    expect(held.record({ ...entry, kind: 'recall-instruction' })).toMatchObject({
      code: 'evidence-does-not-fit',
    });
    expect(held.record({ ...entry, kind: 'investigation' })).toMatchObject({ code: 'evidence-kind-unknown' });
    expect(held.device.evidence).toBeUndefined();
  });

  test('that a person writes counts once another competent person agreed, and never by their own word', () => {
    const held = new HeldDevice(['removal.other']);
    const entry = { kind: 'doubt-settled', covers: [1], documents: [], statement: 'A shadow of paint.' };
    expect(held.record(entry, attendant)).toMatchObject({ code: 'evidence-competent-person-needed' });
    held.record(entry);
    const { evidence } = held.device.evidence![0]!;
    expect(held.release()).toMatchObject({ code: 'release-evidence-unconfirmed' });
    expect(held.confirm(evidence, competent('ines'))).toMatchObject({
      code: 'evidence-second-person-needed',
    });
    expect(held.confirm(evidence, attendant)).toMatchObject({ code: 'evidence-competent-person-needed' });
    expect(held.confirm(evidence)).toBeUndefined();
    expect(held.release()).toBeUndefined();
  });

  test('of a settled identity does not count while the identity is presumed', () => {
    const held = new HeldDevice(['identity.presumed']);
    held.put([{ type: 'identity.taken', identityCase: 1, benchId, proposedBy: 'ines' }], 'sol');
    provide(held, kindOf('re-marking'));
    provide(held, kindOf('identity-settled'));
    expect(held.release()).toMatchObject({ code: 'release-evidence-missing', values: { count: 1 } });
  });
});

describe('a release', () => {
  const ready = (): HeldDevice => {
    const held = new HeldDevice(['brake.midway.slips']);
    provide(held, kindOf('repair-certificate'));
    return held;
  };

  test('takes the quarantine tag that belongs on the device now, and no other', () => {
    const held = new HeldDevice(['brake.midway.slips']);
    held.remove(['lifeline.shape.kink']);
    held.record({ kind: 'repair-certificate', covers: [1, 2], documents: [document], certificate });
    expect(held.release(1)).toMatchObject({ code: 'release-other-tag', values: { current: 2 } });
    expect(held.release(3)).toMatchObject({ code: 'release-other-tag' });
    expect(held.release(2)).toBeUndefined();
    expect(held.device).toMatchObject({ standing: 'quarantined', release: { tagNumber: 2 } });
    expect(held.device.currentTag).toBeUndefined();
    expect(held.device.pastTags.at(-1)).toMatchObject({ tagNumber: 2, because: 'released to the bench' });
  });

  test('ends with a new removal, and its new reason asks for evidence of its own', () => {
    const held = ready();
    held.release();
    held.remove(['removal.damage']);
    expect(held.device.release).toBeUndefined();
    expect(held.device.currentTag).toMatchObject({ kind: 'quarantine', tagNumber: 2 });
    expect(held.start()).toMatchObject({ code: 'device-out-of-service' });
    expect(held.release()).toMatchObject({ code: 'release-evidence-missing' });
  });

  test('is worth nothing at the signature where the program asks for more by then', () => {
    const held = ready();
    held.release();
    held.start();
    const stricter = new HeldDevice(
      ['brake.midway.slips'],
      [{ for: 'parts', needs: [['repair-certificate'], ['manufacturer-word']] }],
    );
    stricter.put(held.events.slice(2).map(({ event }) => event));
    expect(stricter.device.openInspection).toBe(1);
    expect(stricter.release()).toMatchObject({ code: 'release-already' });
    stricter.start();
    expect(stricter.sign()).toMatchObject({ code: 'release-evidence-missing' });
  });
});

import { describe, expect, it } from 'vitest';
import {
  type Draft,
  type DraftContext,
  type DraftInput,
  type DraftStep,
  question,
  stepDraft,
} from '../../../renderer/screens/bench/answer-draft.ts';
import { inputOfCommand } from '../../../renderer/screens/bench/command-input.ts';
import type { Answer } from '../../../src/domain/answer.ts';
import { metres } from '../../../src/domain/brand.ts';
import { type CommandName, commandNames, placeNames } from '../../../src/domain/command-symbol.ts';
import { faultOfAnswer } from '../../../src/domain/verdict.ts';
import { checkNamed, procedure } from './checks.ts';

const facts = {
  ratedLengthM: 15.24,
  loadIndicatorFitted: true,
  lifelineDiameterMm: 4.8,
  lifelineMinimumDiameterMm: 4.3,
};

const at = (key: string, given?: Answer, unit: 'm' | 'ft' = 'm'): DraftContext => ({
  check: checkNamed(key),
  ratedLengthM: metres(15.24),
  facts,
  unit,
  given,
});

/** Readings at 2, 7 and 14 m, as they are scanned: each place and diameter confirmed, then all. */
const readings = (...diameters: readonly string[]): CommandName[] => {
  const places = ['2', '7', '14'];
  const digits = (number: string) =>
    [...number].map((character) => (character === '.' ? 'point' : character) as CommandName);
  return [
    'defect',
    ...diameters.flatMap((diameter, index) => [
      ...digits(places[index]!),
      'confirm' as const,
      ...digits(diameter),
      'confirm' as const,
    ]),
    'confirm',
  ];
};

const walkThrough = (
  context: DraftContext,
  inputs: readonly DraftInput[],
  from: Draft = question,
): DraftStep =>
  inputs.reduce<DraftStep>((step, input) => stepDraft(step.draft, input, context), { draft: from });

const scanned = (context: DraftContext, ...commands: CommandName[]): DraftStep =>
  walkThrough(
    context,
    commands.flatMap((command) => inputOfCommand(command) ?? []),
  );

describe('an element of the marking', () => {
  it('is legible with the symbol Good', () => {
    expect(scanned(at('marking.serialNumber'), 'good').answer).toEqual({ kind: 'marking', state: 'legible' });
  });

  it('is legible, illegible and missing with 1, 2 and 3', () => {
    const states = (['1', '2', '3'] as const).map((digit) => scanned(at('marking.model'), digit).answer);
    expect(states).toEqual([
      { kind: 'marking', state: 'legible' },
      { kind: 'marking', state: 'illegible' },
      { kind: 'marking', state: 'missing' },
    ]);
  });

  it('asks which with the symbol Defect, and records nothing', () => {
    expect(scanned(at('marking.model'), 'defect')).toEqual({ draft: question, fault: 'chooseMarking' });
  });
});

describe('a condition', () => {
  it('is good with the symbol Good', () => {
    expect(scanned(at('housing.body'), 'good').answer).toEqual({ kind: 'good' });
  });

  it('takes several defects in the order in which they were chosen', () => {
    const { answer } = scanned(at('upper-hook.body'), 'defect', '3', '1', 'confirm');
    expect(answer).toEqual({ kind: 'defects', findings: [{ defect: 'corrosion' }, { defect: 'crack' }] });
  });

  it('lets a defect be unchosen by choosing it again', () => {
    const { answer } = scanned(at('upper-hook.body'), 'defect', '3', '1', '3', 'confirm');
    expect(answer).toEqual({ kind: 'defects', findings: [{ defect: 'crack' }] });
  });

  it('is not answered by confirming nothing', () => {
    const step = scanned(at('upper-hook.body'), 'defect', 'confirm');
    expect(step.answer).toBeUndefined();
    expect(step.fault).toBe('chooseDefect');
  });

  it('says so where no defect has the number', () => {
    expect(scanned(at('fasteners.all'), 'defect', '9').fault).toBe('noSuchNumber');
  });

  it('has its only defect chosen already', () => {
    expect(scanned(at('payout.runs-free'), 'defect', 'confirm').answer).toEqual({
      kind: 'defects',
      findings: [{ defect: 'binds' }],
    });
  });

  it('goes back to the question with Cancel', () => {
    expect(scanned(at('housing.body'), 'defect', '1', 'cancel')).toEqual({ draft: question });
  });

  it('starts from the findings on record when it is changed', () => {
    const given: Answer = { kind: 'defects', findings: [{ defect: 'crack' }] };
    const { answer } = scanned(at('housing.body', given), 'defect', '4', 'confirm');
    expect(answer).toEqual({ kind: 'defects', findings: [{ defect: 'crack' }, { defect: 'cover-missing' }] });
  });

  it('keeps a note with the defect that was chosen last, and drops an empty one', () => {
    const context = at('overall.doubt');
    const noted = walkThrough(context, [
      { kind: 'defect' },
      { kind: 'note', text: ' smells burnt ' },
      { kind: 'confirm' },
    ]);
    expect(noted.answer).toEqual({
      kind: 'defects',
      findings: [{ defect: 'questionable', note: 'smells burnt' }],
    });
    const empty = walkThrough(context, [
      { kind: 'defect' },
      { kind: 'note', text: '  ' },
      { kind: 'confirm' },
    ]);
    expect(empty.answer).toEqual({ kind: 'defects', findings: [{ defect: 'questionable' }] });
  });
});

describe('a finding on the lifeline', () => {
  it('is placed digit by digit with the command sheet alone', () => {
    const { answer } = scanned(at('lifeline.shape'), 'defect', '1', '3', 'point', '2', 'confirm', 'confirm');
    expect(answer).toEqual({ kind: 'defects', findings: [{ defect: 'crushing', positionM: 3.2 }] });
  });

  it('is stored in metres where it was given in feet', () => {
    const { answer } = scanned(
      at('lifeline.wires', undefined, 'ft'),
      'defect',
      '1',
      '0',
      'confirm',
      'confirm',
    );
    // 10 ft = 3.048 m exactly (NIST SP 811).
    expect(answer).toEqual({
      kind: 'defects',
      findings: [{ defect: 'broken-wires', positionM: expect.closeTo(3.048, 9) }],
    });
  });

  it('may be found more than once, each time at its own place', () => {
    const { answer } = scanned(
      at('lifeline.shape'),
      'defect',
      '2',
      '4',
      'confirm',
      '2',
      '9',
      'confirm',
      'confirm',
    );
    expect(answer).toEqual({
      kind: 'defects',
      findings: [
        { defect: 'kink', positionM: 4 },
        { defect: 'kink', positionM: 9 },
      ],
    });
  });

  it('is refused beyond the end of the lifeline, and the number stays to be corrected', () => {
    const step = scanned(at('lifeline.shape'), 'defect', '1', '1', '6', 'confirm');
    expect(step.fault).toBe('beyondLifeline');
    expect(step.draft).toMatchObject({ placing: { defect: 'crushing', typed: '16' } });
  });

  it('is not placed without a number', () => {
    expect(scanned(at('lifeline.shape'), 'defect', '1', 'confirm').fault).toBe('notANumber');
  });

  it('follows a touch on the strip, and the touch can be corrected by the digits', () => {
    const context = at('lifeline.shape');
    const touched = walkThrough(context, [
      { kind: 'defect' },
      { kind: 'choose', defect: 'kink' },
      { kind: 'place', positionM: metres(7.3) },
      { kind: 'erase' },
      { kind: 'digit', digit: 5 },
      { kind: 'confirm' },
      { kind: 'confirm' },
    ]);
    expect(touched.answer).toEqual({ kind: 'defects', findings: [{ defect: 'kink', positionM: 7.5 }] });
  });
});

describe('the full payout', () => {
  it('is the rated length with the symbol Good', () => {
    expect(scanned(at('payout.full-length'), 'good').answer).toEqual({ kind: 'length', confirmedM: 15.24 });
  });

  it('takes the length that came out where it was less', () => {
    const { answer } = scanned(at('payout.full-length'), 'defect', '1', '4', 'point', '9', 'confirm');
    expect(answer).toEqual({ kind: 'length', confirmedM: 14.9 });
  });

  it('takes a comma for the decimal mark', () => {
    const { answer } = walkThrough(at('payout.full-length'), [
      { kind: 'defect' },
      { kind: 'typed', text: '14,9' },
      { kind: 'confirm' },
    ]);
    expect(answer).toEqual({ kind: 'length', confirmedM: 14.9 });
  });
});

describe('the diameter', () => {
  const key = 'lifeline.diameter';
  const withoutMinimum = { ...at(key), facts: { ...facts, lifelineMinimumDiameterMm: undefined } };

  it('is given place by place with the command sheet alone, and ends with Confirm', () => {
    expect(scanned(at(key), ...readings('4.8', '4.7', '4.8')).answer).toEqual({
      kind: 'diameters',
      readings: [
        { positionM: 2, diameterMm: 4.8 },
        { positionM: 7, diameterMm: 4.7 },
        { positionM: 14, diameterMm: 4.8 },
      ],
    });
  });

  it('is asked for at every third of the lifeline before it ends, where there is a minimum to hold it against', () => {
    const two = scanned(at(key), ...readings('4.8', '4.7').slice(0, -1), 'confirm');
    expect(two.answer).toBeUndefined();
    expect(two.fault).toBe('diameterPlaces');
    expect(scanned(withoutMinimum, ...readings('4.8', '4.7')).answer).toMatchObject({ kind: 'diameters' });
  });

  it('that cannot be is asked again, and the place stays', () => {
    const { draft, fault } = scanned(at(key), 'defect', '2', 'confirm', '4', '8', 'confirm');
    expect(fault).toBe('diameterImpossible');
    expect(draft).toMatchObject({
      stage: 'diameters',
      field: 'diameter',
      position: '2',
      diameter: '',
      readings: [],
    });
  });

  it('is taken back step by step with Erase', () => {
    const { draft } = scanned(
      at(key),
      ...readings('4.8').slice(0, -1),
      '7',
      'confirm',
      'erase',
      'erase',
      'erase',
    );
    expect(draft).toMatchObject({ field: 'position', position: '', readings: [] });
  });

  it('need not be given where the model sheet has no minimum: Good goes on without readings', () => {
    expect(scanned(withoutMinimum, 'good').answer).toEqual({ kind: 'diameters', readings: [] });
    expect(scanned(at(key), 'good').answer).toBeUndefined();
    expect(scanned(at(key), 'good').draft).toMatchObject({ stage: 'diameters' });
  });
});

describe('every check of the procedure', () => {
  it('can be answered with the command sheet alone, by answers that the rules of the station allow', () => {
    for (const { key, kind } of procedure.checks) {
      const check = checkNamed(key);
      const bad: CommandName[] =
        kind === 'marking'
          ? ['2']
          : kind === 'lifeline-diameter'
            ? readings('4.8', '4.2', '4.8')
            : kind === 'payout-length'
              ? ['defect', '9', 'confirm']
              : check.kind === 'condition' && check.positioned
                ? check.defects.length === 1
                  ? ['defect', '1', 'confirm', 'confirm']
                  : ['defect', '1', '1', 'confirm', 'confirm']
                : check.kind === 'condition' && check.defects.length === 1
                  ? ['defect', 'confirm']
                  : ['defect', '1', 'confirm'];
      const good = kind === 'lifeline-diameter' ? readings('4.8', '4.8', '4.8') : (['good'] as CommandName[]);
      for (const commands of [good, bad]) {
        const { answer } = scanned(at(key), ...commands);
        expect(answer, key).toBeDefined();
        expect(faultOfAnswer(check, answer!, facts), key).toBeUndefined();
      }
    }
  });

  it('leaves no more than nine defects to choose from, so that a digit reaches each', () => {
    for (const check of procedure.checks) {
      if (check.kind === 'condition') expect(check.defects.length, check.key).toBeLessThanOrEqual(9);
    }
  });
});

describe('the commands', () => {
  it('all mean something to an answer, but for those that move through the walk, take a picture, or leave it', () => {
    const others = commandNames.filter((command) => inputOfCommand(command) === undefined);
    expect(others).toEqual(['next', 'back', 'picture', ...placeNames, 'help']);
  });
});

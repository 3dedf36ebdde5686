/** The rules of people and designations, line by line. */
import { describe, expect, test } from 'vitest';
import { decideDesignate, decideEndDesignation, incompetence } from '../../src/domain/decide/designation.ts';
import {
  decideAddPerson,
  decideChangePerson,
  decideLeave,
  decideReturn,
  decideSetPin,
} from '../../src/domain/decide/person.ts';
import { earlierBadges } from '../../src/domain/earlier-badges.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import {
  added,
  day,
  designated,
  designation,
  type LifeEvent,
  personAfter,
} from '../support/sample-person.ts';

const today = day('2025-06-01');
const inspector = personAfter(['2025-01-10', added()]);
const administrator = personAfter(['2025-01-10', added(['administrator'], 'P001')]);
const second = personAfter(['2025-01-10', added(['administrator', 'attendant'], 'P003')]);
const left = { type: 'person.left', personId: 'P002', leftOn: day('2025-05-01'), because: 'Moved' } as const;
const gone = personAfter(['2025-01-10', added()], ['2025-05-01', left]);
const sheets = [{ modelSheetId: 'M001' }, { modelSheetId: 'M002' }] as unknown as readonly ModelSheet[];

describe('a person', () => {
  test('is added with a badge that means nothing else yet', () => {
    const { history: _history, ...person } = inspector;
    expect(decideAddPerson(person, undefined)).toMatchObject([{ type: 'person.added' }]);
    expect(decideAddPerson(person, 'Bram Kestrin')).toMatchObject({ code: 'badge-taken' });
  });

  test('has each thing that is different changed by an event of its own, with the reason', () => {
    const change = { name: 'Ada Lorn-Weir', badge: 'AL-0002', roles: ['attendant'] } as const;
    expect(decideChangePerson(inspector, change, 'Married', [inspector], undefined)).toEqual([
      { type: 'person.name-changed', personId: 'P002', name: 'Ada Lorn-Weir', because: 'Married' },
      { type: 'person.badge-changed', personId: 'P002', badge: 'AL-0002', because: 'Married' },
      { type: 'person.roles-changed', personId: 'P002', roles: ['attendant'], because: 'Married' },
    ]);
  });

  test('is not changed into what they are already, nor given a badge that is taken', () => {
    const same = { name: inspector.name, badge: inspector.badge, roles: inspector.roles };
    expect(decideChangePerson(inspector, same, 'Why', [inspector], 'Ada Lorn')).toMatchObject({
      code: 'person-unchanged',
    });
    expect(decideChangePerson(inspector, { badge: 'HP1' }, 'Why', [inspector], 'Teo Arandal')).toMatchObject({
      code: 'badge-taken',
      field: 'badge',
    });
  });

  test('keeps in mind every badge they had before', () => {
    const changed = personAfter(
      ['2025-01-10', added()],
      ['2025-02-01', { type: 'person.badge-changed', personId: 'P002', badge: 'AL-0002', because: 'Lost' }],
      ['2025-03-01', { type: 'person.badge-changed', personId: 'P002', badge: 'AL-0003', because: 'Lost' }],
    );
    expect(changed.badge).toBe('AL-0003');
    expect(earlierBadges(changed)).toEqual([
      { badge: 'AL-0001', replacedOn: '2025-02-01' },
      { badge: 'AL-0002', replacedOn: '2025-03-01' },
    ]);
  });

  test('who is the only administrator neither loses the role nor leaves', () => {
    const roles = ['attendant'] as const;
    const alone = [administrator, inspector];
    const leaving = { leftOn: today, because: 'Moved' };
    expect(decideChangePerson(administrator, { roles }, 'Why', alone, undefined)).toMatchObject({
      code: 'last-administrator',
    });
    expect(decideLeave(administrator, leaving, alone, today)).toMatchObject({ code: 'last-administrator' });
    const two = [administrator, second];
    expect(decideChangePerson(administrator, { roles }, 'Why', two, undefined)).toMatchObject([
      { type: 'person.roles-changed', roles: ['attendant'] },
    ]);
    expect(decideLeave(administrator, leaving, two, today)).toMatchObject([{ type: 'person.left' }]);
    const secondGone = { ...second, left: { on: today, because: 'Moved' } };
    expect(decideLeave(administrator, leaving, [administrator, secondGone], today)).toMatchObject({
      code: 'last-administrator',
    });
  });

  test('who has left is neither changed, designated nor given a PIN, and leaves once', () => {
    const refused = { code: 'person-has-left', values: { on: '2025-05-01' } };
    expect(decideChangePerson(gone, { name: 'X' }, 'Why', [gone], undefined)).toMatchObject(refused);
    expect(decideDesignate(gone, designation(), today, sheets)).toMatchObject(refused);
    expect(decideSetPin(gone, { wasSet: false, by: 'P001' })).toMatchObject(refused);
    expect(decideLeave(gone, { leftOn: today, because: 'Again' }, [gone], today)).toMatchObject(refused);
    expect(decideReturn(gone, 'Back')).toMatchObject([{ type: 'person.returned' }]);
  });

  test('leaves today or earlier, and returns only after that', () => {
    const later = { leftOn: day('2025-06-02'), because: 'Moved' };
    expect(decideLeave(inspector, later, [inspector], today)).toMatchObject({ code: 'leaving-in-future' });
    expect(decideReturn(inspector, 'Back')).toMatchObject({ code: 'person-has-not-left' });
  });
});

describe('a PIN', () => {
  test('that is set over another by somebody else takes a reason; the first one and the own one do not', () => {
    expect(decideSetPin(inspector, { wasSet: true, by: 'P001' })).toMatchObject({
      code: 'pin-reset-reason-needed',
      field: 'because',
    });
    expect(decideSetPin(inspector, { wasSet: true, by: 'P001', because: 'Forgotten' })).toEqual([
      { type: 'person.pin-set', personId: 'P002', because: 'Forgotten' },
    ]);
    expect(decideSetPin(inspector, { wasSet: false, by: 'P001' })).toHaveLength(1);
    expect(decideSetPin(inspector, { wasSet: true, by: 'P002' })).toHaveLength(1);
  });
});

describe('a designation', () => {
  test('is not of the future, rests on training before it that lasts longer, and names model sheets that there are', () => {
    const codeOf = (changes: Parameters<typeof designation>[0]) => {
      const decision = decideDesignate(inspector, designation(changes), today, sheets);
      return 'code' in decision ? decision.code : 'designated';
    };
    expect(codeOf({})).toBe('designated');
    expect(codeOf({ designatedOn: today })).toBe('designated');
    expect(codeOf({ designatedOn: day('2025-06-02') })).toBe('designation-in-future');
    expect(codeOf({ trainingValidUntil: day('2025-01-10') })).toBe('training-ends-before-designation');
    expect(codeOf({ trainedOn: day('2025-01-10') })).toBe('designated');
    expect(codeOf({ trainedOn: day('2025-01-11') })).toBe('training-after-designation');
    expect(codeOf({ scope: ['M002', 'M001'] })).toBe('designated');
    expect(codeOf({ scope: ['M001', 'M003'] })).toBe('scope-unknown-model');
  });

  test('ends today or earlier, not before it began, and only where there is one', () => {
    const person = personAfter(['2025-01-10', added()], ['2025-01-10', designated()]);
    const codeOn = (endedOn: string) => {
      const decision = decideEndDesignation(person, { endedOn: day(endedOn), because: 'Duties' }, today);
      return 'code' in decision ? decision.code : 'ended';
    };
    expect(codeOn('2025-06-01')).toBe('ended');
    expect(codeOn('2025-01-10')).toBe('ended');
    expect(codeOn('2025-01-09')).toBe('designation-ends-before-it-began');
    expect(codeOn('2025-06-02')).toBe('designation-end-in-future');
    expect(decideEndDesignation(inspector, { endedOn: today, because: 'Duties' }, today)).toMatchObject({
      code: 'designation-none',
    });
  });

  test('that does not count is said with its own sentence', () => {
    const codeOf = (life: readonly LifeEvent[], on = today) =>
      incompetence(personAfter(['2025-01-10', added()], ...life), on, { modelSheetId: 'M002' })?.code;
    expect(codeOf([['2025-01-10', designated()]])).toBeUndefined();
    expect(codeOf([])).toBe('signer-not-designated');
    expect(codeOf([['2025-01-10', designated()]], day('2025-01-09'))).toBe('signer-not-yet-designated');
    expect(codeOf([['2025-01-10', designated()]], day('2026-01-11'))).toBe('signer-training-expired');
    expect(codeOf([['2025-01-10', designated({ scope: ['M001'] })]])).toBe('signer-out-of-scope');
    expect(codeOf([['2025-05-01', left]])).toBe('signer-has-left');
    const ended = {
      type: 'person.designation-ended',
      personId: 'P002',
      endedOn: today,
      because: 'X',
    } as const;
    expect(
      codeOf([
        ['2025-01-10', designated()],
        ['2025-06-01', ended],
      ]),
    ).toBe('signer-designation-ended');
  });
});

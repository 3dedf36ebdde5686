/** Blind second inspections: what may be drawn, who may make one, and that none ever brings a device back. */
import { describe, expect, test } from 'vitest';
import { type BenchId, type CalendarDate, calendarDate, instant } from '../../src/domain/brand.ts';
import type { Decision } from '../../src/domain/decide/decision.ts';
import { decideSign } from '../../src/domain/decide/inspection.ts';
import {
  type Drawable,
  decideBeginBlind,
  decideDraw,
  decideSee,
  mayBeDrawn,
} from '../../src/domain/decide/reinspection.ts';
import type { Device } from '../../src/domain/device.ts';
import { type DomainEvent, eventSchema, type Occasion } from '../../src/domain/event.ts';
import { evolveCaseFile } from '../../src/domain/evolve-case-file.ts';
import { evolveInspection } from '../../src/domain/evolve-inspection.ts';
import type { CaseFile } from '../../src/domain/held/case-file.ts';
import { reasonDates } from '../../src/domain/held/reason-dates.ts';
import type { Inspection } from '../../src/domain/inspection.ts';
import type { ModelSheet } from '../../src/domain/model-sheet.ts';
import type { Person } from '../../src/domain/person.ts';
import { isRefusal, type Refusal } from '../../src/domain/refusal.ts';
import { isBlindTo, waitingReinspection } from '../../src/domain/reinspection/reinspection.ts';
import { seededRandom } from '../support/seeded-random.ts';
import { goodAnswers, procedure, program, releaseRules } from '../support/shipped-rules.ts';
import { attendant, benchId, competent, HeldDevice, reasonOf, today } from './held/held-device.ts';

const reference = { key: 'cable-srl', version: 2, sha256: '0' };
const later = calendarDate('2026-03-15');

const occasion = (person: Person, on = later): Occasion => ({
  at: instant(`${on}T09:00:00.000Z`),
  on,
  by: person.personId,
});

/** A device whose inspection 1 was walked by `tomas` and `ines` and signed by `ines` on 10 March 2026. */
class Inspected extends HeldDevice {
  readonly inspections = new Map<number, Inspection>();
  file: CaseFile | undefined;

  constructor(verdict: 'pass' | 'remove from service') {
    super([]);
    this.begin(1, 'tomas');
    this.answer(1, 'ines');
    this.put(
      [
        {
          type: 'inspection.signed',
          inspection: 1,
          benchId,
          verdict:
            verdict === 'pass'
              ? { kind: verdict }
              : { kind: verdict, reasons: [reasonOf('housing.body.crack')] },
          ...(verdict === 'pass' ? { dueOn: calendarDate('2027-03-10') } : {}),
          program: { key: 'annual', version: 1 },
          tagNumber: 1,
        },
      ],
      'ines',
    );
  }

  override put(events: readonly DomainEvent[], by = 'ines', on = today): void {
    for (const event of events) {
      super.put([event], by, on);
      const recorded = this.events.at(-1)!;
      this.file = evolveCaseFile(this.file, recorded);
      if (this.inspections === undefined || !('inspection' in event) || event.inspection === undefined)
        continue;
      const inspection = evolveInspection(this.inspections.get(event.inspection), recorded);
      if (inspection !== undefined) this.inspections.set(event.inspection, inspection);
    }
  }

  begin(inspection: number, by: string): void {
    this.put([{ type: 'inspection.started', inspection, benchId, procedure: reference }], by);
  }

  /** Every check good, but for what is said. */
  answer(inspection: number, by: string, answers = goodAnswers(6), on = today): void {
    this.put(
      Object.entries(answers).map(([check, answer]) => ({
        type: 'inspection.answered' as const,
        inspection,
        benchId,
        check,
        answer,
      })),
      by,
      on,
    );
  }

  get drawable(): Drawable {
    return { device: this.device, first: this.inspections.get(1)!, wentOut: false };
  }

  draw(): void {
    const drawn = decideDraw([this.drawable], { numbers: [0], next: 1, withinDays: 14 }, today);
    if (isRefusal(drawn)) throw new Error(drawn.code);
    this.put(drawn, 'dora');
  }

  beginBlind(person: Person, on = later) {
    return this.recorded(
      decideBeginBlind(this.device, 2, reference, person, occasion(person, on)),
      person,
      on,
    );
  }

  signBlind(person: Person) {
    const inspected = {
      device: this.device,
      modelSheet: {
        modelSheetId: 'M1',
        ratedLengthM: 6,
        loadIndicatorFitted: true,
        lifelineDiameterMm: 4.8,
        lifelineMinimumDiameterMm: 4.3,
      } as unknown as ModelSheet,
      procedure,
      lengthUnit: 'm' as const,
      inForce: { program },
      releaseRules,
    };
    return this.recorded(
      decideSign(this.inspections.get(2)!, inspected, person, occasion(person)),
      person,
      later,
    );
  }

  /** The refusal, or `undefined` where it was recorded. */
  recorded(decision: Decision, { personId }: Person, on: CalendarDate): Refusal | undefined {
    if (isRefusal(decision)) return decision;
    this.put(decision, personId, on);
    return undefined;
  }
}

const cracked = {
  ...goodAnswers(6),
  'housing.body': { kind: 'defects' as const, findings: [{ defect: 'crack' }] },
};

describe('what may be drawn', () => {
  test('is a device that is here as its inspection left it, passed or removed', () => {
    for (const verdict of ['pass', 'remove from service'] as const)
      expect(mayBeDrawn(new Inspected(verdict).drawable, 14, today)).toBe(true);
  });

  test('ends after the days of the program', () => {
    const { drawable } = new Inspected('pass');
    expect(mayBeDrawn(drawable, 14, calendarDate('2026-03-24'))).toBe(true);
    expect(mayBeDrawn(drawable, 14, calendarDate('2026-03-25'))).toBe(false);
    expect(mayBeDrawn(drawable, 5, calendarDate('2026-03-16'))).toBe(false);
  });

  const removal: DomainEvent = {
    type: 'device.removed',
    benchId,
    reasons: [reasonOf('removal.fall')],
    tagNumber: 2,
  };
  test.each<readonly [string, readonly DomainEvent[]]>([
    ['was removed since', [removal]],
    [
      'is under another inspection',
      [{ type: 'inspection.started', inspection: 9, benchId, procedure: reference }],
    ],
    [
      'waits already',
      [
        {
          type: 'reinspection.drawn',
          reinspection: 7,
          benchId,
          first: 1,
          until: later,
          knownTo: ['ines'],
          lot: { number: 0, of: 1 },
        },
      ],
    ],
    ['is in a fall case', [{ type: 'fall-case.device-joined', fallCase: 1, benchId }]],
    ['is in a return batch', [{ type: 'return-batch.device-added', batch: 1, benchId }]],
  ])('is no device that %s', (_what, events) => {
    const inspected = new Inspected('pass');
    inspected.put(events);
    expect(mayBeDrawn(inspected.drawable, 14, today)).toBe(false);
  });

  test('is none that was out since, and none whose last inspection was the second of a pair', () => {
    const { drawable } = new Inspected('pass');
    expect(mayBeDrawn({ ...drawable, wentOut: true }, 14, today)).toBe(false);
    expect(mayBeDrawn({ ...drawable, first: { ...drawable.first, reinspection: 3 } }, 14, today)).toBe(false);
  });
});

describe('the draw', () => {
  const fleet = (count: number): readonly Drawable[] => {
    const { drawable } = new Inspected('pass');
    return Array.from({ length: count }, (_, index) => ({
      ...drawable,
      device: { ...drawable.device, benchId: `${String.fromCharCode(65 + index)}000000000` as BenchId },
    }));
  };
  const draw = (among: readonly Drawable[], numbers: readonly number[]) => {
    const events = decideDraw(among, { numbers, next: 4, withinDays: 14 }, today);
    return isRefusal(events) ? events : events.filter((event) => event.type === 'reinspection.drawn');
  };

  test('takes the place that the number says among those that are left, in the order of their bench IDs', () => {
    // By hand: of A, B, C, D the half of 2³² is place 2, C; of A, B, D the largest number is the last, D.
    const drawn = draw(fleet(4).toReversed(), [2 ** 31, 2 ** 32 - 1]);
    expect(drawn).toMatchObject([
      { reinspection: 4, benchId: 'C000000000', lot: { number: 2 ** 31, of: 4 } },
      { reinspection: 5, benchId: 'D000000000', lot: { number: 2 ** 32 - 1, of: 3 } },
    ]);
    expect(drawn).toMatchObject([{ first: 1, until: '2026-03-24', knownTo: ['tomas', 'ines'] }, {}]);
  });

  test('takes all where more are wanted than there are, and is refused where there is none', () => {
    expect(draw(fleet(2), [0, 0, 0])).toHaveLength(2);
    expect(draw([], [0])).toMatchObject({ code: 'reinspection-none-to-draw' });
  });

  /** The 99.9 % point of χ² with 7 degrees of freedom is 24.32 (NIST/SEMATECH e-Handbook, table of critical values). */
  test('gives every device the same chance', () => {
    const among = fleet(8);
    const random = seededRandom(20261130);
    const counts = new Map<string, number>();
    const draws = 4000;
    for (let each = 0; each < draws; each += 1) {
      const drawn = draw(among, [Math.floor(random.next() * 2 ** 32)]);
      const id = isRefusal(drawn) ? '' : (drawn[0]?.benchId ?? '');
      counts.set(id, (counts.get(id) ?? 0) + 1);
    }
    const wanted = draws / among.length;
    const chiSquare = [...counts.values()].reduce((sum, count) => sum + (count - wanted) ** 2 / wanted, 0);
    expect(counts.size).toBe(8);
    expect(chiSquare).toBeLessThan(24.32);
  });
});

describe('the second inspector', () => {
  test('is a competent person who neither walked nor signed the first inspection', () => {
    const inspected = new Inspected('pass');
    inspected.draw();
    for (const known of ['ines', 'tomas'])
      expect(inspected.beginBlind(competent(known))).toMatchObject({ code: 'reinspection-known-to' });
    expect(inspected.beginBlind(attendant)).toMatchObject({ code: 'signer-not-designated' });
    expect(inspected.beginBlind(competent('sol'))).toBeUndefined();
    expect(inspected.inspections.get(2)).toMatchObject({ reinspection: 1, state: 'open' });
    expect(inspected.file).toMatchObject({ kind: 'reinspection', phase: 'drawn', first: 1, second: 2 });
  });

  test('has until the last day, and not a day longer', () => {
    const inspected = new Inspected('pass');
    inspected.draw();
    expect(inspected.beginBlind(competent('sol'), calendarDate('2026-03-25'))).toMatchObject({
      code: 'reinspection-not-drawn',
    });
    expect(inspected.beginBlind(competent('sol'), calendarDate('2026-03-24'))).toBeUndefined();
  });

  test('is nobody who was shown what the first one found', () => {
    const inspected = new Inspected('remove from service');
    inspected.draw();
    const sol = competent('sol');
    expect(isBlindTo(inspected.device, sol, later)).toBe(true);
    inspected.take(decideSee(inspected.device, sol, later), 'sol');
    expect(isBlindTo(inspected.device, sol, later)).toBe(false);
    expect(inspected.beginBlind(sol)).toMatchObject({ code: 'reinspection-known-to' });
    expect(inspected.beginBlind(competent('vera'))).toBeUndefined();
    expect(decideSee(inspected.device, competent('vera'), later)).toMatchObject({
      code: 'reinspection-under-way',
    });
  });

  test('does not sign for another who knew', () => {
    const inspected = new Inspected('pass');
    inspected.draw();
    inspected.beginBlind(competent('sol'));
    inspected.answer(2, 'ines');
    expect(inspected.signBlind(competent('ines'))).toMatchObject({ code: 'reinspection-known-to' });
  });
});

describe('a second inspection', () => {
  const blind = (verdict: 'pass' | 'remove from service', answers = goodAnswers(6)) => {
    const inspected = new Inspected(verdict);
    inspected.draw();
    inspected.beginBlind(competent('sol'));
    inspected.answer(2, 'sol', answers, later);
    const before = inspected.device;
    expect(inspected.signBlind(competent('sol'))).toBeUndefined();
    const { openInspection: _open, reinspection: _draw, ...unchanged } = before;
    return { inspected, unchanged };
  };

  test('that passes a removed device leaves it exactly as it was: held, tagged, with its reason', () => {
    const { inspected, unchanged } = blind('remove from service');
    expect(inspected.device).toEqual(unchanged);
    expect(inspected.device).toMatchObject({ standing: 'quarantined', currentTag: { kind: 'quarantine' } });
    expect(reasonDates(inspected.events)).toEqual([today]);
    expect(inspected.file).toMatchObject({ phase: 'signed', first: 1, second: 2 });
    expect(inspected.inspections.get(2)?.signed).toMatchObject({ verdict: { kind: 'pass' }, tagNumber: 1 });
  });

  test('that passes a device in service moves neither its due date nor its tag', () => {
    const { inspected, unchanged } = blind('pass');
    expect(inspected.device).toEqual(unchanged);
    expect(inspected.device.taggedDue).toEqual({ on: '2027-03-10' });
  });

  test('that finds something removes a device in service at once', () => {
    const { inspected } = blind('pass', cracked);
    expect(inspected.device).toMatchObject({
      standing: 'quarantined',
      reasons: [{ key: 'housing.body.crack' }],
      currentTag: { kind: 'quarantine', tagNumber: 2 },
      lastInspection: { inspection: 2, verdict: 'remove from service' },
    });
    expect(inspected.device.reinspection).toBeUndefined();
  });

  test('that finds something on a removed device adds to its reasons', () => {
    const { inspected } = blind('remove from service', cracked);
    expect(inspected.device).toMatchObject({ standing: 'quarantined', currentTag: { tagNumber: 2 } });
    expect(inspected.device.reasons).toHaveLength(2);
    expect(reasonDates(inspected.events)).toEqual([today, later]);
  });

  test('that is broken off can be begun anew', () => {
    const inspected = new Inspected('pass');
    inspected.draw();
    inspected.beginBlind(competent('sol'));
    inspected.put([{ type: 'inspection.abandoned', inspection: 2, benchId, why: 'Called away.' }], 'sol');
    expect(waitingReinspection(inspected.device, later)).toMatchObject({ reinspection: 1 });
    expect(inspected.beginBlind(competent('sol'))).toBeUndefined();
  });
});

test('a device that goes out, is removed or is inspected anew waits no more', () => {
  const out = {
    type: 'device.checked-out',
    benchId,
    userId: 'u',
    preUse: { list: { key: 'k', version: 1 }, language: 'en' },
  };
  const ends: readonly DomainEvent[] = [
    out as unknown as DomainEvent,
    { type: 'device.removed', benchId, reasons: [reasonOf('removal.fall')], tagNumber: 2 },
    {
      type: 'inspection.signed',
      inspection: 5,
      benchId,
      verdict: { kind: 'pass' },
      program: { key: 'annual', version: 1 },
      tagNumber: 2,
    },
  ];
  for (const event of ends) {
    const inspected = new Inspected('pass');
    inspected.draw();
    expect(waitingReinspection(inspected.device, today)).toBeDefined();
    inspected.put([event]);
    expect(waitingReinspection(inspected.device, today), event.type).toBeUndefined();
  }
});

test('nobody but a competent person who does not know is blind to a device, and nobody to one that does not wait', () => {
  const { device } = new Inspected('pass');
  expect(isBlindTo(device, competent('sol'), today)).toBe(false);
  const drawn: Device = {
    ...device,
    reinspection: { reinspection: 1, first: 1, until: later, knownTo: ['ines'] },
  };
  expect(
    [competent('sol'), competent('ines'), attendant, undefined].map((who) => isBlindTo(drawn, who, today)),
  ).toEqual([true, false, false, false]);
});

test('records from before there were blind inspections are read as they are', () => {
  const started = { type: 'inspection.started', inspection: 1, benchId, procedure: reference };
  const signed = {
    type: 'inspection.signed',
    inspection: 1,
    benchId,
    verdict: { kind: 'pass' },
    program: { key: 'annual', version: 1 },
    tagNumber: 1,
  };
  expect(eventSchema.parse(started)).toEqual(started);
  expect(eventSchema.parse(signed)).toEqual(signed);
});

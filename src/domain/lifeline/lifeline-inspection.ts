/** What one inspection saw along the lifeline: findings with their place, and readings of the diameter. */
import type { DiameterReading } from '../answer.ts';
import type { CalendarDate } from '../brand.ts';
import type { Inspection } from '../inspection.ts';
import type { Message } from '../message.ts';
import type { Effect, Procedure } from '../procedure.ts';

/** A finding that has a place on the lifeline. */
export interface LifelineFinding {
  /** Key of the check. */
  readonly check: string;
  /** Key of the defect within the check. */
  readonly defect: string;
  readonly label: Message;
  readonly effect: Effect;
  /** Metres from the lower hook. */
  readonly positionM: number;
  readonly note?: string;
}

export interface LifelineInspection {
  readonly inspection: number;
  readonly state: Inspection['state'];
  /** The day of the signature; while there is none, the day on which it began. */
  readonly on: CalendarDate;
  /** Present once it is signed. */
  readonly verdict?: 'pass' | 'remove from service' | 'incomplete';
  /** In the order of their places. */
  readonly findings: readonly LifelineFinding[];
  /** In the order of their places. */
  readonly readings: readonly DiameterReading[];
}

/** `procedure` is the one with which the inspection began: it has the words for the defects. */
export const lifelineInspection = (inspection: Inspection, procedure: Procedure): LifelineInspection => {
  const answers = procedure.checks.flatMap((check) => {
    const answered = inspection.answers[check.key];
    return answered === undefined ? [] : [{ check, answer: answered.answer }];
  });
  const findings = answers.flatMap(({ check, answer }) =>
    check.kind !== 'condition' || answer.kind !== 'defects'
      ? []
      : answer.findings.flatMap(({ defect: key, positionM, note }): readonly LifelineFinding[] => {
          const defect = check.defects.find((candidate) => candidate.key === key);
          if (defect === undefined || positionM === undefined) return [];
          const { label, effect } = defect;
          const said = note === undefined ? {} : { note };
          return [{ check: check.key, defect: key, label, effect, positionM, ...said }];
        }),
  );
  const readings = answers.flatMap(({ answer }) => (answer.kind === 'diameters' ? answer.readings : []));
  return {
    inspection: inspection.inspection,
    state: inspection.state,
    on: inspection.signed?.on ?? inspection.startedOn,
    ...(inspection.signed === undefined ? {} : { verdict: inspection.signed.verdict.kind }),
    findings: findings.toSorted(byPlace),
    readings: readings.toSorted(byPlace),
  };
};

const byPlace = (a: { readonly positionM: number }, b: { readonly positionM: number }): number =>
  a.positionM - b.positionM;

/** What one inspection saw along the lifeline: findings with their place, and readings of the diameter. */
import { z } from 'zod';
import { diameterReadingSchema } from '../answer.ts';
import { calendarDateSchema } from '../brand.ts';
import { type Inspection, inspectionSchema } from '../inspection.ts';
import { messageSchema } from '../message.ts';
import { effectSchema, type Procedure } from '../procedure.ts';

/** A finding that has a place on the lifeline. */
const lifelineFindingSchema = z.object({
  /** Key of the check. */
  check: z.string(),
  /** Key of the defect within the check. */
  defect: z.string(),
  label: messageSchema,
  effect: effectSchema,
  /** Metres from the lower hook. */
  positionM: z.number(),
  note: z.string().optional(),
});
export type LifelineFinding = z.infer<typeof lifelineFindingSchema>;

export const lifelineInspectionSchema = z.object({
  inspection: z.int(),
  state: inspectionSchema.shape.state,
  /** The day of the signature; while there is none, the day on which it began. */
  on: calendarDateSchema,
  /** Present once it is signed. */
  verdict: z.enum(['pass', 'remove from service', 'incomplete']).optional(),
  /** In the order of their places. */
  findings: z.array(lifelineFindingSchema),
  /** In the order of their places. */
  readings: z.array(diameterReadingSchema),
});
export type LifelineInspection = z.infer<typeof lifelineInspectionSchema>;

/** `procedure` is the one with which the inspection began: it has the words for the defects. */
export const lifelineInspection = (inspection: Inspection, procedure: Procedure): LifelineInspection => {
  const answers = procedure.checks.flatMap((check) => {
    const answered = inspection.answers[check.key];
    return answered === undefined ? [] : [{ check, answer: answered.answer }];
  });
  const findings = answers.flatMap(({ check, answer }) =>
    check.kind !== 'condition' || answer.kind !== 'defects'
      ? []
      : answer.findings.flatMap(({ defect: key, positionM, note }): LifelineFinding[] => {
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

/** A finding as it is typed. */
import type { Finding } from '../../../src/domain/answer.ts';
import { type LengthUnit, parseLength, toUnit } from '../../../src/domain/length.ts';
import type { ConditionCheck } from '../../../src/domain/procedure.ts';

export interface FindingDraft {
  readonly defect: string;
  /** In the station's unit of length. */
  readonly position: string;
  readonly note: string;
}

export const emptyFinding = ({ defects }: ConditionCheck): FindingDraft => ({
  defect: defects[0]?.key ?? '',
  position: '',
  note: '',
});

export const findingDraft = ({ defect, positionM, note = '' }: Finding, unit: LengthUnit): FindingDraft => ({
  defect,
  position: positionM === undefined ? '' : String(Math.round(toUnit(positionM, unit) * 1000) / 1000),
  note,
});

/** Nothing where a position that the check asks for is missing or is no length. */
export const findingsFrom = (
  drafts: readonly FindingDraft[],
  { positioned }: ConditionCheck,
  unit: LengthUnit,
): Finding[] | undefined => {
  const findings = drafts.map(({ defect, position, note }): Finding | undefined => {
    const positionM = parseLength(position, unit);
    if (positioned && positionM === undefined) return undefined;
    return {
      defect,
      ...(positioned && positionM !== undefined ? { positionM } : {}),
      ...(note.trim() === '' ? {} : { note }),
    };
  });
  const whole = findings.filter((finding) => finding !== undefined);
  return whole.length === drafts.length ? whole : undefined;
};

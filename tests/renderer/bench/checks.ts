/** Invented checks and inspections for the tests of the bench. */
import { readFileSync } from 'node:fs';
import type { Answer } from '../../../src/domain/answer.ts';
import { instant } from '../../../src/domain/brand.ts';
import { type Check, procedureSchema } from '../../../src/domain/procedure.ts';
import type { Verdict } from '../../../src/domain/verdict.ts';
import type { InspectionView } from '../../../src/station/views.ts';

export const procedure = procedureSchema.parse(
  JSON.parse(readFileSync(new URL('../../../assets/procedures/cable-srl.v2.json', import.meta.url), 'utf8')),
);

export const checkNamed = (key: string): Check => procedure.checks.find((check) => check.key === key)!;

/** Just what the order of the walk looks at. */
export const inspectionWith = (
  checks: readonly string[],
  answers: Readonly<Record<string, Answer>>,
  verdict: Verdict,
): InspectionView =>
  ({
    checks,
    answers: Object.fromEntries(
      Object.entries(answers).map(([key, answer]) => [
        key,
        { answer, by: 'Wren Castellan', byId: 'P003', at: instant('2026-11-24T09:00:00.000Z') },
      ]),
    ),
    verdict,
  }) as unknown as InspectionView;

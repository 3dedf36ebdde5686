/** Walks an inspection through the contract the way a person does, one check after another. */
import type { Answer } from '../../src/domain/answer.ts';
import type { BenchId } from '../../src/domain/brand.ts';
import type { InspectionView } from '../../src/station/views.ts';
import { goodAnswer, procedure } from './shipped-rules.ts';
import type { TestStation } from './station-fixture.ts';

/** Starts an inspection and answers every check that applies: good, unless `findings` says otherwise. */
export const walk = async (
  { expectOutput }: Pick<TestStation, 'expectOutput'>,
  benchId: BenchId,
  findings: Readonly<Record<string, Answer>> = {},
): Promise<InspectionView> => {
  let { inspection } = await expectOutput('inspection.start', { benchId });
  for (const key of inspection.checks) {
    const check = procedure.checks.find((candidate) => candidate.key === key)!;
    const answer = findings[key] ?? goodAnswer(check, inspection.device.ratedLengthM);
    ({ inspection } = await expectOutput('inspection.answer', {
      inspection: inspection.inspection,
      check: key,
      answer,
    }));
  }
  return inspection;
};

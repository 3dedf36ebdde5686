/** The procedure and the program that the product ships, for tests of the rules. */
import { readFileSync } from 'node:fs';
import type { Answer } from '../../src/domain/answer.ts';
import { metres, millimetres } from '../../src/domain/brand.ts';
import { releaseRulesSchema } from '../../src/domain/held/release-rules.ts';
import { type Check, type Procedure, procedureSchema } from '../../src/domain/procedure.ts';
import { programSchema } from '../../src/domain/program.ts';

export const asset = (path: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../assets/${path}`, import.meta.url), 'utf8'));

export const procedureVersion = (version: 1 | 2): Procedure =>
  procedureSchema.parse(asset(`procedures/cable-srl.v${version}.json`));

/** The current one. */
export const procedure = procedureVersion(2);
export const program = programSchema.parse(asset('programs/annual.v1.json'));
export const releaseRules = releaseRulesSchema.parse(asset('programs/release/release.v1.json'));

/** A model with a load indicator and a minimum of the manufacturer for its diameter; whose lifeline it is adds the length. */
export const shippedFacts = {
  loadIndicatorFitted: true,
  lifelineDiameterMm: 4.8,
  lifelineMinimumDiameterMm: 4.3,
};

/** The answer of a check with nothing wrong, on a lifeline of this rated length in metres. */
export const goodAnswer = (check: Check, ratedLengthM: number): Answer => {
  switch (check.kind) {
    case 'marking':
      return { kind: 'marking', state: 'legible' };
    case 'condition':
      return { kind: 'good' };
    case 'payout-length':
      return {
        kind: 'length',
        confirmedM: ratedLengthM as Extract<Answer, { kind: 'length' }>['confirmedM'],
      };
    case 'lifeline-diameter':
      return {
        kind: 'diameters',
        readings: [1, 3, 5].map((sixths) => ({
          positionM: metres((ratedLengthM * sixths) / 6),
          diameterMm: millimetres(4.8),
        })),
      };
  }
};

/** Answers to every check of the procedure with nothing wrong. */
export const goodAnswers = (ratedLengthM: number): Record<string, Answer> =>
  Object.fromEntries(procedure.checks.map((check) => [check.key, goodAnswer(check, ratedLengthM)]));

/** Every reason that the product can give for taking a device out of service, from its own data and rules. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Answer } from '../../../src/domain/answer.ts';
import { metres, millimetres } from '../../../src/domain/brand.ts';
import { unexplainedYes } from '../../../src/domain/custody/check-in-answer.ts';
import { deskRulesSchema } from '../../../src/domain/custody/desk-rules.ts';
import { type Check, type Procedure, procedureSchema } from '../../../src/domain/procedure.ts';
import { reasonsWhenBrokenOff } from '../../../src/domain/verdict.ts';
import { asset, shippedFacts } from '../../support/shipped-rules.ts';

const versionsIn = (folder: string): readonly unknown[] =>
  readdirSync(new URL(`../../../assets/${folder}`, import.meta.url))
    .filter((name) => name.endsWith('.json'))
    .map((name) => asset(`${folder}/${name}`));

const wrongAnswers = (check: Check): readonly Answer[] => {
  switch (check.kind) {
    case 'marking':
      return [
        { kind: 'marking', state: 'illegible' },
        { kind: 'marking', state: 'missing' },
      ];
    case 'condition':
      return check.defects.map(({ key }) => ({
        kind: 'defects',
        findings: [{ defect: key, positionM: metres(1) }],
      }));
    case 'payout-length':
      return [{ kind: 'length', confirmedM: metres(5) }];
    case 'lifeline-diameter':
      return [{ kind: 'diameters', readings: [{ positionM: metres(1), diameterMm: millimetres(4) }] }];
  }
};

/** As the verdict gives them, finding by finding; a broken-off inspection keeps those too that wait for a second look. */
const reasonsOfProcedure = (procedure: Procedure): readonly string[] =>
  procedure.checks.flatMap((check) =>
    wrongAnswers(check).flatMap((answer) => {
      const facts = { ...shippedFacts, ratedLengthM: 6 };
      const reasons = reasonsWhenBrokenOff(procedure, { [check.key]: answer }, facts, 'm');
      if (reasons.length === 0) throw new Error(`No reason comes of a wrong answer to ${check.key}.`);
      return reasons.map(({ key }) => key);
    }),
  );

const reasonsOfDesk = (rules: unknown): readonly string[] =>
  deskRulesSchema
    .parse(rules)
    .checkIn.flatMap(({ key, choices }) => [
      `check-in.${key}.not-known`,
      unexplainedYes(key),
      ...choices.map((choice) => `check-in.${key}.${choice.key}`),
    ]);

const groundsOf = (program: unknown): readonly string[] =>
  ((program as { removalGrounds?: { key: string }[] }).removalGrounds ?? []).map(
    ({ key }) => `removal.${key}`,
  );

/** Of one event alone, as the code names them. */
const reasonsOfEvents = [
  'removal.declared',
  'program.revalidation-overdue',
  'program.service-life-over',
  'program.inspection-missed',
  'identity.presumed',
  'custody.lost',
  'fall-case.linked',
  'manufacturer.condemned',
  'release.inspection-broken-off',
  'release.evidence-withdrawn',
];

export const everyReason: readonly string[] = [
  ...new Set([
    ...versionsIn('procedures').flatMap((version) => reasonsOfProcedure(procedureSchema.parse(version))),
    ...versionsIn('programs').flatMap(groundsOf),
    ...versionsIn('desk').flatMap(reasonsOfDesk),
    ...reasonsOfEvents,
  ]),
];

/** Keys of reasons that stand whole in the code of the rules: whoever adds one there must add it here. */
export const reasonsNamedInSource = (): readonly string[] => {
  const folder = new URL('../../../src/', import.meta.url);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(new URL(name.replaceAll('\\', '/'), folder), 'utf8'))
    .filter((text) => text.includes('effect:'))
    .flatMap((text) => [...text.matchAll(/\bkey: '([a-z-]+(?:\.[a-z-]+)+)'/g)].map(([, key]) => key!));
};

/** The invented depot with one inspection, one tag or one device in every state that a screen can show. */
import type { Answer } from '../../src/domain/answer.ts';
import { benchIdSchema, metres } from '../../src/domain/brand.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import type { Stage } from './stage.ts';

/** People of `demo-data/people.json`, by what they may do, and the PIN of all of them. */
export const badges = {
  administrator: 'HP10017',
  inspector: 'HP10024',
  otherInspector: 'HP10031',
  attendant: 'HP10055',
  inspectorWhoseTrainingEnded: 'HP10048',
  user: 'HP10062',
} as const;
export const pin = '271828';

/** Devices of `demo-data/fleet.json`, by how they stand. */
export const devices = {
  neverInspected: benchIdSchema.parse('4R02SSYNB2'),
  inService: benchIdSchema.parse('GJQ81T5WX2'),
  quarantined: benchIdSchema.parse('2JTJ77J0NM'),
  /** With a user since before, and late. */
  out: benchIdSchema.parse('3T69AQGSMR'),
  /** Its return was left in the middle of a yes. */
  askedAbout: benchIdSchema.parse('MM68GV91MM'),
} as const;

export interface PreparedDepot {
  /** Numbers of inspections, by what they show. */
  readonly inspections: {
    readonly atMarking: number;
    readonly atLifeline: number;
    readonly atPayout: number;
    /** The model sheet of the device gives a minimum. */
    readonly atDiameter: number;
    readonly lookAgain: number;
    readonly passing: number;
    readonly threeReasons: number;
    readonly sixReasons: number;
    readonly signed: number;
    readonly brokenOff: number;
  };
  /** Numbers of the cases of "who is this?", by how far they are. */
  readonly identityCases: {
    readonly open: number;
    readonly proposed: number;
    readonly taken: number;
    readonly unidentified: number;
  };
}

type Findings = Readonly<Record<string, Answer>>;

const defect = (kind: string, positionM?: number): Answer => ({
  kind: 'defects',
  findings: [{ defect: kind, ...(positionM === undefined ? {} : { positionM: metres(positionM) }) }],
});

export const threeFindings: Findings = {
  'marking.dateOfManufacture': { kind: 'marking', state: 'illegible' },
  'lifeline.shape': defect('crushing', 3.2),
  'brake.near-full-payout': defect('slow'),
};

const sixFindings: Findings = {
  ...threeFindings,
  'marking.capacityRange': { kind: 'marking', state: 'missing' },
  'housing.body': defect('deformation'),
  'lower-hook.body': defect('corrosion'),
};

/** Loads the depot where it is not there yet, and walks what must be walked, as the inspector Teo Arandal. */
export const prepareDepot = async (stage: Stage): Promise<PreparedDepot> => {
  const { state } = await stage.expectOutput('station.status', {});
  if (state === 'empty') await stage.expectOutput('station.load-demo', {});
  await stage.expectOutput('session.sign-in', { badge: badges.inspector });
  const passing = await walkUntil(stage, '9KAQSGGP0A');
  const signed = await walkUntil(stage, '73A37J9SH4');
  await stage.expectOutput('inspection.sign', { inspection: signed, pin });
  const brokenOff = await walkUntil(stage, 'J245FS46WN', 'upper-hook.body');
  await stage.expectOutput('inspection.break-off', { inspection: brokenOff, why: 'End of the shift.' });
  await correctNewestRemoval(stage);
  await leaveReturnOpen(stage);
  const identityCases = await openIdentityCases(stage);
  return {
    identityCases,
    inspections: {
      atMarking: await walkUntil(stage, 'H0S438XV8J', 'marking.manufacturer'),
      atLifeline: await walkUntil(stage, '3WWTGMXZ3V', 'lifeline.shape'),
      atPayout: await walkUntil(stage, 'AFZQ45HXXZ', 'payout.full-length'),
      atDiameter: await walkUntil(stage, '61KMDZH4XG', 'lifeline.diameter'),
      lookAgain: await walkUntil(stage, '9NS2Z7MXM4', undefined, { 'upper-hook.body': defect('dirt') }),
      passing,
      threeReasons: await walkUntil(stage, 'AAX47GVEW7', undefined, threeFindings),
      sixReasons: await walkUntil(stage, '13R7FWZQRD', undefined, sixFindings),
      signed,
      brokenOff,
    },
  };
};

/** The second of the records: its first finding gets a remark. */
const correctNewestRemoval = async (stage: Stage): Promise<void> => {
  const { inspections } = await stage.expectOutput('inspection.list', { verdict: 'remove from service' });
  const [{ benchId, inspection }] = inspections as [(typeof inspections)[number]];
  const amendable = await stage.expectOutput('record.amendable', { benchId });
  const { answers } = amendable.inspections!.find((each) => each.inspection === inspection)!;
  for (const { amends, answer } of answers) {
    if (answer.kind !== 'defects') continue;
    const findings = answer.findings.map((found) => ({ ...found, note: 'Seen again under the lamp' }));
    const correction = { field: 'answer', now: { ...answer, findings } } as const;
    const because = 'The remark was left out.';
    await stage.expectOutput('record.amend', { amends, correction, because, pin });
    return;
  }
};

const leaveReturnOpen = async (stage: Stage): Promise<void> => {
  await stage.expectOutput('session.sign-in', { badge: badges.attendant });
  await stage.expectOutput('custody.check-in', {
    benchId: devices.askedAbout,
    answers: [
      { question: 'fall', said: 'no' },
      { question: 'exposure', said: 'yes', choices: [] },
    ],
    withoutCheckOut: true,
  });
  await stage.expectOutput('session.sign-in', { badge: badges.inspector });
};

/** What can be seen on a device with `Q25A30037` or a number near it. */
export const wornFacts = {
  serial: 'Q25A30?37',
  manufacturer: 'Quillmoor',
  lengthM: metres(10.05),
  hookType: 'swivel snap hook',
  housingColour: 'grey',
} as const;

const openIdentityCases = async (stage: Stage): Promise<PreparedDepot['identityCases']> => {
  const opened = async (serial: string) => {
    const observation = { ...wornFacts, serial };
    const { identityCase } = await stage.expectOutput('identity.open', { observation });
    return identityCase;
  };
  const proposed = async (serial: string) => {
    const identityCase = await opened(serial);
    const { identity } = await stage.expectOutput('identity.show', { identityCase });
    const candidate = identity.ranking.candidates[0]!.benchId;
    await stage.expectOutput('identity.propose', { identityCase, candidate, pin });
    return { identityCase, candidate };
  };
  const open = await opened(wornFacts.serial);
  const unidentified = await opened('Z*4?');
  await stage.expectOutput('identity.leave-unidentified', { identityCase: unidentified });
  const taken = await proposed('Q20A3015?');
  await stage.expectOutput('session.sign-in', { badge: badges.attendant });
  await stage.expectOutput('identity.confirm', { ...taken, lookedAtDevice: true, pin });
  await stage.expectOutput('session.sign-in', { badge: badges.inspector });
  const { identityCase } = await proposed(wornFacts.serial);
  return { open, proposed: identityCase, taken: taken.identityCase, unidentified };
};

/** Starts an inspection and answers the checks before `until`, all of them where it is absent; returns its number. */
export const walkUntil = async (
  stage: Pick<Stage, 'expectOutput'>,
  benchId: string,
  until?: string,
  findings: Findings = {},
): Promise<number> => {
  const { inspection: started } = await stage.expectOutput('inspection.start', {
    benchId: benchIdSchema.parse(benchId),
  });
  const { inspection, checks, device } = started;
  for (const key of checks.slice(0, until === undefined ? undefined : checks.indexOf(until))) {
    const check = procedure.checks.find((candidate) => candidate.key === key)!;
    const answer = findings[key] ?? goodAnswer(check, device.ratedLengthM);
    await stage.expectOutput('inspection.answer', { inspection, check: key, answer });
  }
  return inspection;
};

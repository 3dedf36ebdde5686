/** What the screens are shown of an identity case: candidates as the register has them now, and what speaks for each. */
import { z } from 'zod';
import { benchIdSchema, type CalendarDate, calendarDateSchema } from '../domain/brand.ts';
import {
  type CaseRanking,
  candidatesInCase,
  type IdentityCase,
  identityCaseSchema,
  weighedCandidateSchema,
} from '../domain/identity/identity-case.ts';
import { type Observation, observationSchema } from '../domain/identity/observation.ts';
import { populationOf } from '../domain/identity/population.ts';
import { rankCandidates } from '../domain/identity/rank-candidates.ts';
import { type Refusal, refusal } from '../domain/refusal.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { deviceSummary, deviceSummarySchema, namesOf } from './views.ts';

export const candidateViewSchema = weighedCandidateSchema.extend({
  /** As the register has it now. */
  device: deviceSummarySchema,
  dateOfManufacture: z.string(),
  hookType: z.string().optional(),
  housingColour: z.string().optional(),
  tagNumber: z.int(),
  regularUser: z.string().optional(),
  /** When it was inspected, where that was on the day the case was opened or later: it then lies elsewhere. */
  inspectedSince: calendarDateSchema.optional(),
  /** When its tag was scanned on it, likewise. */
  scannedSince: calendarDateSchema.optional(),
  /** The other case in which this device was taken for one that lay on the bench. */
  presumedInCase: z.int().optional(),
});
export type CandidateView = z.infer<typeof candidateViewSchema>;

export const rankingViewSchema = z.object({
  candidates: z.array(candidateViewSchema),
  noneProbability: z.number(),
  startWeight: z.number(),
  weighed: z.int(),
});

export const identityCaseViewSchema = z.object({
  identityCase: z.int(),
  state: identityCaseSchema.shape.state,
  openedBy: z.string(),
  openedOn: calendarDateSchema,
  observation: observationSchema,
  /** The name of the last user who was named. */
  lastUser: z.string().optional(),
  keptAt: z.string(),
  ranking: rankingViewSchema,
  proposal: z
    .object({ benchId: benchIdSchema, by: z.string(), byId: z.string(), on: calendarDateSchema })
    .optional(),
  disagreements: z.array(
    z.object({ benchId: benchIdSchema, by: z.string(), on: calendarDateSchema, why: z.string() }),
  ),
  closed: z.object({ by: z.string(), on: calendarDateSchema }).optional(),
});
export type IdentityCaseView = z.infer<typeof identityCaseViewSchema>;

/** Ranks the register as it is now; a matter of hundreds of milliseconds at 100,000 devices. */
export const rankRegister = async (reader: LedgerReader, observation: Observation): Promise<CaseRanking> => {
  const population = populationOf(await reader.registeredDevices(), await reader.modelSheets());
  const ranking = rankCandidates(
    observation,
    population,
    await reader.closedIdentityCases(),
    candidatesInCase,
  );
  return {
    ...ranking,
    candidates: ranking.candidates.map((each) => ({ ...each, evidence: [...each.evidence] })),
  };
};

export const rankingView = async (
  reader: LedgerReader,
  ranking: CaseRanking,
  today: CalendarDate,
  dueSoonDays: number,
  openedOn: CalendarDate,
): Promise<z.infer<typeof rankingViewSchema>> => {
  const name = await namesOf(reader);
  const candidates: CandidateView[] = [];
  for (const candidate of ranking.candidates) {
    const row = await reader.device(candidate.benchId);
    if (row === undefined) continue;
    const { device, modelSheet } = row;
    const inspectedOn = device.lastInspection?.on;
    const scannedOn = device.currentTag?.provedOn;
    candidates.push({
      ...candidate,
      device: deviceSummary(row, today, dueSoonDays),
      dateOfManufacture: device.dateOfManufacture,
      tagNumber: device.lastTagNumber,
      ...(modelSheet.hookType === undefined ? {} : { hookType: modelSheet.hookType }),
      ...(modelSheet.housingColour === undefined ? {} : { housingColour: modelSheet.housingColour }),
      ...(device.regularUserId === undefined ? {} : { regularUser: name(device.regularUserId) }),
      ...(inspectedOn === undefined || inspectedOn < openedOn ? {} : { inspectedSince: inspectedOn }),
      ...(scannedOn === undefined || scannedOn < openedOn ? {} : { scannedSince: scannedOn }),
      ...(device.presumedIdentity === undefined
        ? {}
        : { presumedInCase: device.presumedIdentity.identityCase }),
    });
  }
  return { ...ranking, candidates };
};

export const identityCaseView = async (
  reader: LedgerReader,
  identity: IdentityCase,
  today: CalendarDate,
  dueSoonDays: number,
): Promise<IdentityCaseView> => {
  const name = await namesOf(reader);
  const { proposal, closed, observation } = identity;
  return {
    identityCase: identity.identityCase,
    state: identity.state,
    openedBy: name(identity.openedBy),
    openedOn: identity.openedOn,
    observation,
    ...(observation.lastUserId === undefined ? {} : { lastUser: name(observation.lastUserId) }),
    keptAt: identity.keptAt,
    ranking: await rankingView(reader, identity.ranking, today, dueSoonDays, identity.openedOn),
    ...(proposal === undefined
      ? {}
      : { proposal: { ...proposal, by: name(proposal.by), byId: proposal.by } }),
    disagreements: identity.disagreements.map(({ benchId, by, on, why }) => ({
      benchId,
      by: name(by),
      on,
      why,
    })),
    ...(closed === undefined ? {} : { closed: { ...closed, by: name(closed.by) } }),
  };
};

export const identityCaseIn = async (
  reader: LedgerReader,
  identityCase: number,
): Promise<IdentityCase | Refusal> =>
  (await reader.identityCase(identityCase)) ??
  refusal('identity-case-unknown', { identityCase }, 'identityCase');

/** What the screens are shown of a held device: what holds it, what is missing, and whose step is next. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema } from '../domain/brand.ts';
import { daysBetween } from '../domain/calendar.ts';
import { currentTagSchema } from '../domain/device.ts';
import { fallCaseKey, returnBatchKey } from '../domain/held/case-file.ts';
import {
  closedReasonSchema,
  deviceFallCaseSchema,
  recordedEvidenceSchema,
  releaseSchema,
  scrappingSchema,
} from '../domain/held/evidence.ts';
import { type FallCase, fallCaseSchema } from '../domain/held/fall-case.ts';
import { type MissingEvidence, missingEvidence } from '../domain/held/missing-evidence.ts';
import { heldSince, nextStepOf, nextStepSchema } from '../domain/held/next-step.ts';
import { reasonDates } from '../domain/held/reason-dates.ts';
import { evidenceKindSchema, needsOf, stepOwnerSchema } from '../domain/held/release-rules.ts';
import type { ReturnBatch } from '../domain/held/return-batch.ts';
import { messageSchema } from '../domain/message.ts';
import type { ProgramInForce } from '../domain/program-in-force.ts';
import { reasonSchema } from '../domain/verdict.ts';
import type { DeviceRow, LedgerReader } from '../ledger/ledger.ts';
import type { Rules } from './rules.ts';
import { deviceSummary, deviceSummarySchema, namesOf } from './views.ts';

/** People by name; who opened it by ID too, for nobody closes what they opened. */
export const fallCaseViewSchema = fallCaseSchema.extend({
  openedById: z.string(),
  /** Who wore it. */
  userName: z.string().optional(),
});
export type FallCaseView = z.infer<typeof fallCaseViewSchema>;

const missingSchema = z.object({
  /** Any one of them will do. */
  kinds: z.array(evidenceKindSchema),
  /** Evidence that waits for another person, and for how many. */
  unconfirmed: z.int().optional(),
  stillToAgree: z.int().optional(),
});

const stepShape = {
  nextStep: nextStepSchema,
  owner: stepOwnerSchema,
  /** Since when it is held, and for how many days. */
  since: calendarDateSchema.optional(),
  days: z.int(),
  /** The place in store that was scanned; where the program keeps what is held otherwise. */
  place: z.string().optional(),
  quarantinePlace: messageSchema,
};

export const heldLineSchema = z.object({
  device: deviceSummarySchema,
  reasons: z.array(messageSchema),
  /** How many pieces of evidence are missing. */
  missing: z.int(),
  ...stepShape,
});
export type HeldLine = z.infer<typeof heldLineSchema>;

export const heldViewSchema = z.object({
  device: deviceSummarySchema,
  ...stepShape,
  reasons: z.array(
    reasonSchema.extend({
      number: z.int(),
      since: calendarDateSchema.optional(),
      /** Every kind of evidence that may be recorded for it. */
      allowed: z.array(z.string()),
      missing: z.array(missingSchema),
    }),
  ),
  /** Whoever did something is named. */
  evidence: z.array(recordedEvidenceSchema.extend({ byId: z.string() })),
  kinds: z.array(evidenceKindSchema),
  fallCases: z.array(deviceFallCaseSchema),
  fallCase: fallCaseViewSchema.optional(),
  returnBatch: z.int().optional(),
  currentTag: currentTagSchema.optional(),
  release: releaseSchema.optional(),
  scrapped: scrappingSchema.optional(),
  closedReasons: z.array(closedReasonSchema),
});
export type HeldView = z.infer<typeof heldViewSchema>;

export interface HeldPlace {
  readonly reader: LedgerReader;
  readonly rules: Rules;
  readonly inForce: ProgramInForce;
  readonly today: CalendarDate;
}

const missingIn = ({ device }: DeviceRow, { rules, inForce }: HeldPlace): readonly MissingEvidence[] =>
  missingEvidence(device, { rules: rules.release, program: inForce.program });

const stepOf = async (row: DeviceRow, place: HeldPlace, missing: readonly MissingEvidence[]) => {
  const { device } = row;
  const { reader, today, inForce } = place;
  const batch =
    device.returnBatch === undefined
      ? undefined
      : ((await reader.caseFile(returnBatchKey(device.returnBatch))) as ReturnBatch | undefined);
  const followUpOn = batch?.followUps.at(-1)?.nextOn ?? batch?.shipped?.followUpOn;
  const { step, owner } = nextStepOf(device, missing, today, followUpOn);
  const since = heldSince(device);
  return {
    nextStep: step,
    owner,
    ...(since === undefined ? {} : { since }),
    days: since === undefined ? 0 : daysBetween(since, today),
    ...(device.stored === undefined ? {} : { place: device.stored.place }),
    quarantinePlace: inForce.program.quarantinePlace,
  };
};

export const heldLine = async (row: DeviceRow, place: HeldPlace): Promise<HeldLine> => {
  const missing = missingIn(row, place);
  return {
    device: deviceSummary(row, place.today, place.inForce.program.dueSoonDays),
    reasons: row.device.reasons.map(({ sentence }) => sentence),
    missing: missing.length,
    ...(await stepOf(row, place, missing)),
  };
};

export const heldView = async (row: DeviceRow, place: HeldPlace): Promise<HeldView> => {
  const { device } = row;
  const { reader, rules, inForce } = place;
  const name = await namesOf(reader);
  const missing = missingIn(row, place);
  const since = reasonDates(await reader.eventsOf(device.benchId));
  const latest = device.fallCases?.at(-1);
  const file = latest && ((await reader.caseFile(fallCaseKey(latest.fallCase))) as FallCase | undefined);
  const named = <Signed extends { readonly by: string }>(signed: Signed): Signed => ({
    ...signed,
    by: name(signed.by),
  });
  return {
    device: deviceSummary(row, place.today, inForce.program.dueSoonDays),
    ...(await stepOf(row, place, missing)),
    reasons: device.reasons.map((reason, index) => ({
      ...reason,
      number: index + 1,
      ...(since[index] === undefined ? {} : { since: since[index] }),
      allowed: needsOf(rules.release, inForce.program.release, reason.key).flat(),
      missing: missing
        .filter((each) => each.reason === index + 1)
        .map(({ kinds, unconfirmed, stillToAgree }) => ({
          kinds: [...kinds],
          ...(unconfirmed === undefined ? {} : { unconfirmed }),
          ...(stillToAgree === undefined ? {} : { stillToAgree }),
        })),
    })),
    evidence: (device.evidence ?? []).map((entry) => ({
      ...named(entry),
      byId: entry.by,
      ...(entry.confirmed === undefined ? {} : { confirmed: named(entry.confirmed) }),
      ...(entry.alsoConfirmed === undefined ? {} : { alsoConfirmed: entry.alsoConfirmed.map(named) }),
      ...(entry.withdrawn === undefined ? {} : { withdrawn: named(entry.withdrawn) }),
    })),
    kinds: rules.release.kinds,
    fallCases: device.fallCases ?? [],
    ...(file === undefined ? {} : { fallCase: fallCaseView(file, name) }),
    ...(device.returnBatch === undefined ? {} : { returnBatch: device.returnBatch }),
    ...(device.currentTag === undefined ? {} : { currentTag: device.currentTag }),
    ...(device.release === undefined ? {} : { release: named(device.release) }),
    ...(device.scrapped === undefined
      ? {}
      : { scrapped: { ...named(device.scrapped), witness: name(device.scrapped.witness) } }),
    closedReasons: device.closedReasons ?? [],
  };
};

export const fallCaseView = (file: FallCase, name: (personId: string) => string): FallCaseView => ({
  ...file,
  openedBy: name(file.openedBy),
  openedById: file.openedBy,
  ...(file.facts.userId === undefined ? {} : { userName: name(file.facts.userId) }),
  custody: file.custody.map((link) => ({ ...link, by: name(link.by) })),
  ...(file.closed === undefined ? {} : { closed: { ...file.closed, by: name(file.closed.by) } }),
});

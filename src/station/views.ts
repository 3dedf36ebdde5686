/** What the screens are shown: the shapes that queries give out, and how they are made from the record. */
import { z } from 'zod';
import { benchIdSchema, type CalendarDate, calendarDateSchema } from '../domain/brand.ts';
import { custodySchema, storedSchema } from '../domain/custody/custody.ts';
import { openQuestionsSchema } from '../domain/custody/open-check-in.ts';
import { factsOf, verdictOfCase } from '../domain/decide/inspection.ts';
import { declaredInspectionSchema } from '../domain/declared-inspection.ts';
import {
  currentTagSchema,
  dueStateOf,
  dueStateSchema,
  nextActionOf,
  nextActionSchema,
  otherCodeSchema,
  standingSchema,
} from '../domain/device.ts';
import { dueWhatSchema } from '../domain/due/due-date.ts';
import { currentUse, typeOfUseSchema } from '../domain/due/type-of-use.ts';
import { equipmentFactsSchema } from '../domain/equipment-facts.ts';
import { reinspectionKey } from '../domain/held/case-file.ts';
import { answeredSchema, inspectionSchema } from '../domain/inspection.ts';
import { knownMarkingEntrySchema } from '../domain/marking.ts';
import { lifelineMaterialSchema, modelSheetSchema } from '../domain/model-sheet.ts';
import { applicableChecks } from '../domain/procedure.ts';
import type { ProgramInForce } from '../domain/program-in-force.ts';
import { deviceReinspectionSchema, waitingReinspection } from '../domain/reinspection/reinspection.ts';
import { reasonSchema, verdictSchema } from '../domain/verdict.ts';
import type { DeviceRow, LedgerReader } from '../ledger/ledger.ts';
import { amendmentViewSchema, amendmentViews } from './amendment-view.ts';
import { dueView, dueViewSchema } from './due-view.ts';
import type { OpenCase } from './lookup.ts';

export const deviceSummarySchema = z.object({
  benchId: benchIdSchema,
  modelSheetId: z.string(),
  manufacturer: z.string(),
  model: z.string(),
  serial: z.string(),
  ratedLengthM: z.number(),
  lifelineMaterial: lifelineMaterialSchema,
  standing: standingSchema,
  dueState: dueStateSchema,
  /** The earliest of all that it is due for, and what for. */
  dueOn: calendarDateSchema.optional(),
  dueWhat: dueWhatSchema.optional(),
  /** Absent while no competent person has determined it. */
  typeOfUse: typeOfUseSchema.optional(),
  lastInspectedOn: calendarDateSchema.optional(),
  openInspection: z.int().optional(),
  nextAction: nextActionSchema,
  /** Present while it is out; the user by ID. */
  custody: custodySchema.optional(),
  /** What is still to be asked about it at the desk, where its last check-in was left open. */
  openCheckIn: openQuestionsSchema.optional(),
  stored: storedSchema.optional(),
  /** While it waits for a blind second inspection, or is under one. */
  reinspection: deviceReinspectionSchema.optional(),
});
export type DeviceSummary = z.infer<typeof deviceSummarySchema>;

export const deviceSummary = (
  { device, modelSheet }: DeviceRow,
  today: CalendarDate,
  dueSoonDays: number,
): DeviceSummary => ({
  benchId: device.benchId,
  modelSheetId: device.modelSheetId,
  manufacturer: modelSheet.manufacturer,
  model: modelSheet.model,
  serial: device.serial,
  ratedLengthM: modelSheet.ratedLengthM,
  lifelineMaterial: modelSheet.lifelineMaterial,
  standing: device.standing,
  dueState: dueStateOf(device, today, dueSoonDays),
  ...(device.dueOn === undefined ? {} : { dueOn: device.dueOn }),
  ...(device.dueWhat === undefined ? {} : { dueWhat: device.dueWhat }),
  ...useOf(device),
  ...(device.lastInspection === undefined ? {} : { lastInspectedOn: device.lastInspection.on }),
  ...(device.openInspection === undefined ? {} : { openInspection: device.openInspection }),
  nextAction: nextActionOf(device),
  ...(device.custody === undefined ? {} : { custody: device.custody }),
  ...(device.openCheckIn === undefined ? {} : { openCheckIn: device.openCheckIn }),
  ...(device.stored === undefined ? {} : { stored: device.stored }),
  ...waitingOf(device, today),
});

const waitingOf = (device: DeviceRow['device'], today: CalendarDate): Pick<DeviceSummary, 'reinspection'> => {
  const reinspection = waitingReinspection(device, today);
  return reinspection === undefined ? {} : { reinspection };
};

const useOf = ({ uses }: DeviceRow['device']): Pick<DeviceSummary, 'typeOfUse'> => {
  const use = currentUse(uses);
  return use === undefined ? {} : { typeOfUse: use.typeOfUse };
};

export const inspectionLineSchema = z.object({
  inspection: z.int(),
  state: inspectionSchema.shape.state,
  startedOn: calendarDateSchema,
  startedBy: z.string(),
  signedOn: calendarDateSchema.optional(),
  signedBy: z.string().optional(),
  verdict: z.enum(['pass', 'remove from service', 'incomplete']).optional(),
  /** The blind re-inspection that it is the second inspection of. */
  reinspection: z.int().optional(),
});

export const deviceCardSchema = deviceSummarySchema.extend({
  modelSheet: modelSheetSchema,
  dateOfManufacture: z.string(),
  marking: z.array(knownMarkingEntrySchema),
  otherCodes: z.array(otherCodeSchema),
  regularUser: z.string().optional(),
  /** The name of whoever has it. */
  heldBy: z.string().optional(),
  registeredOn: calendarDateSchema,
  ...equipmentFactsSchema.shape,
  ...dueViewSchema.shape,
  /** Open removal reasons, in order; empty unless it is out of service. */
  reasons: z.array(reasonSchema),
  removedBy: z.string().optional(),
  currentTag: currentTagSchema.optional(),
  /** Who says that this is the device, where its marking does not. */
  presumedIdentity: z
    .object({
      identityCase: z.int(),
      proposedBy: z.string(),
      confirmedBy: z.string(),
      on: calendarDateSchema,
    })
    .optional(),
  labelsReprinted: z.int(),
  /** Newest first. */
  inspections: z.array(inspectionLineSchema),
  /** Corrections of the device and of its inspections, newest first. */
  amendments: z.array(amendmentViewSchema),
  /** What its latest inspection found is left out: whoever asks may yet make the blind second one. */
  isBlind: z.boolean(),
  /** Declared by a list, not made with this program; newest first. */
  declaredInspections: z.array(declaredInspectionSchema),
});
export type DeviceCard = z.infer<typeof deviceCardSchema>;

export const deviceCard = async (
  reader: LedgerReader,
  row: DeviceRow,
  today: CalendarDate,
  inForce: ProgramInForce,
): Promise<DeviceCard> => {
  const { device, modelSheet } = row;
  const { program } = inForce;
  const name = await namesOf(reader);
  const inspections = await reader.inspectionsOf(device.benchId);
  const amendments = await amendmentViews(reader, device.amendments ?? []);
  for (const { inspection, amendments: made = [] } of inspections)
    amendments.push(...(await amendmentViews(reader, made, inspection)));
  return {
    ...deviceSummary(row, today, program.dueSoonDays),
    modelSheet,
    ...dueView(row, today, inForce, name),
    dateOfManufacture: device.dateOfManufacture,
    marking: device.marking,
    otherCodes: device.otherCodes,
    ...(device.regularUserId === undefined ? {} : { regularUser: name(device.regularUserId) }),
    ...(device.custody === undefined ? {} : { heldBy: name(device.custody.userId) }),
    registeredOn: device.registeredOn,
    ...(device.purchasedOn === undefined ? {} : { purchasedOn: device.purchasedOn }),
    ...(device.firstUsedOn === undefined ? {} : { firstUsedOn: device.firstUsedOn }),
    reasons: device.reasons,
    isBlind: false,
    ...(device.removedBy === undefined ? {} : { removedBy: name(device.removedBy) }),
    ...(device.currentTag === undefined ? {} : { currentTag: device.currentTag }),
    ...(device.presumedIdentity === undefined
      ? {}
      : {
          presumedIdentity: {
            ...device.presumedIdentity,
            proposedBy: name(device.presumedIdentity.proposedBy),
            confirmedBy: name(device.presumedIdentity.confirmedBy),
          },
        }),
    labelsReprinted: device.labelsReprinted ?? 0,
    amendments: amendments.toSorted((one, other) => other.seq - one.seq),
    declaredInspections: (device.declaredInspections ?? []).toSorted((a, b) =>
      b.inspectedOn.localeCompare(a.inspectedOn),
    ),
    inspections: inspections.map((inspection) => ({
      inspection: inspection.inspection,
      state: inspection.state,
      startedOn: inspection.startedOn,
      startedBy: name(inspection.startedBy),
      ...(inspection.reinspection === undefined ? {} : { reinspection: inspection.reinspection }),
      ...(inspection.signed === undefined
        ? {}
        : {
            signedOn: inspection.signed.on,
            signedBy: name(inspection.signed.by),
            verdict: inspection.signed.verdict.kind,
          }),
    })),
  };
};

export const inspectionViewSchema = z.object({
  inspection: z.int(),
  device: deviceSummarySchema,
  /** Nominal, and the least that the manufacturer allows where the model sheet gives one. */
  lifelineDiameterMm: z.number(),
  lifelineMinimumDiameterMm: z.number().optional(),
  marking: z.array(knownMarkingEntrySchema),
  procedure: z.object({ key: z.string(), version: z.int() }),
  state: inspectionSchema.shape.state,
  startedOn: calendarDateSchema,
  startedBy: z.string(),
  /** Keys of the checks that apply to this device, in the order of the walk. */
  checks: z.array(z.string()),
  /** The latest answer to each check; `by` is a person's name. */
  answers: z.record(z.string(), answeredSchema.extend({ byId: z.string() })),
  /** Corrections after it was signed, newest first; the verdict stays as signed. */
  amendments: z.array(amendmentViewSchema),
  /** The first check without a final answer; absent when all are answered. */
  nextCheck: z.string().optional(),
  /** As the answers stand; the signed one once it is signed. */
  verdict: verdictSchema,
  signed: z
    .object({
      by: z.string(),
      on: calendarDateSchema,
      dueOn: calendarDateSchema.optional(),
      dueFor: dueWhatSchema.optional(),
      tagNumber: z.int(),
    })
    .optional(),
  /** Where it is the second inspection of a blind pair; what the first found is shown once this one is signed. */
  reinspection: z
    .object({
      number: z.int(),
      first: z
        .object({
          inspection: z.int(),
          by: z.string(),
          on: calendarDateSchema,
          verdict: verdictSchema,
        })
        .optional(),
    })
    .optional(),
});
export type InspectionView = z.infer<typeof inspectionViewSchema>;

export const inspectionView = async (
  reader: LedgerReader,
  found: OpenCase,
  today: CalendarDate,
): Promise<InspectionView> => {
  const { inspection, row, procedure, inForce } = found;
  const name = await namesOf(reader);
  const facts = factsOf(row.modelSheet);
  const verdict = inspection.signed?.verdict ?? verdictOfCase(inspection, found, today);
  const checks = applicableChecks(procedure, facts).map((check) => check.key);
  const open =
    verdict.kind === 'incomplete'
      ? new Set([...verdict.unanswered, ...verdict.lookAgain])
      : new Set<string>();
  const nextCheck = checks.find((key) => open.has(key));
  const answers = Object.fromEntries(
    Object.entries(inspection.answers).map(([key, answered]) => [
      key,
      { ...answered, by: name(answered.by), byId: answered.by },
    ]),
  );
  const { signed } = inspection;
  return {
    inspection: inspection.inspection,
    device: deviceSummary(row, today, inForce.program.dueSoonDays),
    lifelineDiameterMm: facts.lifelineDiameterMm,
    ...(facts.lifelineMinimumDiameterMm === undefined
      ? {}
      : { lifelineMinimumDiameterMm: facts.lifelineMinimumDiameterMm }),
    marking: row.device.marking,
    procedure: { key: procedure.key, version: procedure.version },
    state: inspection.state,
    startedOn: inspection.startedOn,
    startedBy: name(inspection.startedBy),
    checks,
    answers,
    amendments: (
      await amendmentViews(reader, inspection.amendments ?? [], inspection.inspection)
    ).toReversed(),
    ...(nextCheck === undefined ? {} : { nextCheck }),
    verdict,
    ...(signed === undefined
      ? {}
      : {
          signed: {
            by: name(signed.by),
            on: signed.on,
            tagNumber: signed.tagNumber,
            ...(signed.dueOn === undefined ? {} : { dueOn: signed.dueOn }),
            ...(signed.dueFor === undefined ? {} : { dueFor: signed.dueFor }),
          },
        }),
    ...(await pairOf(reader, inspection, name)),
  };
};

const pairOf = async (
  reader: LedgerReader,
  { reinspection: number, signed }: OpenCase['inspection'],
  name: (personId: string) => string,
): Promise<Pick<InspectionView, 'reinspection'>> => {
  if (number === undefined) return {};
  const file = signed === undefined ? undefined : await reader.caseFile(reinspectionKey(number));
  const first = file?.kind === 'reinspection' ? await reader.inspection(file.first) : undefined;
  if (first?.signed === undefined) return { reinspection: { number } };
  const { by, on, verdict } = first.signed;
  return {
    reinspection: { number, first: { inspection: first.inspection, by: name(by), on, verdict } },
  };
};

/** Names by person ID; an ID without a person stands for itself. */
export const namesOf = async (reader: LedgerReader): Promise<(personId: string) => string> => {
  const names = new Map((await reader.people()).map((person) => [person.personId, person.name]));
  return (personId) => names.get(personId) ?? personId;
};

/** The record of a device over its life, out of the events that touch it. */

import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { BenchId } from '../../domain/brand.ts';
import { usersOf } from '../../domain/custody/users-of.ts';
import { dueDatesOf } from '../../domain/due/due-dates.ts';
import { programInForce } from '../../domain/program-in-force.ts';
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import { type DeviceRecordContent, deviceRecord } from '../../reports/device-record.ts';
import { namesPicture } from '../kept-pictures.ts';
import { deviceIn, stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { recordedLifeline } from '../recorded-lifeline.ts';
import { blindFault } from '../reinspections/blindness.ts';
import { namesOf } from '../views.ts';
import type { ComposeControl, Composition } from './compose-report.ts';
import { recordedCorrections } from './recorded-corrections.ts';
import { recordedHeldSteps } from './recorded-held-steps.ts';
import { eventsOfType, lastEventOf, namesThen, proofOf, reportDevice } from './report-device.ts';

/** More than a device can be handed out in its life. */
const everySpell = 1_000_000;

export const deviceComposition = async (
  context: OperationContext,
  benchId: BenchId,
  { words }: ComposeControl,
): Promise<Composition | Refusal> => {
  const found = await context.ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const row = await deviceIn(reader, benchId);
    if (isRefusal(row)) return row;
    const hidden = await blindFault(reader, row.device, context);
    if (hidden !== undefined) return hidden;
    const events = await reader.eventsOf(benchId);
    const corrections = await recordedCorrections(reader, context.rules, events);
    const lifeline = await recordedLifeline(reader, context.rules, benchId);
    if (isRefusal(lifeline)) return lifeline;
    const spells = await reader.custodySpells({ benchId, limit: everySpell, offset: 0 });
    const users = usersOf(spells);
    return {
      station,
      row,
      events,
      corrections,
      lifeline,
      users,
      nameOf: await namesOf(reader),
      nameThen: await namesThen(reader),
    };
  });
  if (isRefusal(found)) return found;
  const { station, row, events, corrections, lifeline, users, nameOf, nameThen } = found;
  const content: DeviceRecordContent = {
    station: station.name,
    at: context.now(),
    of: reportDevice(row, nameOf),
    due: dueDatesOf(row.device, row.modelSheet, programInForce(station, context.rules.shipped).program),
    users: users.map(({ userId, ...had }) => ({ ...had, name: nameOf(userId) })),
    examinations: eventsOfType(events, 'inspection.signed').map(({ event, on, by, seq }) => ({
      inspection: event.inspection,
      on,
      by: nameThen(by, seq),
      verdict: event.verdict,
      dueOn: event.dueOn,
      seq,
      isBlind: event.reinspection !== undefined,
    })),
    removals: eventsOfType(events, 'device.removed').map(({ event, on, by, seq }) => ({
      on,
      by: nameThen(by, seq),
      reasons: event.reasons,
      seq,
    })),
    heldSteps: recordedHeldSteps(events, context.rules.release, nameThen),
    lifeline: lifeline.filter(({ findings, readings }) => findings.length + readings.length > 0),
    corrections,
    pictures: events.filter(namesPicture).length,
    proof: await proofOf(context, lastEventOf(events)),
  };
  return {
    fileName: `device-${formatBenchId(benchId)}`,
    report: (widthMm) => deviceRecord(content, words, widthMm),
  };
};

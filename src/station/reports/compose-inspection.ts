/** The report of an inspection that has ended, out of the record. */
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { LifelineInspection } from '../../domain/lifeline/lifeline-inspection.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { inspectionReport } from '../../reports/inspection-report.ts';
import { caseIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { recordedLifeline } from '../recorded-lifeline.ts';
import { blindFault } from '../reinspections/blindness.ts';
import { namesOf } from '../views.ts';
import type { ComposeControl, Composition } from './compose-report.ts';
import { recordedCorrections } from './recorded-corrections.ts';

import { eventsOfType, namesThen, proofOf, reportDevice, signatureOf } from './report-device.ts';
import { type PictureToShow, reportPictures } from './report-pictures.ts';

/** Of one that was broken off, nothing but what is known now says when it was. */
const latestEvent = Number.POSITIVE_INFINITY;

export const inspectionComposition = async (
  context: OperationContext,
  number: number,
  { words }: ComposeControl,
): Promise<Composition | Refusal> => {
  const found = await context.ledger.read(async (reader) => {
    const open = await caseIn(reader, number, context.rules);
    if (isRefusal(open)) return open;
    const hidden = await blindFault(reader, open.device, context, number);
    if (hidden !== undefined) return hidden;
    const events = await reader.eventsOf(open.inspection.benchId);
    return {
      ...open,
      nameOf: await namesOf(reader),
      nameThen: await namesThen(reader),
      signed: await signatureOf(reader, events, open.row.device, number),
      corrections: await recordedCorrections(reader, context.rules, events, number),
      lifeline: await recordedLifeline(reader, context.rules, open.inspection.benchId),
      kept: eventsOfType(events, 'finding.picture-kept').filter(({ event }) => event.inspection === number),
    };
  });
  if (isRefusal(found)) return found;
  const { station, inspection, row, procedure, nameOf, nameThen, signed, lifeline, corrections, kept } =
    found;
  if (isRefusal(lifeline)) return lifeline;
  if (inspection.state === 'open')
    return refusal('inspection-not-ended', { inspection: number }, 'of.inspection');
  const toShow = ({ event, on }: (typeof kept)[number]): PictureToShow => {
    const check = procedure.checks.find(({ key }) => key === event.check);
    return { sha256: event.sha256, on, what: check?.title ?? { en: event.check, es: event.check } };
  };
  const content = {
    station: station.name,
    of: reportDevice(row, nameOf),
    inspection,
    procedure,
    program: signed?.event.program,
    nameOf: (personId: string) => nameThen(personId, signed?.signature.seq ?? latestEvent),
    signature: signed?.signature,
    lifeline: upTo(number, lifeline),
    corrections,
    ...(await reportPictures(context.evidence, kept.map(toShow), words)),
    proof: await proofOf(context, signed?.signature.seq),
  };
  return {
    fileName: `inspection-${number}-${formatBenchId(inspection.benchId)}`,
    report: (widthMm) => inspectionReport(content, words, widthMm),
  };
};

const mostEarlier = 4;

/** What an inspection saw along the lifeline, and the latest ones before it that saw anything. */
const upTo = (number: number, lifeline: readonly LifelineInspection[]): readonly LifelineInspection[] => [
  ...lifeline.filter(({ inspection }) => inspection === number),
  ...lifeline
    .filter((along) => along.inspection < number && along.findings.length + along.readings.length > 0)
    .slice(0, mostEarlier),
];

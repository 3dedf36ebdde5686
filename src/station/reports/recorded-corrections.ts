/** The corrections among the events of a device, with what they correct. */
import type { RecordedEvent } from '../../domain/event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { RecordedCorrection } from '../../reports/corrections.ts';
import { amendmentViews } from '../amendment-view.ts';
import type { Rules } from '../rules.ts';
import { eventsOfType } from './report-device.ts';

/** Oldest first; where an inspection is named, those of its answers, and those of the device since it began. */
export const recordedCorrections = async (
  reader: LedgerReader,
  rules: Rules,
  events: readonly RecordedEvent[],
  inspection?: number,
): Promise<readonly RecordedCorrection[]> => {
  const corrections: RecordedCorrection[] = [];
  const begun = eventsOfType(events, 'inspection.started').find(
    ({ event }) => event.inspection === inspection,
  );
  for (const { event, seq, on, by } of eventsOfType(events, 'record.amended')) {
    const isOfDevice = event.inspection === undefined && seq > (begun?.seq ?? 0);
    if (inspection !== undefined && event.inspection !== inspection && !isOfDevice) continue;
    const { amends, correction, because } = event;
    const [view] = await amendmentViews(reader, [{ seq, amends, on, by, correction, because }]);
    if (view === undefined) continue;
    const of =
      event.inspection === undefined || correction.field !== 'answer'
        ? undefined
        : {
            inspection: event.inspection,
            check: await checkOf(reader, rules, event.inspection, correction.check),
          };
    corrections.push({ ...view, of });
  }
  return corrections;
};

const checkOf = async (reader: LedgerReader, rules: Rules, number: number, key: string) => {
  const inspection = await reader.inspection(number);
  const procedure = inspection && rules.procedureOf(inspection.procedure);
  return procedure === undefined || isRefusal(procedure)
    ? undefined
    : procedure.checks.find((check) => check.key === key);
};

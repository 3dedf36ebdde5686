/** The corrections among the events of a device, with what they correct. */
import type { RecordedEvent } from '../../domain/event.ts';
import { isRefusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { RecordedCorrection } from '../../reports/corrections.ts';
import { amendmentViews } from '../amendment-view.ts';
import type { Rules } from '../rules.ts';
import { eventsOfType } from './report-device.ts';

/** Oldest first; only those of one inspection where one is named. */
export const recordedCorrections = async (
  reader: LedgerReader,
  rules: Rules,
  events: readonly RecordedEvent[],
  inspection?: number,
): Promise<readonly RecordedCorrection[]> => {
  const corrections: RecordedCorrection[] = [];
  for (const { event, seq, on, by } of eventsOfType(events, 'record.amended')) {
    if (inspection !== undefined && event.inspection !== inspection) continue;
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

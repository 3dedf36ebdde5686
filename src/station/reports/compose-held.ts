/** The lists of held devices, out of one consistent read: evidence, fall cases, return batches. */
import { isRefusal, type Refusal } from '../../domain/refusal.ts';
import type { DeviceRow, LedgerReader } from '../../ledger/ledger.ts';
import type { DataTable } from '../../reports/data-table.ts';
import {
  type EvidenceRow,
  evidenceTable,
  fallCaseTable,
  returnBatchTable,
} from '../../reports/held-tables.ts';
import { listReport } from '../../reports/list-report.ts';
import type { ReportWord } from '../../reports/report-words.ts';
import { stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { namesOf } from '../views.ts';
import type { ComposeControl, Composition } from './compose-report.ts';
import type { HeldList } from './held-lists.ts';

const devicesAtOnce = 500;
const fileNames: Record<HeldList, string> = {
  evidence: 'evidence',
  'fall cases': 'fall-cases',
  'return batches': 'return-batches',
};
const counted: Record<HeldList, ReportWord> = {
  evidence: 'heldEvidenceCount',
  'fall cases': 'fallCaseCount',
  'return batches': 'returnBatchCount',
};
const asked: Record<HeldList, ReportWord> = {
  evidence: 'askedHeldEvidence',
  'fall cases': 'askedFallCases',
  'return batches': 'askedReturnBatches',
};

export const heldComposition = async (
  context: OperationContext,
  list: HeldList,
  { words, signal }: ComposeControl,
): Promise<Composition | Refusal> => {
  const found = await context.ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const nameOf = await namesOf(reader);
    const table = async (): Promise<DataTable> => {
      switch (list) {
        case 'evidence':
          return evidenceTable(await evidenceRows(reader, context, signal), nameOf, words);
        case 'fall cases':
          return fallCaseTable(await reader.caseFiles('fall case'), nameOf, words);
        case 'return batches':
          return returnBatchTable(await reader.caseFiles('return batch'), words);
      }
    };
    return { station, data: await table() };
  });
  if (isRefusal(found)) return found;
  signal.throwIfAborted();
  const { station, data } = found;
  const { on, at } = context.occasion(station);
  const count = new Set(data.rows.map(([number]) => number)).size;
  return {
    fileName: `${fileNames[list]}-${on}`,
    data,
    report: (widthMm) =>
      listReport(
        data,
        {
          station: station.name,
          on,
          at,
          asked: [words.tell(asked[list])],
          counted: words.tell(counted[list], { count: list === 'evidence' ? data.rows.length : count }),
        },
        words,
        widthMm,
      ),
  };
};

const evidenceRows = async (
  reader: LedgerReader,
  { rules }: OperationContext,
  signal: AbortSignal,
): Promise<readonly EvidenceRow[]> => {
  const found: EvidenceRow[] = [];
  const rowsOf = ({ device }: DeviceRow): readonly EvidenceRow[] =>
    (device.evidence ?? []).map((entry) => {
      const kind = rules.release.kinds.find(({ key }) => key === entry.kind);
      const label = kind?.label ?? { en: entry.kind, es: entry.kind };
      return { ...entry, benchId: device.benchId, label, isStatement: kind?.how === 'statement' };
    });
  for (let offset = 0, more = true; more; offset += devicesAtOnce) {
    signal.throwIfAborted();
    const { rows } = await reader.devices({
      standing: ['quarantined', 'at manufacturer'],
      limit: devicesAtOnce,
      offset,
    });
    found.push(...rows.flatMap(rowsOf));
    more = rows.length === devicesAtOnce;
  }
  return found;
};

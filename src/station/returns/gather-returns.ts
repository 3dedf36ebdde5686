/** Everything in the record that a plan of returns is made of. */
import type { CalendarDate } from '../../domain/brand.ts';
import { serviceLifeEnd } from '../../domain/due/service-life-end.ts';
import { returnsBasisKey } from '../../domain/held/case-file.ts';
import { type MissingEvidence, missingEvidence } from '../../domain/held/missing-evidence.ts';
import { heldSince } from '../../domain/held/next-step.ts';
import type {
  RecordedDeviceQuote,
  RecordedRepairTerms,
  ReturnBatch,
} from '../../domain/held/return-batch.ts';
import { emptyReturnsBasis, type ReturnsBasis } from '../../domain/held/returns-basis.ts';
import type { DeviceRow, LedgerReader } from '../../ledger/ledger.ts';
import { programIn } from '../program-in.ts';
import type { Rules } from '../rules.ts';

export interface HeldRow extends DeviceRow {
  readonly missing: readonly MissingEvidence[];
  /** For this device itself, since it is held, and still valid. */
  readonly quote?: RecordedDeviceQuote | undefined;
}

export interface GatheredReturns {
  readonly today: CalendarDate;
  readonly basis: ReturnsBasis;
  /** Everything that is out of service and not scrapped. */
  readonly held: readonly HeldRow[];
  readonly terms: ReadonlyMap<string, RecordedRepairTerms>;
  readonly batches: readonly ReturnBatch[];
  /** By length, when the service life of each device in service ends; those written off as lost are none. */
  readonly inService: ReadonlyMap<number, readonly (CalendarDate | undefined)[]>;
}

/** As many devices as are read at a time. */
const pageSize = 2000;

export const gatherReturns = async (
  reader: LedgerReader,
  rules: Rules,
  today: CalendarDate,
): Promise<GatheredReturns> => {
  const program = await programIn(reader, rules);
  const basis = await reader.caseFile(returnsBasisKey);
  const terms = await reader.caseFiles('repair terms');
  const quotes = new Map((await reader.caseFiles('device quote')).map((each) => [each.benchId, each]));
  const held: HeldRow[] = [];
  const inService = new Map<number, (CalendarDate | undefined)[]>();
  let after: DeviceRow['device']['benchId'] | undefined;
  for (;;) {
    const rows = await reader.devicesAfter(after, pageSize);
    for (const row of rows) {
      const { device, modelSheet } = row;
      if (device.standing === 'quarantined' || device.standing === 'at manufacturer')
        held.push({
          ...row,
          missing: missingEvidence(device, { rules: rules.release, program }),
          quote: validQuote(quotes.get(device.benchId), heldSince(device), today),
        });
      else if (device.standing === 'in service' && device.custody?.lostOn === undefined) {
        const ofLength = inService.get(modelSheet.ratedLengthM) ?? [];
        ofLength.push(serviceLifeEnd(device, modelSheet));
        inService.set(modelSheet.ratedLengthM, ofLength);
      }
    }
    if (rows.length < pageSize) break;
    after = rows.at(-1)?.device.benchId;
  }
  return {
    today,
    basis: basis?.kind === 'returns basis' ? basis : emptyReturnsBasis,
    held,
    terms: new Map(terms.map((each) => [each.modelSheetId, each])),
    batches: await reader.caseFiles('return batch'),
    inService,
  };
};

/** One of an earlier time that it was held is no more than history. */
const validQuote = (
  quote: RecordedDeviceQuote | undefined,
  since: CalendarDate | undefined,
  today: CalendarDate,
): RecordedDeviceQuote | undefined => {
  const isOld = quote !== undefined && since !== undefined && quote.on < since;
  const isEnded = quote?.validUntil !== undefined && quote.validUntil < today;
  return isOld || isEnded ? undefined : quote;
};

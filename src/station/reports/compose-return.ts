/** The paperwork that goes with devices that are held to their manufacturer. */
import type { BenchId } from '../../domain/brand.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import type { ReturnAsk } from '../../reports/return-asks.ts';
import {
  type ReturnContent,
  type ReturnDeclaration,
  type ReturnedDevice,
  returnPaperwork,
  returnTable,
} from '../../reports/return-paperwork.ts';
import { deviceIn, stationIn } from '../lookup.ts';
import type { OperationContext } from '../operation.ts';
import { namesOf } from '../views.ts';
import type { ComposeControl, Composition } from './compose-report.ts';
import { pictureCountOf, reportDevice } from './report-device.ts';

interface ReturnRequest {
  readonly benchIds: readonly BenchId[];
  readonly ask: ReturnAsk;
  readonly batch?: number | undefined;
  readonly declaration?: ReturnDeclaration | undefined;
}

export const returnComposition = async (
  context: OperationContext,
  { benchIds, ask, batch, declaration }: ReturnRequest,
  { words }: ComposeControl,
): Promise<Composition | Refusal> => {
  const found = await context.ledger.read(async (reader) => {
    const station = await stationIn(reader);
    if (isRefusal(station)) return station;
    const devices = await heldDevices(reader, [...new Set(benchIds)]);
    return isRefusal(devices) ? devices : { station, devices };
  });
  if (isRefusal(found)) return found;
  const { station, devices } = found;
  const fault = faultOf(devices);
  if (fault !== undefined) return fault;
  const { on, at } = context.occasion(station);
  const manufacturer = devices[0]?.modelSheet.manufacturer ?? '';
  const contact = devices.map(({ modelSheet }) => modelSheet.manufacturerContact).find((each) => each);
  if (contact === undefined) return refusal('manufacturer-contact-missing', { manufacturer }, 'of.benchIds');
  const content: ReturnContent = {
    station: station.name,
    on,
    at,
    manufacturer,
    contact,
    ask,
    devices,
    ...(batch === undefined ? {} : { batch }),
    ...(declaration === undefined ? {} : { declaration }),
  };
  return {
    fileName: batch === undefined ? `return-${on}` : `return-batch-${batch}`,
    report: (widthMm) => returnPaperwork(content, words, widthMm),
    data: returnTable(content, words),
  };
};

const heldDevices = async (
  reader: LedgerReader,
  benchIds: readonly BenchId[],
): Promise<readonly ReturnedDevice[] | Refusal> => {
  const nameOf = await namesOf(reader);
  const devices: ReturnedDevice[] = [];
  for (const benchId of benchIds) {
    const row = await deviceIn(reader, benchId);
    if (isRefusal(row)) return row;
    devices.push({ ...reportDevice(row, nameOf), pictures: await pictureCountOf(reader, benchId) });
  }
  return devices;
};

/** Only what is out of service goes back, and to one manufacturer at a time. */
const faultOf = (devices: readonly ReturnedDevice[]): Refusal | undefined => {
  const free = devices.find(({ device }) => !['quarantined', 'at manufacturer'].includes(device.standing));
  if (free !== undefined) return refusal('device-not-held', { benchId: free.device.benchId }, 'of.benchIds');
  const makers = [...new Set(devices.map(({ modelSheet }) => modelSheet.manufacturer))];
  return makers.length > 1
    ? refusal('return-several-makers', { manufacturers: makers.join(', ') }, 'of.benchIds')
    : undefined;
};

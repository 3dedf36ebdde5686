/** Which quarantine tag of a device was scanned back in: by its symbol, whole and of this station, or by the number on it. */
import type { CalendarDate } from '../domain/brand.ts';
import { yearOf } from '../domain/calendar.ts';
import type { Device } from '../domain/device.ts';
import { judgeTag } from '../domain/judge-tag.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { readScan } from '../intake/read-scan.ts';
import type { LedgerReader } from '../ledger/ledger.ts';
import { stationIn } from './lookup.ts';
import { sealerIn } from './seal.ts';

/** The number of the tag; whether it is the one that belongs on the device is for the rules to say. */
export const quarantineTagIn = async (
  reader: LedgerReader,
  device: Device,
  text: string,
  today: CalendarDate,
): Promise<number | Refusal> => {
  const { benchId } = device;
  if (/^[1-9]\d{0,5}$/.test(text)) return Number(text);
  const scan = readScan(text, yearOf(today));
  const unreadable = refusal('release-tag-unreadable', { benchId }, 'tag');
  if (scan.kind !== 'tag' || scan.benchId !== benchId || scan.tag.kind !== 'quarantine') return unreadable;
  const station = await stationIn(reader);
  if (isRefusal(station)) return station;
  const sealer = await sealerIn(reader, station);
  const { state } = judgeTag(scan.tag, sealer.mark, sealer.seal(scan.tag).code, device);
  return state === 'altered' || state === 'not ours' ? unreadable : scan.tag.tagNumber;
};

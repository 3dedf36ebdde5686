/** What a scan means by the register: the device whose exact code it is, devices that it may mean, or nothing known. */
import { repairBenchId } from '../domain/bench-id/bench-id.ts';
import type { BenchId, CalendarDate } from '../domain/brand.ts';
import type { Station } from '../domain/evolve.ts';
import { judgeTag } from '../domain/judge-tag.ts';
import { type MarkingData, matchReference } from '../domain/marking-data.ts';
import type { Language } from '../domain/message.ts';
import type { TagText } from '../domain/tag-text.ts';
import { shown } from '../intake/control-characters.ts';
import type { Scan } from '../intake/read-scan.ts';
import type { DeviceRow, LedgerReader } from '../ledger/ledger.ts';
import { badgeHolder } from './badge.ts';
import { holdersOf } from './bound-code.ts';
import type { ScanMeaning } from './operations/scan-interpret.ts';
import { sealerIn } from './seal.ts';
import { sentenceOf } from './sentence.ts';
import { type DeviceSummary, deviceSummary } from './views.ts';

export interface Register {
  readonly reader: LedgerReader;
  readonly station: Station;
  readonly today: CalendarDate;
  readonly dueSoonDays: number;
  readonly language: Language;
}

export interface ScannedText {
  /** As it came, without surrounding space. */
  readonly scanned: string;
  readonly typed: boolean;
}

type Suggested = Extract<ScanMeaning, { meaning: 'suggestion' }>['devices'][number];

export const meaningOf = async (
  register: Register,
  scan: Scan,
  { scanned, typed }: ScannedText,
): Promise<ScanMeaning> => {
  switch (scan.kind) {
    case 'command':
      return { meaning: 'command', command: scan.command };
    case 'place':
      return { meaning: 'place', code: scan.code };
    case 'tag':
      return ofTag(register, scan.tag);
    case 'altered tag':
      return { meaning: 'worthless tag', state: 'altered' };
    case 'bench ID': {
      const device = await summaryOf(register, scan.benchId);
      return device === undefined
        ? { meaning: 'bench ID not registered', benchId: scan.benchId }
        : { meaning: 'device', device, by: 'bench ID' };
    }
    case 'marking data':
      return (await ofBadge(register, [scanned])) ?? ofMarkingData(register, scan.code, scan.data, scanned);
    case 'malformed': {
      const badge = await ofBadge(register, [scanned]);
      if (badge !== undefined) return badge;
      const [device] = await summariesOf(register, await holdersOf(register.reader, [scanned]));
      if (device !== undefined) return { meaning: 'device', device, by: 'other code' };
      const { code } = scan.fault;
      const sentence = sentenceOf(scan.fault, register.language);
      return { meaning: 'malformed', text: shown(scanned, 80), code, sentence };
    }
    case 'other':
      return (
        (await ofBadge(register, [scan.text, scanned])) ?? ofOtherText(register, scan.text, scanned, typed)
      );
  }
};

/** A device at most as a suggestion, whatever the text: what was weighed and not read acts on nothing by itself. */
export const meaningOfWornTag = async (
  register: Register,
  scan: Scan,
  scanned: string,
): Promise<ScanMeaning> => {
  const benchId =
    scan.kind === 'bench ID' ? scan.benchId : scan.kind === 'tag' ? scan.tag.benchId : undefined;
  if (benchId === undefined) return { meaning: 'unknown', text: shown(scanned, 80) };
  const device = await summaryOf(register, benchId);
  return device === undefined
    ? { meaning: 'bench ID not registered', benchId }
    : { meaning: 'suggestion', text: benchId, devices: suggested([device], 'worn tag') };
};

/** A badge is a badge whatever its text looks like, also one that signs nobody in any more: the sign-in says so. */
const ofBadge = async ({ reader }: Register, texts: readonly string[]): Promise<ScanMeaning | undefined> => {
  for (const text of new Set(texts)) {
    const held = await badgeHolder(reader, text);
    if (held !== undefined) return { meaning: 'badge', badge: text.trim(), name: held.person.name };
  }
  return undefined;
};

const summaryIn = ({ today, dueSoonDays }: Register, row: DeviceRow): DeviceSummary =>
  deviceSummary(row, today, dueSoonDays);

const summaryOf = async (register: Register, benchId: BenchId): Promise<DeviceSummary | undefined> => {
  const row = await register.reader.device(benchId);
  return row && summaryIn(register, row);
};

const summariesOf = async (
  register: Register,
  benchIds: readonly BenchId[],
): Promise<readonly DeviceSummary[]> => {
  const found = await Promise.all(benchIds.map((benchId) => summaryOf(register, benchId)));
  return found.filter((device) => device !== undefined);
};

const ofTag = async (register: Register, text: TagText): Promise<ScanMeaning> => {
  const sealer = await sealerIn(register.reader, register.station);
  const row = await register.reader.device(text.benchId);
  const tag = judgeTag(text, sealer.mark, sealer.seal(text).code, row?.device);
  return row === undefined || tag.state === 'altered' || tag.state === 'not ours'
    ? { meaning: 'worthless tag', state: tag.state === 'altered' ? 'altered' : 'not ours' }
    : { meaning: 'device', device: summaryIn(register, row), by: 'tag', tag };
};

/**
 * The device to which the code is bound; else the one device with this serial number whose model sheet has the maker's
 * reference of the code. Nothing is opened by a code that names only a model, or whose elements may have run together.
 */
const ofMarkingData = async (
  register: Register,
  code: string,
  data: MarkingData,
  scanned: string,
): Promise<ScanMeaning> => {
  const holders = await summariesOf(register, await holdersOf(register.reader, [code, scanned]));
  const [holder] = holders;
  if (holder !== undefined) {
    return holders.length === 1 && data.names !== 'its model'
      ? { meaning: 'device', device: holder, by: 'other code' }
      : { meaning: 'suggestion', text: code, devices: suggested(holders, 'other code'), data };
  }
  const rows = await rowsWithSerial(register, data);
  const sure = rows.filter(
    ({ device, modelSheet }) =>
      device.serial.trim() === data.identification.serial &&
      matchReference(data.identification, modelSheet.manufacturerReference) === 'same',
  );
  const [only] = sure;
  if (only !== undefined && sure.length === 1 && !data.separatorsMayBeLost) {
    return { meaning: 'device', device: summaryIn(register, only), by: 'serial number' };
  }
  return rows.length > 0
    ? {
        meaning: 'suggestion',
        text: code,
        devices: suggested(
          rows.map((row) => summaryIn(register, row)),
          'serial number',
        ),
        data,
      }
    : { meaning: 'unknown', text: code, data };
};

const suggested = (devices: readonly DeviceSummary[], because: Suggested['because']): Suggested[] =>
  devices.map((device) => ({ device, because }));

/** Without the devices whose model sheet has another GTIN than the code. */
const rowsWithSerial = async (
  { reader }: Register,
  { identification }: MarkingData,
): Promise<readonly DeviceRow[]> => {
  const { serial } = identification;
  if (serial === undefined) return [];
  const benchIds = await reader.devicesBySerial(serial);
  const rows = await Promise.all(benchIds.map((benchId) => reader.device(benchId)));
  return rows
    .filter((row) => row !== undefined)
    .filter(({ modelSheet }) => matchReference(identification, modelSheet.manufacturerReference) !== 'other');
};

/** Other code, serial number, and last, for typed text, a bench ID with unreadable or wrong characters. */
const ofOtherText = async (
  register: Register,
  text: string,
  scanned: string,
  typed: boolean,
): Promise<ScanMeaning> => {
  const { reader } = register;
  const holders = await summariesOf(register, await holdersOf(reader, [text, scanned]));
  const [holder] = holders;
  if (holder !== undefined) {
    return holders.length === 1
      ? { meaning: 'device', device: holder, by: 'other code' }
      : { meaning: 'suggestion', text, devices: suggested(holders, 'other code') };
  }
  const bySerial = await summariesOf(register, await reader.devicesBySerial(text));
  const repaired = typed ? repairBenchId(text) : undefined;
  const byRepair = repaired?.kind === 'suggestion' ? await summariesOf(register, [repaired.id]) : [];
  const devices = [...suggested(bySerial, 'serial number'), ...suggested(byRepair, 'repaired bench ID')];
  return devices.length > 0 ? { meaning: 'suggestion', text, devices } : { meaning: 'unknown', text };
};

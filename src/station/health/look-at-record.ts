/** What is looked at in an open record, and in what its settings name: disk, backups, checkpoints, clock, printers, scanner. */
import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { dateInZone } from '../../domain/calendar.ts';
import type { Station } from '../../domain/evolve.ts';
import { type Finding, finding } from '../../domain/health/finding.ts';
import { judgeClock } from '../../domain/health/judge-clock.ts';
import { judgePrinters, judgeScanner, type PrinterLook } from '../../domain/health/judge-devices.ts';
import {
  type Backups,
  judgeBackups,
  judgeCheckpoints,
  type KeptElsewhere,
} from '../../domain/health/judge-keeping.ts';
import { judgeRecord } from '../../domain/health/judge-record.ts';
import { judgeDisk } from '../../domain/health/judge-storage.ts';
import { backupState } from '../../domain/keeping.ts';
import { ledgerFileName } from '../../ledger/sqlite/sqlite-ledger.ts';
import { openDestination } from '../../printing/open-destination.ts';
import { backupFolderFault, isOnSameDisk } from '../keeping/backup-folder.ts';
import { type PrinterView, printerViews } from '../printer-view.ts';
import { sentenceOf } from '../sentence.ts';
import type { Look, RecordSources } from './look.ts';
import { freeBytesAt, sizeOf } from './look-at-place.ts';
import { offsetMinutes, zoneOfPc } from './zone.ts';

const quickMs = 5_000;
/** A million events take two seconds on a quiet machine. */
const recordMs = 60_000;
const printerMs = 8_000;

const stationOf = ({ ledger }: RecordSources): Promise<Station | undefined> =>
  ledger.read((reader) => reader.station());

/** When the first and the last event were recorded. */
const recordedSpan = async ({ ledger }: RecordSources) =>
  ledger.read(async (reader) => {
    const size = await reader.size();
    const [first, last] = [await reader.event(1), await reader.event(size)];
    return { size, firstAt: first?.at, lastAt: last?.at };
  });

export const looksAtRecord: readonly Look<RecordSources>[] = [
  {
    subject: 'disk',
    limitMs: quickMs,
    look: async (sources) => {
      const { folder, evidence } = sources;
      const { firstAt, lastAt } = await recordedSpan(sources);
      const pictures = await evidence.size();
      const recordBytes = ((await sizeOf(join(folder, ledgerFileName))) ?? 0) + pictures.bytes;
      const spanMs = Date.parse(lastAt ?? '') - Date.parse(firstAt ?? '');
      const recordDays = Number.isNaN(spanMs) ? 0 : spanMs / 86_400_000;
      return [judgeDisk({ freeBytes: await freeBytesAt(folder), recordBytes, recordDays })];
    },
  },
  {
    subject: 'record',
    limitMs: recordMs,
    look: async (sources, signal) => {
      const { ledger, notes, now } = sources;
      const { head, checkpoints, faults } = await ledger.verify({ extent: 'events', signal });
      const { verified } = await notes.read();
      return judgeRecord({
        now: now(),
        events: head.size,
        checkpoints,
        faults: faults.length,
        lastWhole: verified,
      });
    },
  },
  {
    subject: 'checkpoints',
    limitMs: quickMs,
    look: async (sources) => {
      const folder = (await stationOf(sources))?.keeping?.checkpointFolder;
      return [judgeCheckpoints({ now: sources.now(), ...(await keptElsewhere(folder)) })];
    },
  },
  {
    subject: 'backups',
    limitMs: quickMs,
    look: async (sources) => {
      const station = await stationOf(sources);
      if (station === undefined) return [finding('backups', 'not known', 'no-station-yet')];
      return judgeBackups(await backupsOf(station, sources));
    },
  },
  {
    subject: 'clock',
    limitMs: quickMs,
    look: async (sources) => {
      const { now, notes, clockWatch } = sources;
      clockWatch.look();
      const station = await stationOf(sources);
      const zone = zoneOfPc();
      const at = now();
      const { zoneBefore } = await notes.read();
      return judgeClock({
        now: at,
        recordedAt: (await recordedSpan(sources)).lastAt,
        jumps: clockWatch.jumps,
        zone,
        ...(zoneBefore === undefined ? {} : { zoneBefore }),
        ...(station === undefined
          ? {}
          : {
              station: {
                zone: station.timeZone,
                offsetMinutes: offsetMinutes(station.timeZone, at),
                pcOffsetMinutes: offsetMinutes(zone, at),
              },
            }),
      });
    },
  },
  {
    subject: 'printers',
    limitMs: 2 * printerMs,
    look: async (sources) => {
      const station = await stationOf(sources);
      const printers = station === undefined ? [] : printerViews(station);
      const looks = printers.map((printer) => printerLook(printer, sources));
      return judgePrinters(await Promise.all(looks));
    },
  },
  {
    subject: 'scanner',
    limitMs: quickMs,
    look: async (sources) => [judgeScanner((await stationOf(sources))?.scanner)],
  },
];

const keptElsewhere = async (folder: string | undefined): Promise<Pick<KeptElsewhere, 'folder'>> => {
  if (folder === undefined) return {};
  if ((await backupFolderFault(folder)) !== undefined) return { folder: { isThere: false, path: folder } };
  const names = (await readdir(folder)).filter((name) => name.endsWith('.checkpoint'));
  const times = await Promise.all(
    names.map(async (name) => (await stat(join(folder, name))).mtime.toISOString()),
  );
  const writtenAt = times.toSorted().at(-1);
  return { folder: { isThere: true, ...(writtenAt === undefined ? {} : { writtenAt }) } };
};

const backupsOf = async (station: Station, { folder, now }: RecordSources): Promise<Backups> => {
  const { keeping, lastBackup } = station;
  const state = backupState(station, dateInZone(now(), station.timeZone));
  const last = lastBackup === undefined ? {} : { lastAt: lastBackup.at, lastBytes: lastBackup.bytes };
  const backups = { now: now(), state, ...last };
  if (keeping === undefined) return backups;
  const path = keeping.backupFolder;
  if ((await backupFolderFault(path)) !== undefined) return { ...backups, folder: { isThere: false, path } };
  const isSame = await isOnSameDisk(path, folder);
  return {
    ...backups,
    folder: { isThere: true, isOnSameDisk: isSame, freeBytes: await freeBytesAt(path) },
  };
};

/** A printer that does not answer in time is told as such, and the others by themselves. */
const printerLook = async ({ settings }: PrinterView, { language }: RecordSources): Promise<PrinterLook> => {
  const { name } = settings;
  const asked = (async (): Promise<PrinterLook> => {
    const destination = await openDestination(settings);
    const { condition, problem } = await destination.check();
    const why =
      problem === undefined ? undefined : { code: problem.code, sentence: sentenceOf(problem, language) };
    return { name, condition, ...(why === undefined ? {} : { problem: why }) };
  })();
  return Promise.race([asked, silence(name)]);
};

const silence = (name: string): Promise<PrinterLook> =>
  new Promise((resolve) => {
    setTimeout(() => resolve({ name, condition: 'no answer' }), printerMs).unref();
  });

/** Why the others cannot be told where the record could not be opened. */
export const withoutRecord = (): readonly Finding[] =>
  looksAtRecord
    .filter(({ subject }) => subject !== 'record')
    .map(({ subject }) => finding(subject, 'not known', 'no-record'));

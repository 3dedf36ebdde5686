/** How the record is kept safe: where it is backed up by itself, how much of that stays, and when it last succeeded. */
import { z } from 'zod';
import { type CalendarDate, calendarDateSchema, type instantSchema } from './brand.ts';
import { daysBetween } from './calendar.ts';
import { grouped } from './grouped.ts';

export const keepingSchema = z.object({
  /** Absolute; on another disk than the record, if it is to be worth anything. */
  backupFolder: z.string(),
  /** The newest backup of each of so many days stays, then that of each of so many months. */
  keepDays: z.int().min(1).max(366),
  keepMonths: z.int().min(0).max(120),
  /** Absolute: where a checkpoint is written on every day, apart from the record and the backups. */
  checkpointFolder: z.string().optional(),
});
export type Keeping = z.infer<typeof keepingSchema>;

/** The head of a record: how many events, and the RFC 6962 root hash over them in hex. */
export const recordHeadSchema = z.object({ size: z.int().nonnegative(), rootHash: z.string() });

export const backupMadeSchema = z.object({
  /** Without its folder, which may be another one by the time it is wanted. */
  fileName: z.string(),
  bytes: z.int().positive(),
  /** Of the file, in hex. */
  sha256: z.string(),
  record: recordHeadSchema,
  pictures: z.int().nonnegative(),
});
export type BackupMade = z.infer<typeof backupMadeSchema>;

/** What the station knows of its keeping; the moments are those of the events. */
export interface StationKeeping {
  readonly keeping?: Keeping & { readonly since: CalendarDate };
  readonly lastBackup?: BackupMade & {
    readonly on: CalendarDate;
    readonly at: z.infer<typeof instantSchema>;
  };
}

/** After so many days without a backup the station says so wherever it is opened. Common practice, no source. */
export const backupOverdueDays = 3;

/** Once on every calendar day. */
export const isBackupDue = ({ keeping, lastBackup }: StationKeeping, today: CalendarDate): boolean =>
  keeping !== undefined && lastBackup?.on !== today;

export const backupStateSchema = z.enum(['not set up', 'kept', 'overdue']);
export type BackupState = z.infer<typeof backupStateSchema>;

export const backupState = ({ keeping, lastBackup }: StationKeeping, today: CalendarDate): BackupState => {
  if (keeping === undefined) return 'not set up';
  const last = lastBackup === undefined || lastBackup.on < keeping.since ? keeping.since : lastBackup.on;
  return daysBetween(last, today) >= backupOverdueDays ? 'overdue' : 'kept';
};

/** A backup in the folder, by its name alone. */
export interface BackupFile {
  readonly fileName: string;
  /** Its day in UTC. */
  readonly on: CalendarDate;
  /** Its moment in UTC, in the order in which text is. */
  readonly moment: string;
}

/** `stationMark` is of small letters and digits; the moment is to the second. */
export const backupFileName = (stationMark: string, at: z.infer<typeof instantSchema>): string =>
  `srl-bench-${stationMark}-${at.slice(0, 19).replaceAll(/[-:]/g, '')}Z.zip`;

/** `undefined` where the name is not that of a backup of this station. */
export const readBackupFileName = (stationMark: string, fileName: string): BackupFile | undefined => {
  const found = /^srl-bench-([0-9a-z]+)-(\d{4})(\d{2})(\d{2})T(\d{6})Z\.zip$/.exec(fileName);
  if (found === null || found[1] !== stationMark) return undefined;
  const [, , year, month, day, time] = found;
  const on = calendarDateSchema.safeParse(`${year}-${month}-${day}`);
  return on.success ? { fileName, on: on.data, moment: `${on.data}T${time}` } : undefined;
};

/**
 * The backups that are no longer kept: neither the newest of one of the newest `keepDays` days that have one, nor the
 * newest of one of the newest `keepMonths` months that have one. Days without a backup count for nothing, so that a pause
 * loses none.
 */
export const supersededBackups = (
  backups: readonly BackupFile[],
  { keepDays, keepMonths }: Keeping,
): readonly BackupFile[] => {
  const newestFirst = backups.toSorted((a, b) => (a.moment < b.moment ? 1 : -1));
  const firstOfEach = (key: (backup: BackupFile) => string, count: number): readonly BackupFile[] =>
    [...grouped(newestFirst, key).values()].slice(0, count).flatMap((group) => group.slice(0, 1));
  const kept = new Set([
    ...firstOfEach(({ on }) => on, keepDays),
    ...firstOfEach(({ on }) => on.slice(0, 7), keepMonths),
  ]);
  return newestFirst.filter((backup) => !kept.has(backup));
};

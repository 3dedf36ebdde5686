/** Keeps the record of a running station safe: backups on demand and by themselves, and restores that wait for a decision. */
import type { CalendarDate, Instant } from '../../domain/brand.ts';
import { isBackupDue } from '../../domain/keeping.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { WorkJobs } from '../work-jobs.ts';
import { writeCheckpointTo } from '../write-checkpoint.ts';
import { backupFolderFault } from './backup-folder.ts';
import type { BackupOutcome, BackupRequest } from './make-backup.ts';
import type { PreparedRestore, RestoreSource } from './prepare-restore.ts';

/** What went wrong at the last try, until one succeeds. */
export interface KeepingTrouble {
  readonly at: Instant;
  readonly refusal: Refusal;
}

/** A backup that failed by itself is tried again after this. */
const retryMs = 3_600_000;

export class Keeper {
  readonly backups: WorkJobs<BackupOutcome>;
  readonly restores: WorkJobs<PreparedRestore>;
  #trouble: KeepingTrouble | undefined;
  #isMakingBackup = false;
  /** The day of the last checkpoint that was written by itself since the station was opened. */
  #checkpointOn: CalendarDate | undefined;

  /** `onFault` as for any long work; `begins` gives what is told of each of a kind. */
  constructor(
    onFault: (error: unknown, operation: string) => Promise<Refusal>,
    begins: (kind: 'backup' | 'restore') => (ended: Promise<void>) => void,
  ) {
    this.backups = new WorkJobs(5, (error) => onFault(error, 'backup.make'), begins('backup'));
    this.restores = new WorkJobs(3, (error) => onFault(error, 'restore.open'), begins('restore'));
  }

  get trouble(): KeepingTrouble | undefined {
    return this.#trouble;
  }

  /** The number of the job; one backup at a time. */
  startBackup(request: BackupRequest, now: Instant): number | Refusal {
    if (this.#isMakingBackup) return refusal('backup-under-way');
    this.#isMakingBackup = true;
    return this.backups.start(async (control) => {
      try {
        const { makeBackup } = await import('./make-backup.ts');
        const outcome = await makeBackup(request, control);
        if (!isRefusal(outcome)) this.#trouble = undefined;
        else if (!control.signal.aborted) this.#trouble = { at: now, refusal: outcome };
        return outcome;
      } finally {
        this.#isMakingBackup = false;
      }
    });
  }

  startRestore(source: RestoreSource): number {
    return this.restores.start(async (control) => {
      const { prepareRestore } = await import('./prepare-restore.ts');
      return prepareRestore(source, control);
    });
  }

  /** Makes the backup and writes the checkpoint of the day where they are due, and not straight after a try that failed. */
  async keep(request: BackupRequest, now: Instant): Promise<void> {
    const station = await request.ledger.read((reader) => reader.station());
    if (station?.keeping === undefined) return;
    const today = request.occasion(station).on;
    const last = this.#trouble?.at;
    if (last !== undefined && Date.parse(now) - Date.parse(last) < retryMs) return;
    if (isBackupDue(station, today)) {
      const job = this.startBackup(request, now);
      if (!isRefusal(job)) await this.backups.ended(job);
    }
    const { checkpointFolder } = station.keeping;
    if (checkpointFolder === undefined || this.#checkpointOn === today) return;
    const fault = await writeDailyCheckpoint(request.ledger, checkpointFolder);
    if (fault === undefined) this.#checkpointOn = today;
    else this.#trouble = { at: now, refusal: fault };
  }

  async close(): Promise<void> {
    await this.backups.close();
    await this.restores.close();
  }
}

const writeDailyCheckpoint = async (ledger: Ledger, folder: string): Promise<Refusal | undefined> => {
  const written = (await backupFolderFault(folder)) ?? (await writeCheckpointTo(ledger, folder));
  return isRefusal(written) ? written : undefined;
};

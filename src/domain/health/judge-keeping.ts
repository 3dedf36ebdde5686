/** What is kept apart from the record: its backups, and the checkpoints that prove it later. */
import type { BackupState } from '../keeping.ts';
import { daysBetweenMoments } from './days.ts';
import { type Finding, finding } from './finding.ts';
import { megabytes } from './judge-machine.ts';
import { thresholds } from './thresholds.ts';

export interface Backups {
  readonly now: string;
  readonly state: BackupState;
  readonly lastAt?: string | undefined;
  readonly lastBytes?: number | undefined;
  readonly folder?:
    | { readonly isThere: false; readonly path: string }
    | { readonly isThere: true; readonly isOnSameDisk: boolean; readonly freeBytes: number };
}

export const judgeBackups = (measured: Backups): readonly Finding[] => {
  const { now, state, lastAt, lastBytes, folder } = measured;
  if (state === 'not set up' || folder === undefined)
    return [finding('backups', 'attention', 'backups-not-set-up')];
  if (!folder.isThere)
    return [finding('backups', 'wrong', 'backup-folder-missing', { folder: { private: folder.path } })];
  const room = lastBytes === undefined ? undefined : folder.freeBytes / lastBytes;
  const values = { megabytes: megabytes(folder.freeBytes) };
  const findings: readonly Finding[] = [
    ...(state === 'overdue' ? [overdue(now, lastAt)] : []),
    ...(room !== undefined && room < thresholds.backups.attentionBelow
      ? [
          finding(
            'backups',
            room < thresholds.backups.wrongBelow ? 'wrong' : 'attention',
            'backup-room-short',
            values,
          ),
        ]
      : []),
    ...(folder.isOnSameDisk ? [finding('backups', 'attention', 'backup-same-disk')] : []),
  ];
  if (findings.length > 0) return findings;
  return [
    lastAt === undefined
      ? finding('backups', 'good', 'backup-first-to-come')
      : finding('backups', 'good', 'backup-good', { days: daysBetweenMoments(lastAt, now) }),
  ];
};

const overdue = (now: string, lastAt: string | undefined): Finding =>
  lastAt === undefined
    ? finding('backups', 'wrong', 'backup-never')
    : finding('backups', 'wrong', 'backup-overdue', { days: daysBetweenMoments(lastAt, now) });

export interface KeptElsewhere {
  readonly now: string;
  /** Absent where no folder was chosen. */
  readonly folder?:
    | { readonly isThere: false; readonly path: string }
    /** When the last checkpoint was written there; absent where there is none yet. */
    | { readonly isThere: true; readonly writtenAt?: string | undefined };
}

export const judgeCheckpoints = ({ now, folder }: KeptElsewhere): Finding => {
  if (folder === undefined) return finding('checkpoints', 'attention', 'checkpoint-nowhere');
  if (!folder.isThere)
    return finding('checkpoints', 'wrong', 'checkpoint-folder-missing', { folder: { private: folder.path } });
  if (folder.writtenAt === undefined) return finding('checkpoints', 'attention', 'checkpoint-none-yet');
  const days = Math.max(0, daysBetweenMoments(folder.writtenAt, now));
  return days > thresholds.checkpointAttentionDays
    ? finding('checkpoints', 'attention', 'checkpoint-old', { days })
    : finding('checkpoints', 'good', 'checkpoint-kept', { days });
};

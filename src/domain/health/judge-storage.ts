/** Where the record lies: whether its folder can be written, how much room is left, and how large SQLite's log is. */
import { type Finding, finding } from './finding.ts';
import { megabytes } from './judge-machine.ts';
import { thresholds } from './thresholds.ts';

export type FolderState = 'writable' | 'not there' | 'no station' | 'not writable' | 'full';

export interface DataFolder {
  readonly folder: string;
  readonly state: FolderState;
  /** Of SQLite's log beside the record. */
  readonly logBytes?: number | undefined;
  /** The folder of the pictures, where it is there or was never needed. */
  readonly areEvidenceFilesReachable: boolean;
}

const ofState = {
  'not there': ['wrong', 'folder-missing'],
  'no station': ['attention', 'folder-empty'],
  'not writable': ['wrong', 'folder-not-writable'],
  full: ['wrong', 'folder-full'],
} as const;

export const judgeDataFolder = (measured: DataFolder): readonly Finding[] => {
  const { state, logBytes = 0, areEvidenceFilesReachable } = measured;
  const values = { folder: { private: measured.folder } };
  if (state !== 'writable') {
    const [gravity, says] = ofState[state];
    return [finding('data folder', gravity, says, values)];
  }
  const findings = [
    ...(areEvidenceFilesReachable ? [] : [finding('data folder', 'wrong', 'evidence-missing', values)]),
    ...(logBytes > thresholds.logFileAttentionBytes
      ? [finding('data folder', 'attention', 'log-large', { megabytes: megabytes(logBytes) })]
      : []),
  ];
  return findings.length > 0 ? findings : [finding('data folder', 'good', 'folder-good', values)];
};

export interface Disk {
  readonly freeBytes: number;
  /** Of the record, and for how many days it grew to that. */
  readonly recordBytes: number;
  readonly recordDays: number;
}

export const judgeDisk = ({ freeBytes, recordBytes, recordDays }: Disk): Finding => {
  const { disk } = thresholds;
  const bytesPerDay = Math.max(disk.leastBytesPerDay, recordBytes / Math.max(1, recordDays));
  const days = Math.floor(freeBytes / bytesPerDay);
  const values = { megabytes: megabytes(freeBytes), days };
  if (freeBytes < disk.wrongBelowBytes || days < disk.wrongBelowDays)
    return finding('disk', 'wrong', 'disk-nearly-full', values);
  return freeBytes < disk.attentionBelowBytes || days < disk.attentionBelowDays
    ? finding('disk', 'attention', 'disk-short', values)
    : finding('disk', 'good', 'disk-good', values);
};

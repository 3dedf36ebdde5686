/** The rules of keeping the record safe. */
import type { Station } from '../evolve.ts';
import type { BackupMade, Keeping } from '../keeping.ts';
import { type Refusal, refusal } from '../refusal.ts';
import type { Decision } from './decision.ts';

/** `undefined`: backups go nowhere any more. */
export const decideSetKeeping = (keeping: Keeping | undefined): Decision => [
  { type: 'keeping.set', ...(keeping === undefined ? {} : { keeping }) },
];

export const decideBackupMade = (backup: BackupMade): Decision => [{ type: 'backup.made', backup }];

/** A record takes the place of none, or of one of the same station; that of another station is never overwritten. */
export const decideRestore = (
  here: Pick<Station, 'stationId' | 'name'> | undefined,
  backup: Pick<Station, 'stationId' | 'name'>,
): Refusal | undefined =>
  here === undefined || here.stationId === backup.stationId
    ? undefined
    : refusal('restore-other-station', { backup: backup.name, station: here.name }, 'file');

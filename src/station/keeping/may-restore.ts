/** Who may restore a backup: an administrator; anyone where there is no station yet. */
import { type Refusal, refusal } from '../../domain/refusal.ts';
import type { OperationContext } from '../operation.ts';

export const restoreDenial = async ({ ledger, person }: OperationContext): Promise<Refusal | undefined> => {
  if ((await ledger.read((reader) => reader.station())) === undefined) return undefined;
  if (person === undefined) return refusal('sign-in-needed');
  return person.roles.includes('administrator')
    ? undefined
    : refusal('role-needed', { roles: 'administrator' });
};

/** `restore.run`: puts an opened backup in the place of the record that is here, which is set aside. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import { restoreDenial } from '../keeping/may-restore.ts';
import { defineOperation } from '../operation.ts';

export const restoreRun = defineOperation({
  name: 'restore.run',
  summary: 'Puts an opened backup in the place of the record that is here, which is set aside.',
  kind: 'command',
  access: 'anyone',
  input: z.object({
    job: z.number().int().positive(),
    /** Of the administrator; absent where there is no station yet. */
    pin: z.string().max(40).optional(),
  }),
  /** Everybody is signed out. Absent where nothing was here: the folder of the data folder in which the former record lies. */
  output: z.object({ aside: z.string().optional() }),
  run: async (context, { job, pin }) => {
    const denied = await restoreDenial(context);
    if (denied !== undefined) return denied;
    const state = context.keeper.restores.stateOf(job);
    if (state?.state !== 'done') return refusal('restore-job-not-known', { job }, 'job');
    const { prepared, fileName, record, comparison } = state.outcome;
    const { rootHash } = await context.ledger.head();
    if (comparison !== undefined && comparison.here.rootHash !== rootHash) return refusal('restore-outdated');
    const { person } = context;
    if (comparison !== undefined && person !== undefined) {
      const wrongPin = await context.pins.check(person, pin ?? '', context.now());
      if (wrongPin !== undefined) return wrongPin;
    }
    const aside = `replaced-${context.now().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
    const replaced =
      comparison === undefined ? {} : { replaced: { ...comparison.here, same: comparison.same } };
    context.restoreAfterwards({
      plan: { prepared, aside },
      restored: { type: 'record.restored', fileName, record, ...replaced },
      by: person?.personId ?? 'station',
    });
    return comparison === undefined ? {} : { aside };
  },
});

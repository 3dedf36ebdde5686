/** `restore.run`: puts an opened backup in the place of the record that is here, which is set aside. */
import { z } from 'zod';
import { refusal } from '../../domain/refusal.ts';
import type { Ledger, TreeHead } from '../../ledger/ledger.ts';
import { restoreDenial } from '../keeping/may-restore.ts';
import { defineOperation } from '../operation.ts';

export const restoreRun = defineOperation({
  name: 'restore.run',
  summary: 'Puts an opened backup in the place of the record that is here, which is set aside.',
  kind: 'command',
  access: 'anyone',
  input: z.object({
    job: z.int().positive(),
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
    if (comparison !== undefined && !(await isAsCompared(context.ledger, comparison.here)))
      return refusal('restore-outdated');
    const { person } = context;
    if (comparison !== undefined && person !== undefined) {
      const wrongPin = await context.pins.check(person, pin ?? '', context.now());
      if (wrongPin !== undefined) return wrongPin;
    }
    const aside = `replaced-${context.now().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
    const replaced =
      comparison === undefined
        ? {}
        : { replaced: { ...(await context.ledger.head()), same: comparison.same } };
    context.restoreAfterwards({
      plan: { prepared, aside },
      restored: { type: 'record.restored', fileName, record, ...replaced },
      by: person?.personId ?? 'station',
    });
    return comparison === undefined ? {} : { aside };
  },
});

/** Wrong PINs of whoever is about to restore are recorded too, and are the one thing that may have come since. */
const isAsCompared = async (ledger: Ledger, compared: TreeHead): Promise<boolean> => {
  const { size, rootHash } = await ledger.head();
  if (size === compared.size) return rootHash === compared.rootHash;
  return (
    size > compared.size &&
    ledger.read(async (reader) => {
      for (let seq = compared.size + 1; seq <= size; seq += 1)
        if ((await reader.event(seq))?.event.type !== 'person.pin-refused') return false;
      return true;
    })
  );
};

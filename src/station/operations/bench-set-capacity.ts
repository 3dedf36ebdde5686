/** `bench.set-capacity`: says what the bench can take in hand from now on; the plan follows. */
import { z } from 'zod';
import { benchCapacitySchema } from '../../domain/bench-capacity.ts';
import { decideSetBenchCapacity } from '../../domain/decide/bench-capacity.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';

export const benchSetCapacity = defineOperation({
  name: 'bench.set-capacity',
  summary: 'Says what the bench can take in hand from now on; the plan follows.',
  kind: 'command',
  access: ['administrator'],
  input: z.object({ capacity: benchCapacitySchema }),
  output: z.object({}),
  run: async (context, { capacity }) => {
    const result = await record(context, async () => decideSetBenchCapacity(capacity));
    return isRefusal(result) ? result : {};
  },
});

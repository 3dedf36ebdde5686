/** `bench.capacity`: what the bench can take in hand. */
import { z } from 'zod';
import { assumedBenchCapacity, benchCapacitySchema } from '../../domain/bench-capacity.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { stationIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const benchCapacityOperation = defineOperation({
  name: 'bench.capacity',
  summary: 'What the bench can take in hand: hours of each weekday, minutes of an inspection, closed days.',
  kind: 'query',
  access: everyRole,
  input: z.object({}),
  output: z.object({
    capacity: benchCapacitySchema,
    /** False while no administrator has said it; then it is what is assumed. */
    isSet: z.boolean(),
  }),
  run: (context) =>
    context.ledger.read(async (reader) => {
      const station = await stationIn(reader);
      if (isRefusal(station)) return station;
      const { benchCapacity } = station;
      return { capacity: benchCapacity ?? assumedBenchCapacity, isSet: benchCapacity !== undefined };
    }),
});

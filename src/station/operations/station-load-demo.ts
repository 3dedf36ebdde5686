/** `station.load-demo`: fills an empty data folder with the invented depot, Harrow Point. */
import { z } from 'zod';
import { isRefusal } from '../../domain/refusal.ts';
import { defineOperation } from '../operation.ts';

export const stationLoadDemo = defineOperation({
  name: 'station.load-demo',
  summary: 'Fills an empty data folder with the invented depot, Harrow Point.',
  kind: 'command',
  access: 'anyone',
  input: z.object({}),
  output: z.object({ events: z.int() }),
  run: async (context) => {
    const { loadDemo } = await import('../demo/load-demo.ts');
    const events = await loadDemo(
      context.ledger,
      context.evidence,
      context.rules,
      context.productFolder,
      context.now(),
    );
    return isRefusal(events) ? events : { events };
  },
});

/** `fall-case.open`: opens the case of a fall or impact of a held device; what was in the same system is held too. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideOpenFallCase } from '../../domain/decide/held/fall-case.ts';
import { fallFactsSchema } from '../../domain/held/fall-case.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { foundSoFar } from '../found-so-far.ts';
import { fallCaseViewSchema } from '../held-view.ts';
import { deviceIn, namedPersonFault } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { record } from '../record.ts';
import { showFallCase } from '../show-fall-case.ts';

export const fallCaseOpen = defineOperation({
  name: 'fall-case.open',
  summary: 'Opens the case of a fall or impact of a held device.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: z.object({
    benchId: benchIdSchema,
    facts: fallFactsSchema.default({}),
    /** Devices that were in the same system. */
    linked: z.array(benchIdSchema).max(20).default([]),
  }),
  output: z.object({ fallCase: fallCaseViewSchema }),
  run: async (context, { benchId, facts, linked }) => {
    let fallCase = 0;
    const result = await record(context, async (reader, occasion) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const unknown = await namedPersonFault(reader, facts.userId, 'facts.userId');
      if (unknown !== undefined) return unknown;
      const others = [];
      for (const id of new Set(linked)) {
        const other = await deviceIn(reader, id);
        if (isRefusal(other)) return other;
        const found = await foundSoFar(reader, other.device.openInspection, context.rules);
        if (isRefusal(found)) return found;
        others.push({ device: other.device, found });
      }
      fallCase = await reader.nextCaseFileNumber('fall case');
      return decideOpenFallCase(row.device, { fallCase, facts, linked: others }, occasion);
    });
    return isRefusal(result) ? result : showFallCase(context, fallCase);
  },
});

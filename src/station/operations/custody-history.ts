/** `custody.history`: every time that a device was out, or that a user had one. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { isRefusal } from '../../domain/refusal.ts';
import { spellViewSchema, spellViews } from '../custody-view.ts';
import { deviceIn, personIn } from '../lookup.ts';
import { defineOperation, everyRole } from '../operation.ts';

const page = {
  limit: z.int().min(1).max(500).default(100),
  offset: z.int().min(0).default(0),
};

export const custodyHistory = defineOperation({
  name: 'custody.history',
  summary: 'Every time that a device was out, or that a user had one.',
  kind: 'query',
  access: everyRole,
  input: z.union([
    z.strictObject({ benchId: benchIdSchema, ...page }),
    z.strictObject({ userId: z.string(), ...page }),
  ]),
  /** The latest first. */
  output: z.object({ spells: z.array(spellViewSchema) }),
  run: ({ ledger }, query) =>
    ledger.read(async (reader) => {
      const known =
        'benchId' in query ? await deviceIn(reader, query.benchId) : await personIn(reader, query.userId);
      if (isRefusal(known)) return known;
      return { spells: await spellViews(reader, await reader.custodySpells(query)) };
    }),
});

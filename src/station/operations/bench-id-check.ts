/** `bench-id.check`: whether a text is a bench ID, and where it is damaged, which one it may have been. */
import { z } from 'zod';
import { formatBenchId, repairBenchId } from '../../domain/bench-id/bench-id.ts';
import { benchIdSchema } from '../../domain/brand.ts';
import { defineOperation } from '../operation.ts';

export const benchIdCheck = defineOperation({
  name: 'bench-id.check',
  summary: 'Whether a text is a bench ID, and where it is damaged, which one it may have been.',
  kind: 'query',
  access: 'anyone',
  /** `?` stands for a character that cannot be read. */
  input: z.object({ text: z.string().min(1).max(200) }),
  output: z.discriminatedUnion('kind', [
    z.object({
      kind: z.literal('exact'),
      benchId: benchIdSchema,
      shown: z.string(),
      registered: z.boolean(),
    }),
    z.object({
      kind: z.literal('suggestion'),
      benchId: benchIdSchema,
      shown: z.string(),
      registered: z.boolean(),
      /** Positions, from 0, that were filled in or changed. */
      changed: z.array(z.int()),
      /** Those of them where a character was typed and is overruled. */
      contradicted: z.array(z.int()),
    }),
    z.object({ kind: z.literal('beyond repair') }),
    z.object({ kind: z.literal('malformed'), why: z.string() }),
  ]),
  run: async ({ ledger }, { text }) => {
    const repaired = repairBenchId(text);
    if (repaired.kind === 'malformed' || repaired.kind === 'beyond repair') return repaired;
    const registered = (await ledger.read((reader) => reader.device(repaired.id))) !== undefined;
    const identified = { benchId: repaired.id, shown: formatBenchId(repaired.id), registered };
    return repaired.kind === 'exact'
      ? { kind: repaired.kind, ...identified }
      : {
          kind: repaired.kind,
          ...identified,
          changed: [...repaired.changed],
          contradicted: [...repaired.contradicted],
        };
  },
});

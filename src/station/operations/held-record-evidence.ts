/** `held.record-evidence`: evidence for the return of a held device, with its documents; the device stays where it is. */
import { z } from 'zod';
import { benchIdSchema } from '../../domain/brand.ts';
import { decideRecordEvidence } from '../../domain/decide/held/evidence.ts';
import { evidenceEntrySchema } from '../../domain/held/evidence.ts';
import { reasonDates } from '../../domain/held/reason-dates.ts';
import { isRefusal, refusal } from '../../domain/refusal.ts';
import { heldViewSchema } from '../held-view.ts';
import { deviceIn } from '../lookup.ts';
import { defineOperation } from '../operation.ts';
import { programIn } from '../program-in.ts';
import { givenDocumentSchema, putDocuments } from '../put-document.ts';
import { record } from '../record.ts';
import { showHeld } from '../show-held.ts';

export const heldRecordEvidence = defineOperation({
  name: 'held.record-evidence',
  summary: 'Records evidence for the return of a held device, with its documents.',
  kind: 'command',
  access: ['attendant', 'inspector', 'administrator'],
  input: evidenceEntrySchema.omit({ documents: true }).extend({
    benchId: benchIdSchema,
    documents: z.array(givenDocumentSchema).max(12).default([]),
  }),
  output: z.object({ held: heldViewSchema }),
  run: async (context, { benchId, documents, ...entry }) => {
    const { person, rules } = context;
    if (person === undefined) return refusal('sign-in-needed');
    const known = await context.ledger.read((reader) => deviceIn(reader, benchId));
    if (isRefusal(known)) return known;
    const files = await putDocuments(context.evidence, documents);
    if (isRefusal(files)) return files;
    const result = await record(context, async (reader, occasion) => {
      const row = await deviceIn(reader, benchId);
      if (isRefusal(row)) return row;
      const terms = { rules: rules.release, program: await programIn(reader, rules) };
      const since = reasonDates(await reader.eventsOf(benchId));
      const place = { terms, since, person };
      return decideRecordEvidence(row.device, { ...entry, documents: files }, place, occasion);
    });
    return isRefusal(result) ? result : showHeld(context, benchId);
  },
});

/** `desk.user`: whose badge was scanned at the desk. It signs nobody in: the attendant stays the one who works there. */
import { z } from 'zod';
import { type Language, languageSchema } from '../../domain/message.ts';
import { refusal } from '../../domain/refusal.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { badgeHolder } from '../badge.ts';
import { defineOperation, everyRole } from '../operation.ts';

export const deskUser = defineOperation({
  name: 'desk.user',
  summary: 'Whose badge was scanned at the desk; it signs nobody in.',
  kind: 'query',
  access: everyRole,
  input: z.object({ badge: z.string().trim().min(1).max(200) }),
  output: z.object({
    personId: z.string(),
    name: z.string(),
    out: z.int(),
    /** In which they confirmed their latest inspection before use; absent where they never did. */
    language: languageSchema.optional(),
  }),
  run: ({ ledger }, { badge }) =>
    ledger.read(async (reader) => {
      const held = await badgeHolder(reader, badge);
      if (held === undefined) return refusal('badge-unknown', { badge }, 'badge');
      const { personId, name, left } = held.person;
      if (held.replacedOn !== undefined)
        return refusal('badge-replaced', { badge, name, on: held.replacedOn }, 'badge');
      if (left !== undefined) return refusal('badge-of-leaver', { name, on: left.on }, 'badge');
      const { total } = await reader.devices({ out: { userId: personId }, limit: 1, offset: 0 });
      const language = await confirmedIn(reader, personId);
      return { personId, name, out: total, ...(language === undefined ? {} : { language }) };
    }),
});

const confirmedIn = async (reader: LedgerReader, userId: string): Promise<Language | undefined> => {
  const [latest] = await reader.custodySpells({ userId, limit: 1, offset: 0 });
  const begun = latest && (await reader.event(latest.spell))?.event;
  return begun?.type === 'device.checked-out' || begun?.type === 'device.transferred'
    ? begun.preUse.language
    : undefined;
};
